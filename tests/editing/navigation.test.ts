/** Who changes a path, where a name or path is set and read, what folds. */
import { describe, expect, it } from 'vitest';
import { foldingRanges } from '../../language/editing/navigation/folding.js';
import { highlights } from '../../language/editing/navigation/highlights.js';
import { changesOfPathAt } from '../../language/editing/navigation/lineage-tree.js';
import { createParser } from '../../language/grammar/parse.js';
import type { Span } from '../../language/facts/facts.js';
import { deskAt, deskOf, VENNICK } from './desk-of.js';

const parser = createParser();
const wordAt = (text: string, { start, end }: Span) =>
  text
    .split('\n')
    .slice(start.line, end.line + 1)
    .join('\n')
    .slice(start.character, start.line === end.line ? end.character : undefined);

describe('who changes a path', () => {
  const LINE = `recipe v-32 from v-31 { change bracing.x-bass.height: 15.9 mm -> 15 mm }
recipe v-33 from v-32 { drop bracing.x-bass }
recipe v-34 from v-33 { bridge.mass: 25 g }
recipe v-35 from v-34 { add bracing.x-bass { height: 14 mm  width: 8 mm } }
recipe v-36 from v-35 { together "lower" { bracing.x-bass.width: 7 mm  bracing.x-treble.width: 7 mm } }
`;
  const changers = (marked: string) => {
    const { desk, uri, position } = deskAt(marked, LINE, VENNICK);
    return changesOfPathAt(desk, uri, position).map(({ range }) => LINE.split('\n')[range.start.line]!.slice(7, 11));
  };

  it('every recipe that changes it, adds it or drops it', () => {
    expect(changers('build b of v-31 { bracing.x-bass.hei|ght: 15 mm }')).toEqual(['v-32', 'v-33', 'v-35']);
    expect(changers('build b of v-31 { bridge.ma|ss: 15 g }')).toEqual(['v-34']);
  });

  it('of a part, whoever changes anything in it, each line once', () => {
    expect(changers('build b of v-31 { bracing { x-ba|ss { height: 15 mm } } }')).toEqual([
      'v-32',
      'v-33',
      'v-35',
      'v-36',
    ]);
  });

  it('of a name nobody', () => {
    expect(changers('build b| of v-31 { bridge.mass: 15 g }')).toEqual([]);
  });
});

describe('highlights', () => {
  const found = (marked: string, ...others: readonly string[]) => {
    const { desk, uri, position } = deskAt(marked, ...others);
    const text = marked.replace('|', '');
    return highlights(desk, uri, position).map(({ range, sets }) => `${wordAt(text, range)}${sets ? ' set' : ''}`);
  };

  it('a name where it is defined and where it is named', () => {
    expect(
      found('wood ab|c is sitka-spruce { }\nrecipe r for m { top.wood: abc }\nrecipe s from r { top.wood: abc }'),
    ).toEqual(['abc set', 'abc', 'abc']);
  });

  it('a path where it is set and where it is asked about', () => {
    expect(
      found('recipe r for m { top { thick|ness: 2.8 mm }  hold top.mass by top.thickness  expect top.mass: 170 g }'),
    ).toEqual(['thickness set', 'top.thickness set']);
    expect(found('recipe r for m { hold top.ma|ss by top.thickness  expect top.mass: 170 g }')).toEqual([
      'top.mass',
      'top.mass',
    ]);
  });
});

describe('folding', () => {
  const folds = (text: string) =>
    foldingRanges(deskOf(text), parser, 'file:0').map(
      ({ startLine, endLine, kind }) => `${startLine}-${endLine}${kind ? ` ${kind}` : ''}`,
    );

  it('definitions and blocks, the closing brace left to be seen', () => {
    expect(folds('model m {\n  body {\n    length: 1 mm\n    depth { tail: 2 mm }\n  }\n}')).toEqual(['0-4', '1-3']);
  });

  it('comments of several lines, and regions, unless they stand beside something', () => {
    const text = `// one
// two

/* three
   four */
model m { scale: 645 mm } // five
// six
// #region old
// seven
recipe r for m { } // eight
// #endregion`;
    expect(folds(text).sort()).toEqual(['0-1 comment', '3-4 comment', '7-10 region']);
  });

  it('an unclosed region folds nothing, and nothing folds in a file that is not there', () => {
    expect(folds('// #region\nmodel m { }')).toEqual([]);
    expect(foldingRanges(deskOf(), parser, 'file:9')).toEqual([]);
  });
});
