/** What must not be told of builds, and what must: confounders, order, slips of the pen, before and after. */
import { describe, expect, it } from 'vitest';
import { modelEffects } from '../../../language/recipes/builds/model-effects.js';
import { modelEffectsTable } from '../../../language/reports/effects/model-effects-table.js';
import { shopOf } from '../shop-of.js';

const HEAD = `shop wick { title: "Wick Lane"  vary at most 3  scatter.frequency: 1 % }
model corrie { scale: 645 mm  bridge.mass: 27 g  back.thickness: 2.4 mm  bracing.wood: billet-1 }
wood billet-1 is sitka-spruce { use: brace }
wood billet-2 is sitka-spruce { use: brace }
recipe corrie-1 for corrie { because "First."  top.thickness: 2.8 mm }
recipe corrie-2 from corrie-1 { because "Lighter."  change bridge.mass: 27 g -> 22 g }
`;
const table = (...texts: string[]) => modelEffectsTable(shopOf(HEAD + texts.join('')).workshop, 'corrie')!;

describe('a shop whose three new builds also had another billet, fish glue and a date three years later', () => {
  const builds = [183, 181, 182].map(
    (hz, i) => `build no-${i + 1} of corrie-1 { serial: "A${i}"  finished: 2020-0${i + 1}-10
    glue.braces: "hide"  reading day-1 { resonance.top: ${hz} Hz } }\n`,
  );
  const later = [171, 172, 170].map(
    (hz, i) => `build no-${i + 4} of corrie-2 { serial: "B${i}"  finished: 2023-0${i + 1}-10
    bracing.wood: billet-2  glue.braces: "fish"  note "A good day."  reading day-1 { resonance.top: ${hz} Hz } }\n`,
  );
  const told = table(...builds, ...later);

  it('names billet, glue and order, and gives the change no number of its own', () => {
    const [response] = told.responses;
    expect(response!.effects.map(({ what }) => what)).toEqual([
      'bridge.mass 22 g + bracing.wood billet-2 + glue.braces "fish" + the order in which they were made',
    ]);
    expect(told.variables.map(({ paths, standing }) => [paths, standing.includes('always moved together')])).toEqual([
      ['bridge.mass', true],
      ['bracing.wood', true],
      ['glue.braces', true],
    ]);
    expect(JSON.stringify(told)).not.toContain('can be found by itself');
  });

  it('takes no title, serial number or note for a factor', () => {
    expect(JSON.stringify(told.variables)).not.toMatch(/serial|note|title|finished/);
  });
});

describe('a change whose builds were also read by somebody else', () => {
  const builds = (one: string, other: string) =>
    [183, 181, 182]
      .map((hz, i) => `build no-${i + 1} of corrie-1 { reading day-1 { reader: "${one}"  resonance.top: ${hz} Hz } }\n`)
      .concat(
        [171, 172, 170].map(
          (hz, i) =>
            `build no-${i + 4} of corrie-2 { reading day-1 { reader: "${other}"  resonance.top: ${hz} Hz } }\n`,
        ),
      );
  const effects = (one: string, other: string) =>
    table(...builds(one, other)).responses[0]!.effects.map(({ what }) => what);

  it('has the reader named with it, and is told by itself where one person read them all', () => {
    expect(effects('JF', 'MT')).toEqual(['bridge.mass 22 g + reader "MT"']);
    expect(effects('JF', 'JF')).toEqual(['bridge.mass 22 g']);
  });
});

describe('a series that drifts', () => {
  it('is told so, with the effects as they are without it', () => {
    const builds = Array.from({ length: 12 }, (_, i) => {
      const light = [4, 7, 9].includes(i);
      const hz = 180 * (1 + 0.004 * i) * (light ? 1.03 : 1) * (1 + 0.001 * ((i * 7) % 3));
      return `build no-${i} of corrie-${light ? 2 : 1} { finished: 2020-${String(i + 1).padStart(2, '0')}-10  reading day-1 { resonance.top: ${hz.toFixed(1)} Hz } }\n`;
    });
    const [response] = table(...builds).responses;
    expect(response!.notes.join()).toMatch(/The series drifts: \+\d/);
    const { amount, band } = response!.effects[0]!.sizes.builds!;
    expect(Math.abs(amount - 0.03 * 180)).toBeLessThan(band);
  });
});

