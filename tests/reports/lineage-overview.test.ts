/** The family tree of a folder. */
import { describe, expect, it } from 'vitest';
import { type LineageEntry, lineageOverview } from '../../language/reports/lineage-overview.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

/** One line for each entry, as a maker would read the tree. */
function drawn(entries: readonly LineageEntry[], depth = 0): readonly string[] {
  return entries.flatMap(({ kind, name, count, children }) => [
    `${'  '.repeat(depth)}${kind} ${name}${count ? ` ${count.changes}/${count.limit}` : ''}`,
    ...drawn(children, depth + 1),
  ]);
}

const treeOf = (...texts: readonly string[]) => drawn(lineageOverview(deskOf(...texts)));

describe('the lineage', () => {
  it('puts recipes under what they descend from, changes counted, and builds beneath', () => {
    const text = `
      recipe v-32 from v-31 { change bridge.mass: 27 g -> 22 g }
      build no-32 of v-32 { }
      recipe v-33 from v-32 { change bridge.mass: 22 g -> 27 g  change soundhole.diameter: 101 mm -> 95 mm }
      recipe v-34 from v-31 { }`;
    expect(treeOf(text, VENNICK)).toEqual([
      'model vennick',
      '  recipe v-31',
      '    recipe v-32 1/1',
      '      recipe v-33 2/1',
      '      build no-32',
      '    recipe v-34 0/1',
    ]);
  });

  it('says when only another set of the same wood was taken', () => {
    const text =
      'recipe v-32 from v-31 { change top.wood: sitka-31 -> sitka-32  hold top.stiffness.along by top.thickness }';
    const [model] = lineageOverview(deskOf(text, VENNICK));
    expect(model!.children[0]!.children[0]!.count).toEqual({ changes: 0, limit: 1, substitution: true });
  });

  it('leads to the name', () => {
    const [entry] = lineageOverview(deskOf('\n\nmodel w { }'));
    expect(entry).toMatchObject({
      uri: 'file:0',
      range: { start: { line: 2, character: 6 }, end: { line: 2, character: 7 } },
    });
  });

  it('keeps what has no parent in the folder, and remembers whom it names', () => {
    const entries = lineageOverview(
      deskOf('recipe a from gone { }\nrecipe b from a { }\nbuild c of lost { }\nmodel m { }'),
    );
    expect(drawn(entries)).toEqual(['model m', 'recipe a', '  recipe b 0/1', 'build c']);
    expect(entries.map(({ parent }) => parent)).toEqual([undefined, 'gone', 'lost']);
  });

  it('shows every recipe of a ring once', () => {
    expect(treeOf('recipe a from b { }\nrecipe b from a { }\nrecipe c from a { }')).toEqual([
      'recipe a',
      '  recipe b',
      '  recipe c 0/1',
    ]);
  });

  it('leaves out the second of a name, and what has none', () => {
    expect(treeOf('model m { }\nmodel m { }\nmodel { }\nrecipe a for m { }\nrecipe a for m { }')).toEqual([
      'model m',
      '  recipe a',
    ]);
  });
});
