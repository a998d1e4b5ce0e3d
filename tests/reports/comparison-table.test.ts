/** Two instruments side by side, written out for reading. */
import { describe, expect, it } from 'vitest';
import { comparisonTable } from '../../language/reports/comparison/comparison-table.js';
import { instrumentsOf } from '../../language/reports/instrument-list.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const table = (text: string, a: string, b: string) => comparisonTable(deskOf(text, VENNICK).workshop, a, b);

describe('a comparison', () => {
  const lighter = table('recipe v-32 from v-31 { change top.thickness: 2.80 mm -> .100 in }', 'v-31', 'v-32')!;

  it('names the recipe both come from and what differs, in one unit', () => {
    expect(lighter).toMatchObject({ a: 'v-31', b: 'v-32', ancestor: 'v-31' });
    expect(lighter).toMatchObject({ relation: 'v-32 comes from v-31.', counted: '1 change; 1 is allowed' });
    expect(lighter.changes).toMatchObject([
      {
        label: 'top.thickness',
        title: 'Top',
        standing: 'counted',
        // 2.54 − 2.80 = −0.26 mm, a share of 9.3 %.
        paths: [
          { name: 'thickness', a: '2.8 mm', b: '2.54 mm', difference: '−0.26 mm', percent: '−9.3 %', word: 'thinner' },
        ],
      },
    ]);
  });

  it('gives each computed value on both sides with difference, per cent and what is answerable for it', () => {
    // m ∝ h: 2.54/2.80 − 1 = −9.3 %.
    const mass = lighter.derived.find(({ path }) => path === 'top.mass')!;
    expect(mass).toMatchObject({ difference: '−14.3 g', percent: '−9.3 %', missing: [] });
    expect(mass.contributions).toMatchObject([{ label: 'top.thickness', amount: '−14.3 g' }]);
    expect(mass.contributions[0]!.times).toBeCloseTo(mass.times!, 2);
    expect(Math.abs(mass.times!)).toBeGreaterThan(1);
    expect(mass).toMatchObject({ word: 'lighter', verdict: 'distinct' });
  });

  it('says which are the same, and what is missing for those that are not known', () => {
    const at = (wanted: string) => lighter.derived.find(({ path }) => path === wanted)!;
    expect(at('strings.total-tension')).toMatchObject({ difference: 'the same', contributions: [] });
    expect(at('sides.mass').a).toBeUndefined();
    expect(at('sides.mass').missing).toEqual(['sides.wood.density', 'sides.thickness']);
  });

  it('shares a difference among the changes, and keeps what only both together do apart', () => {
    const both = table(
      'recipe v-32 from v-31 { change top.thickness: by -10 %  change top.wood: sitka-31 -> engelmann-37 }',
      'v-31',
      'v-32',
    )!;
    const mass = both.derived.find(({ path }) => path === 'top.mass')!;
    expect(mass.contributions.map(({ label }) => label)).toEqual(['top.wood', 'top.thickness']);
    const grams = [mass.difference!, ...mass.contributions.map(({ amount }) => amount)].map((text) =>
      Number(text.replace('−', '-').replace(' g', '')),
    );
    expect(grams[1]! + grams[2]!).toBeCloseTo(grams[0]!, 0);
  });

  it('tells in words when a difference is too small, and what it would take', () => {
    const slight = table('recipe v-32 from v-31 { change top.thickness: by -0.01 mm }', 'v-31', 'v-32')!;
    const mass = slight.derived.find(({ path }) => path === 'top.mass')!;
    expect(mass.verdict).toBe('too-small');
    expect(mass.verdictInWords).toBe(`too small to tell apart: it would take ${mass.discernible}`);
  });

  it('says of a value known for one only which of the two lacks what', () => {
    const lacking = table('recipe v-32 from v-31 { drop bridge.mass }', 'v-31', 'v-32')!;
    const moving = lacking.derived.find(({ path }) => path === 'bridge.moving-mass')!;
    expect(moving).toMatchObject({ verdict: 'one-only' });
    expect(moving.verdictInWords).toMatch(/^known for v-31 only; v-32 needs bridge\./);
  });

  it('has a word for what comes, goes and moves', () => {
    const words = (text: string) =>
      table(`recipe v-32 from v-31 { ${text} }`, 'v-31', 'v-32')!.changes.flatMap(({ paths }) =>
        paths.map(({ word }) => word),
      );
    expect(words('drop saddle.protrusion')).toEqual(['dropped']);
    expect(words('back.thickness: 2.4 mm')).toEqual(['added']);
    expect(words('change bracing.x-bass.from: (78 mm, -150 mm) -> (80 mm, -150 mm)')).toEqual(['moved']);
    expect(words('change bracing.x-bass.height: by 1 mm')).toEqual(['higher']);
    expect(words('change top.wood: sitka-31 -> sitka-32')).toEqual(['another set']);
  });

  it('sets a reading beside what the build computes to, and says when nothing is computed', () => {
    const text = `build no-1 of v-31 { top { thickness: 2.80 mm  mass: 190 g }
      reading plate { stage: free-plate  deflection.along: 7.3 mm } }`;
    const { readings } = table(text, 'v-31', 'no-1')!;
    const of = (path: string) => readings.find((row) => row.side === 'b' && row.path === path)!;
    expect(of('top.mass')).toMatchObject({ reading: '190 g', word: 'heavier', verdict: 'outside' });
    expect(of('top.mass').verdictInWords).toMatch(/^not as computed: outside ±/);
    expect(of('deflection.along')).toMatchObject({ conditions: 'free plate', verdict: 'not-predicted' });
  });

  it('compares a build or a model just as well, and has no answer for an unknown name', () => {
    const text = 'build no-1 of v-31 { top.thickness: 2.74 mm }';
    expect(table(text, 'v-31', 'no-1')!.changes.map(({ label }) => label)).toEqual(['top.thickness']);
    expect(table(text, 'vennick', 'v-31')!.ancestor).toBeUndefined();
    expect(table(text, 'v-31', 'nobody')).toBeUndefined();
  });
});

describe('the instruments of a folder', () => {
  const names = (...texts: readonly string[]) => instrumentsOf(deskOf(...texts)).map(({ name }) => name);

  it('come each after its parent, otherwise in the order of the files', () => {
    expect(
      names(
        'build no-1 of b { }\nrecipe b from a { }\nwood w is sitka-spruce { }',
        'recipe a for m { }\nmodel m { }\nmodel other { }',
      ),
    ).toEqual(['m', 'a', 'b', 'no-1', 'other']);
  });

  it('say what they are, of whom, and where', () => {
    expect(instrumentsOf(deskOf('\nmodel m { }\nrecipe a for m { }'))).toEqual([
      {
        name: 'm',
        kind: 'model',
        uri: 'file:0',
        range: { start: { line: 1, character: 0 }, end: { line: 1, character: 11 } },
      },
      {
        name: 'a',
        kind: 'recipe',
        parent: 'm',
        uri: 'file:0',
        range: { start: { line: 2, character: 0 }, end: { line: 2, character: 18 } },
      },
    ]);
  });

  it('are listed once, rings and double names too', () => {
    expect(names('recipe a from b { }\nrecipe b from a { }\nrecipe b from a { }\nrecipe { }')).toEqual(['b', 'a']);
  });
});
