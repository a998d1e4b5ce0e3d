/**
 * A hand at the keyboard: types a line into a file by accepting completions wherever one fits, and says which words it
 * had to spell out itself. What the editor does with the answers (filtering by the letters typed, showing so many at a
 * time, filling in a snippet) is done here as VS Code does it.
 */
import { completionsAt } from '../../language/editing/completion/completion.js';
import type { Completion } from '../../language/editing/completion/offer.js';
import type { Desk } from '../../language/checks/desk.js';
import { filledIn } from '../../language/editing/completion/snippet.js';
import { type BookmatchParser, type Lexeme, readLexemes } from '../../language/recipes/shelf/reader.js';

/** How VS Code shows a list: so many rows without scrolling. */
const ROWS = 12;
/** A word that is not there after so many letters is as good as not there. */
const LETTERS = 3;

export interface WordWritten {
  readonly text: string;
  readonly kind: Lexeme['kind'];
  /** `accepted`: came with a completion; `typed`: spelled out, which is meant to be so for what only the maker knows. */
  readonly how: 'accepted' | 'typed';
  /** Letters typed before the completion that brought it was in sight. */
  readonly letters: number;
}

export interface Keyboard {
  readonly desk: Desk;
  readonly parser: BookmatchParser;
  /** The file now reads so. */
  readonly type: (uri: string, text: string) => void;
}

/** Writes a line in place of the `|` of a text. Every word of the line is told, in order. */
export function writeLine(keyboard: Keyboard, uri: string, around: readonly [string, string], line: string) {
  const target = lexed(keyboard.parser, line);
  const told: WordWritten[] = [];
  const indent = /^\s*/.exec(line)![0].length;
  while (told.length < target.length) {
    const at = told.length;
    const start = target[at]!.span.start.character;
    const before = line.slice(0, at === 0 ? indent : start);
    const found = accepted(keyboard, uri, around, target, at, before);
    if (found) told.push(...found);
    else told.push({ text: target[at]!.text, kind: target[at]!.kind, how: 'typed', letters: 0 });
  }
  return told;
}

/** The longest run of words that one completion brings here, after as few letters as possible. */
function accepted(
  { desk, parser, type }: Keyboard,
  uri: string,
  [head, tail]: readonly [string, string],
  target: readonly Lexeme[],
  at: number,
  before: string,
): readonly WordWritten[] | undefined {
  const word = target[at]!;
  if (word.kind === 'comment' || word.kind === 'sign') return undefined;
  for (const begun of beginningsOf(word)) {
    const typed = before + begun;
    const text = head + typed + tail;
    type(uri, text);
    const lines = (head + typed).split('\n');
    const position = { line: lines.length - 1, character: lines.at(-1)!.length };
    const inSight = shownList(completionsAt(desk, uri, position).items, typed).slice(0, ROWS);
    const runs = inSight
      .map((completion) => matched(parser, completion, typed, target, at, begun.length))
      .sort((a, b) => b.length - a.length);
    if (runs[0] && runs[0].length > 0) return runs[0];
  }
  return undefined;
}

/** What is typed to find a word: nothing, its first letters, or those of one word of a path, as editors match them. */
function beginningsOf({ kind, text }: Lexeme): readonly string[] {
  if (kind !== 'word' && kind !== 'unit') return [''];
  const starts = [text, ...text.split(/[.-]/).slice(1)];
  return ['', ...starts.flatMap((word) => Array.from({ length: LETTERS }, (_, i) => word.slice(0, i + 1)))];
}

/** What is left of a list for the letters before the cursor, best first. */
function shownList(completions: readonly Completion[], typed: string): readonly Completion[] {
  return completions
    .filter(({ range, label, synonyms }) => {
      const letters = typed.slice(range.start.character).toLowerCase();
      return [label, ...(synonyms ?? [])].some((name) => beginsWith(name.toLowerCase(), letters));
    })
    .sort((a, b) => a.rank - b.rank || (a.label < b.label ? -1 : 1));
}

function beginsWith(name: string, letters: string): boolean {
  return name.startsWith(letters) || name.split(/[ .-]/).some((part) => letters !== '' && part.startsWith(letters));
}

/** The words of the target that come out right once a completion is accepted and its blanks are filled in. */
function matched(
  parser: BookmatchParser,
  completion: Completion,
  typed: string,
  target: readonly Lexeme[],
  at: number,
  letters: number,
): readonly WordWritten[] {
  const start = completion.range.start.character;
  const { text, blanks } = completion.snippet ? filledIn(completion.insert) : { text: completion.insert, blanks: [] };
  const kept = typed.slice(0, start);
  const offered = lexed(parser, kept + text.split('\n')[0]!);
  const told: WordWritten[] = [];
  for (let i = at; i < target.length && i < offered.length; i++) {
    const [own, wanted] = [offered[i]!, target[i]!];
    const from = own.span.start.character - start;
    const inBlank = blanks.some(([a, b]) => from >= a && from < b);
    if (own.kind === wanted.kind && own.text === wanted.text) {
      told.push({ text: wanted.text, kind: wanted.kind, how: 'accepted', letters });
    } else if (inBlank && own.kind === wanted.kind && isFree(wanted)) {
      told.push({ text: wanted.text, kind: wanted.kind, how: 'typed', letters: 0 });
    } else break;
  }
  // A blank alone is nothing accepted.
  return told.some(({ how }) => how === 'accepted') ? told : [];
}

/** What only the maker knows. */
export function isFree({ kind }: { readonly kind: Lexeme['kind'] }): boolean {
  return kind === 'number' || kind === 'text' || kind === 'date' || kind === 'comment';
}

function lexed(parser: BookmatchParser, line: string): readonly Lexeme[] {
  return readLexemes(line, parser).words;
}
