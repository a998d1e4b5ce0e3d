/** Modes of a tapped blank by their nodal lines, as they are typed, read, laid out, coloured and told. */
import { describe, expect, it } from 'vitest';
import { completionsAt } from '../../language/editing/completion/completion.js';
import { formatted } from '../../language/editing/formatting/formatting.js';
import { hoverAt } from '../../language/editing/hover/hover.js';
import { semanticTokens } from '../../language/editing/tokens/semantic-tokens.js';
import { createParser } from '../../language/grammar/parse.js';
import { check, expectMarked } from '../checks/marked-text.js';
import { reader } from '../grammar/facts-in-words.js';
import { deskAt, deskOf } from './desk-of.js';

const parser = createParser();
const { file } = reader(parser);

function paths(body: string): readonly string[] {
  const { definition } = file(`wood w is sitka-spruce {\n${body}\n}`).definitions[0]!;
  expect(definition.problems.map(({ message }) => message)).toEqual([]);
  const all = definition.statements.flatMap((one) => ('statements' in one ? one.statements : [one]));
  return all.map((one) => (one.kind === 'property' ? one.path.text : one.kind));
}

describe('read', () => {
  it('inside the taps and beside them, on one line or several', () => {
    expect(paths('tap { along: 72 Hz mode (2,1): 178 Hz  mode (1, 2): 120 Hz per "March" }')).toEqual([
      'tap.along',
      'tap.mode-2-1',
      'tap.mode-1-2',
    ]);
    expect(paths('mode (2,1): 178 Hz\nmode (0,3): 200 Hz')).toEqual(['tap.mode-2-1', 'tap.mode-0-3']);
  });
  it('the three that have words of their own are those', () => {
    expect(paths('mode (0,2): 72 Hz\nmode (2,0): 157 Hz\nmode (1,1): 47 Hz')).toEqual([
      'tap.along',
      'tap.across',
      'tap.twist',
    ]);
  });
  it('no word is taken from anybody', () => {
    expect(paths('mode: "struck"\nmode.one: 3')).toEqual(['mode', 'mode.one']);
  });
  it('says how it is written where it does not read, and keeps what stands beside it', () => {
    const { definition } = file('wood w is sitka-spruce { tap { along: 72 Hz\n mode 2,1: 178 Hz\n twist: 50 Hz } }')
      .definitions[0]!;
    expect(definition.problems.map(({ message }) => message)).toEqual([
      'A mode is named by its nodal lines, those along the grain first: `mode (2,1): 178 Hz`.',
    ]);
    expect(JSON.stringify(definition.statements)).toContain('tap.twist');
  });
});

it('impossible and double ones are found where they stand', () => {
  expectMarked(`wood w is sitka-spruce {
  blank: 560 mm x 212 mm x 4.4 mm
  mass: 220 g
  tap { along: 72 Hz }
  mode (0,1): 54 Hz
//^^^^^^^^^^ no-such-mode: it takes two at least
  mode (7,1): 540 Hz
//^^^^^^^^^^ no-such-mode: more than a tap tells apart
  mode (2.5,1): 540 Hz
//      ^^^ bad-number: whole numbers
  mode (0,2): 71 Hz
//^^^^^^^^^^ set-twice: tap.along is given twice
}`);
  expect(check('wood w is sitka-spruce { mode (0,1): 54 Hz }').findings.map(({ code }) => code)).not.toContain(
    'unknown-path',
  );
});

it('lays them out like other lines', () => {
  expect(formatted('wood w is s {\ntap {\nalong:72Hz\nmode(2,1):178Hz\nmode ( 1 , 2 ):120 Hz\n}\n}\n', parser)).toBe(
    'wood w is s {\n  tap {\n    along:      72 Hz\n    mode (2,1): 178 Hz\n    mode (1,2): 120 Hz\n  }\n}\n',
  );
});

describe('offers', () => {
  const labels = (marked: string) => {
    const { desk, uri, position } = deskAt(marked);
    return completionsAt(desk, uri, position).items.map(({ label }) => label);
  };
  it('a mode in the taps and beside them, once', () => {
    for (const marked of ['wood w is sitka-spruce { tap { m| } }', 'wood w is sitka-spruce { m| }'])
      expect(labels(marked).filter((label) => label.includes('mode'))).toEqual(['mode']);
    expect(labels('model m { m| }')).not.toContain('mode');
  });
  it('a unit behind its number', () => {
    expect(labels('wood w is sitka-spruce {\n  mode (2,1): 178 |\n}')).toContain('Hz');
    expect(labels('wood w is sitka-spruce {\n  tap { along: 70 Hz  mode (2,1): 178 | }\n}')).toContain('Hz');
  });
});

describe('tells', () => {
  const hover = (marked: string) => {
    const { desk, uri, position } = deskAt(marked);
    return hoverAt(desk, uri, position)?.markdown ?? '';
  };
  it('which mode it is', () => {
    expect(hover('wood w is sitka-spruce { tap { mo|de (2,1): 178 Hz } }')).toMatch(
      /mode \(2,1\)\*\* = 178 Hz[^]*2 along the grain, 1 across it/,
    );
    expect(hover('wood w is sitka-spruce { mode (|2,1): 178 Hz }')).toContain('mode (2,1)');
  });
  it('its words by colour', () => {
    const text = 'wood w is sitka-spruce { tap { mode (2,1): 178 Hz } }';
    const tokens = semanticTokens(deskOf(text), parser, 'file:0').map(
      ({ character, length, kind }) => `${text.slice(character, character + length)}=${kind}`,
    );
    expect(tokens).toEqual(expect.arrayContaining(['tap=part', 'mode=property', '2=number', '178=number', 'Hz=unit']));
  });
});
