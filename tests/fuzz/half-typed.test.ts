/**
 * A file is broken most of the time somebody types in it. Every beginning of every example file, and every file with
 * any one word or sign taken out, is read, checked, hovered, completed and outlined; nothing may throw, and no number
 * shown may be a NaN.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { completionsAt } from '../../language/editing/completion/completion.js';
import type { Desk } from '../../language/checks/desk.js';
import { hoverAt } from '../../language/editing/hover/hover.js';
import { inlayHints } from '../../language/editing/hints/inlay-hints.js';
import { lensesOf } from '../../language/editing/hints/lenses.js';
import { openWorkshop } from '../../language/shop.js';
import { documentSymbols } from '../../language/editing/navigation/symbols.js';
import type { Position } from '../../language/facts/facts.js';
import { createParser, readFile, readWords } from '../../language/recipes/shelf/reader.js';
import { THOROUGH } from '../thorough.js';

/** Every beginning and every word; or every seventh, which over the lines comes to all kinds of places. */
const STEP = THOROUGH ? 1 : 7;

const root = new URL('../../examples/', import.meta.url);
const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.bookmatch'))
  .map((name) => ({ name, text: readFileSync(new URL(name, root), 'utf8') }));
const parser = createParser();

/** The example shop, in which one file at a time is typed anew. */
function typing(): { desk: Desk; type: (name: string, text: string) => void } {
  const { shelf, workshop, checks } = openWorkshop({ parser });
  const texts = new Map(files.map(({ name, text }) => [name, text]));
  shelf.put(...files.map(({ name, text }) => readFile(name, text, parser)));
  return {
    desk: { shelf, workshop, checks, text: (uri) => texts.get(uri) },
    type: (name, text) => {
      texts.set(name, text);
      shelf.put(readFile(name, text, parser, shelf.file(name)));
    },
  };
}

/** Everything an editor asks after a keystroke; returns all words shown, to look for numbers that are none. */
function ask(desk: Desk, uri: string, at: Position): string {
  const found = desk.checks.file(uri).map(({ message }) => message);
  const shown = [
    hoverAt(desk, uri, at),
    completionsAt(desk, uri, at).items,
    documentSymbols(desk, uri),
    inlayHints(desk, uri, {
      start: { line: Math.max(0, at.line - 3), character: 0 },
      end: { line: at.line + 3, character: 0 },
    }),
    lensesOf(desk, uri),
  ];
  return `${found.join('\n')}\n${JSON.stringify(shown)}`;
}

function endOf(text: string): Position {
  const lines = text.split('\n');
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}

describe.each(files)('$name', ({ name, text }) => {
  it('can be typed from its first letter to its last', () => {
    const { desk, type } = typing();
    for (let length = 0; length <= text.length; length += STEP) {
      const begun = text.slice(0, length);
      type(name, begun);
      const shown = ask(desk, name, endOf(begun));
      if (shown.includes('NaN')) expect.fail(`a NaN after ${JSON.stringify(begun.slice(-60))}`);
    }
  }, 240_000);

  it('can lose any one word or sign', () => {
    const { desk, type } = typing();
    const lines = text.split('\n');
    for (const [i, { span }] of readWords(text, parser).entries()) {
      if (i % STEP !== 0) continue;
      if (span.start.line !== span.end.line) continue;
      const line = lines[span.start.line]!;
      const without = line.slice(0, span.start.character) + line.slice(span.end.character);
      type(name, [...lines.slice(0, span.start.line), without, ...lines.slice(span.start.line + 1)].join('\n'));
      const shown = ask(desk, name, span.start);
      if (shown.includes('NaN')) expect.fail(`a NaN without the word at line ${String(span.start.line + 1)}`);
    }
  }, 240_000);
});