describe('a slip of the pen', () => {
  const builds = (fourth: string, more = '') =>
    [183, 181, 182]
      .map((hz, i) => `build no-${i + 1} of corrie-1 { reading day-1 { resonance.top: ${hz} Hz } }\n`)
      .join('') +
    `build no-4 of corrie-2 { ${more} reading day-1 { resonance.top: ${fourth} Hz } }\nbuild no-5 of corrie-2 { reading day-1 { resonance.top: 186 Hz } }\n`;

  it('of a digit is asked about and kept out until answered', () => {
    const told = table(builds('17.1'));
    expect(told.asked).toEqual([
      expect.stringMatching(/^no-4 has 17\.1 Hz for resonance\.top, where others have 18\d Hz or so\. Is it right\?/),
    ]);
    expect(told.responses[0]!.conditions).toContain('read in 4 of 5 builds');
  });

  it('that is none counts once the maker says so', () => {
    const told = table(builds('110', 'accept odd-reading because "A cracked top, read twice."'));
    expect(told.asked).toEqual([]);
    expect(told.responses[0]!.conditions).toContain('read in all 5 builds');
  });
});

describe('before and after on one instrument', () => {
  const twins = [183, 178, 186]
    .map((hz, i) => `build no-${i + 1} of corrie-1 { reading day-1 { resonance.top: ${hz} Hz } }\n`)
    .join('');
  const rework = `build no-4 of corrie-1 {
    reading first { resonance.top: 180.0 Hz }  reading again { resonance.top: 180.2 Hz }
    rework "lighter bridge" { change bridge.mass: 27 g -> 22 g }
    reading second { resonance.top: 183.1 Hz }  reading third { resonance.top: 182.9 Hz } }\n`;
  const other = 'build no-5 of corrie-2 { reading day-1 { resonance.top: 184 Hz } }\n';

  it('is known far better than from one instrument against others, and named', () => {
    const { responses } = modelEffects(
      shopOf(HEAD + twins.replaceAll('reading day-1', 'reading first') + rework).workshop,
      'corrie',
    )!;
    const { outcome } = responses[0]!;
    if (outcome.kind !== 'fitted') throw new Error(outcome.kind);
    const [effect] = outcome.effects;
    expect(effect!.beforeAndAfter).toEqual(['no-4']);
    expect(effect!.builds!.amount).toBeCloseTo(2.9, 0);
    const against = table(twins, other).responses[0]!.effects[0]!.sizes.builds!;
    expect(effect!.builds!.band).toBeLessThan(against.band / 2);
    expect(effect!.verdict).toBe('builds');
  });
});

describe('what the ear said', () => {
  it('is told by ranks alone, apart from readings, and whether it was blind', () => {
    const marks = (n: number, recipe: number, mark: number, blind = 'yes') =>
      `build no-${n} of corrie-${recipe} { reading played { blind: ${blind}  heard.response: ${mark}/10  resonance.top: 180 Hz } }\n`;
    const builds =
      [6, 7, 5, 6].map((mark, i) => marks(i + 1, 1, mark)).join('') +
      [8, 9, 8, 9].map((mark, i) => marks(i + 5, 2, mark)).join('');
    const told = table(builds);
    // Every one of four above every one of four: 2 of 70 ways (F. Wilcoxon 1945).
    expect(told.heard).toEqual([
      'heard.response, bridge.mass 22 g: marks of 8, 9, 8, 9 with it, 6, 7, 5, 6 without. Dealt out by chance, 3 in 100 differ as much. Heard blind.',
    ]);
    expect(told.responses.map(({ name }) => name)).toEqual(['resonance.top']);
    expect(table(builds.replace('blind: yes', 'blind: no')).heard[0]).toContain('Not all of it was heard blind.');
  });
});
