/**
 * Texts kept up edit by edit. What they come out as is worked out another way here: the text cut at its line ends by a
 * regular expression, as the Language Server Protocol 3.17 defines them ("Text Documents": `\n`, `\r\n` and `\r`).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OpenText } from '../../language/server/open-text.js';
import { THOROUGH } from '../thorough.js';

interface Edit {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly text: string;
}

/** A place as the protocol counts it, in a text cut afresh. */
function offsetIn(text: string, [line, character]: readonly [number, number]): number {
  const pieces = text.split(/(\r\n|\n|\r)/);
  if (2 * line >= pieces.length) return text.length;
  const before = pieces.slice(0, 2 * line).join('').length;
  return before + Math.min(character, pieces[2 * line]!.length);
}

function edited(text: string, { from, to, text: inserted }: Edit): string {
  const [a, b] = [offsetIn(text, from), offsetIn(text, to)];
  return text.slice(0, Math.min(a, b)) + inserted + text.slice(Math.max(a, b));
}

const open = (text: string) => OpenText.create('file:///a.bookmatch', 'bookmatch', 1, text);
const change = ({ from, to, text }: Edit) => ({
  range: { start: { line: from[0], character: from[1] }, end: { line: to[0], character: to[1] } },
  text,
});

describe('a text open in the editor', () => {
  it('counts lines on after an edit has joined CR and LF, or parted them', () => {
    const text = open('a\rb\nc\n');
    OpenText.update(text, [change({ from: [1, 0], to: [1, 1], text: '' })], 2); // a CR LF c
    OpenText.update(text, [change({ from: [1, 0], to: [1, 0], text: 'x' })], 3);
    expect(text.getText()).toBe('a\r\nxc\n');
    const parted = open('a\r\nb\r\nc');
    OpenText.update(parted, [change({ from: [0, 1], to: [1, 0], text: '\r-\n' })], 2);
    OpenText.update(parted, [change({ from: [2, 0], to: [2, 1], text: 'B' })], 3);
    expect(parted.getText()).toBe('a\r-\nB\r\nc');
  });

  it('is what the edits make of it, whatever they are', () => {
    const pieces = fc.array(fc.constantFrom('\r', '\n', '\r\n', 'a', 'bc', '𝄞', '\uFEFF', ' {'), { maxLength: 12 });
    const words = pieces.map((some) => some.join(''));
    const place = fc.tuple(fc.integer({ min: -1, max: 9 }), fc.integer({ min: -1, max: 6 }));
    const positive = place.map(([line, character]) => [Math.max(0, line), Math.max(0, character)] as const);
    const edit = fc.record({ from: positive, to: positive, text: words });
    fc.assert(
      fc.property(words, fc.array(edit, { minLength: 1, maxLength: 10 }), (start, edits) => {
        const text = open(start);
        let expected = start;
        edits.forEach((each, i) => {
          OpenText.update(text, [change(each)], i + 2);
          expected = edited(expected, each);
          expect(text.getText()).toBe(expected);
        });
        // Not only the text: every place in it too.
        for (let line = 0; line < 12; line++) {
          for (const character of [0, 1, 5]) {
            expect(text.offsetAt({ line, character })).toBe(offsetIn(expected, [line, character]));
          }
        }
      }),
      { numRuns: THOROUGH ? 5000 : 1000 },
    );
  });

  it('leaves out a change that came too late, and takes a whole new text', () => {
    const text = open('a\n');
    OpenText.update(text, [{ text: 'b\r\nc' }], 5);
    OpenText.update(text, [change({ from: [0, 0], to: [0, 1], text: 'late' })], 5);
    OpenText.update(text, [change({ from: [0, 0], to: [0, 1], text: 'late' })], 4);
    expect([text.getText(), text.version]).toEqual(['b\r\nc', 5]);
    expect(text.offsetAt({ line: 1, character: 0 })).toBe(3);
  });
});
