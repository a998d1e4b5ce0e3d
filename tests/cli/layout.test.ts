import { describe, expect, it } from 'vitest';
import { table, wrapped } from '../../language/cli/text/columns.js';

describe('wrapping', () => {
  it('breaks between words, never inside one', () => {
    expect(wrapped('a plain sentence of words', 12)).toEqual(['a plain', 'sentence of', 'words']);
    expect(wrapped('incomprehensibly long', 5)).toEqual(['incomprehensibly', 'long']);
  });

  it('keeps a number with its unit', () => {
    expect(wrapped('it weighs 172 g now', 13)).toEqual(['it weighs', '172 g now']);
    expect(wrapped('(−8 %) or so', 4)).toEqual(['(−8 %)', 'or', 'so']);
    expect(wrapped('at most 2 changes', 9)).toEqual(['at most 2', 'changes']);
  });

  it('keeps the lines of a text apart', () => {
    expect(wrapped('one\ntwo', 80)).toEqual(['one', 'two']);
    expect(wrapped('', 80)).toEqual(['']);
  });
});

describe('tables', () => {
  it('align on characters as they are seen, not on how they are stored', () => {
    expect(
      table(
        [
          ['kg/m³', 'a'],
          ['e\u0301', 'b'],
          ['🎸', 'c'],
        ],
        { indent: 0 },
      ),
    ).toEqual(['kg/m³  a', 'e\u0301      b', '🎸      c']);
  });

  it('leave nothing at the end of a line, and right-aligned cells end together', () => {
    const right = (text: string) => ({ text, align: 'right' as const });
    expect(
      table(
        [
          ['a', right('9 g'), ''],
          ['bb', right('10 g'), 'x'],
        ],
        { indent: 1 },
      ),
    ).toEqual([' a    9 g', ' bb  10 g  x']);
  });

  it('paint a cell without moving its neighbours', () => {
    const paint = (text: string) => `<${text}>`;
    expect(
      table(
        [
          [{ text: 'a', paint }, 'x'],
          ['bbb', 'y'],
        ],
        { indent: 0 },
      ),
    ).toEqual(['<a>    x', 'bbb  y']);
  });
});
