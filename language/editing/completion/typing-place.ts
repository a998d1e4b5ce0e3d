/**
 * Where somebody is typing: which definition, inside which blocks, and at which point of which statement. Worked out
 * from the text before the cursor, since the line being typed is the one line that cannot be read yet.
 */
import type { Definition, Position, Span, Statement } from '../../facts/facts.js';
import { modeWord } from '../../facts/plate-mode.js';
import { contains, type Desk, isBefore, shifted } from '../../checks/desk.js';
import { type At, atInBody, atInHead } from './typing-statement.js';

export interface TypingPlace {
  readonly at: At;
  /** The half-typed word, to be replaced. */
  readonly word: string;
  readonly range: Span;
  /** Nothing but space before the half-typed word. */
  readonly startsLine: boolean;
  readonly definition?: Definition;
  /** Written path of the enclosing blocks, empty in the body itself. */
  readonly block: string;
  /** The innermost enclosing statement that is more than a block. */
  readonly inside?: 'together' | 'add' | 'reading' | 'rework' | 'request';
}

export function typingPlace(desk: Desk, uri: string, position: Position): TypingPlace | undefined {
  const text = desk.text(uri);
  const line = text === undefined ? undefined : lineOf(text, position.line);
  if (text === undefined || line === undefined) return undefined;
  const before = line.slice(0, position.character);
  const word = typedWord(before);
  const found = desk.shelf
    .file(uri)
    ?.definitions.find(
      ({ definition, line }) =>
        contains(shifted(definition.span, line), position) && isBefore(shifted(definition.head, line).start, position),
    );
  const around = found ? blocksAround(found.definition, position, found.line) : { block: '' };
  const start = { line: position.line, character: position.character - word.length };
  return {
    at: atOf(
      text,
      position,
      modesAsPaths(before, around.block),
      word,
      found !== undefined && isInBody(found, position, before),
    ),
    word,
    range: { start, end: position },
    startsLine: before.trim() === word,
    definition: found?.definition,
    ...around,
  };
}

/** `mode (2,1):` as the path it stands for, so that what is due behind it is known. */
function modesAsPaths(before: string, block: string): string {
  return before.replace(MODE, (_, linesAlong: string, linesAcross: string) => {
    const word = modeWord({ linesAlong: Number(linesAlong), linesAcross: Number(linesAcross) });
    return `${block === '' ? 'tap.' : ''}${word}:`;
  });
}

const MODE = /(?<![\p{L}\p{N}_.-])mode\s*\(\s*(\d{1,2})\s*,\s*(\d{1,2})\s*\)\s*:/gu;

/** The word under the cursor; of `2.8m` only the `m`, which is a unit in the making, but not where a name is due. */
function typedWord(before: string): string {
  const word = /[\p{L}\p{N}_.*#-]*$/u.exec(before)![0];
  return atInHead(before)?.kind === 'target' ? word : word.replace(/^-?[\d.]+/, '');
}

function isInBody(
  { definition, line }: { definition: Definition; line: number },
  position: Position,
  before: string,
): boolean {
  const { end } = shifted(definition.head, line);
  return position.line > end.line || before.includes('{', end.character);
}

function lineOf(text: string, line: number): string | undefined {
  return text.split('\n', line + 1)[line]?.replace(/\r$/, '');
}

function blocksAround(
  definition: Definition,
  position: Position,
  line: number,
): { block: string; inside?: TypingPlace['inside'] } {
  let block = '';
  let inside: TypingPlace['inside'];
  let statements: readonly Statement[] = definition.statements;
  for (;;) {
    const around = statements.find(
      (statement) =>
        'statements' in statement &&
        contains(shifted(statement.span, line), position) &&
        isBefore(shifted(statement.span, line).start, position),
    );
    if (!around || !('statements' in around)) return { block, inside };
    if (around.kind === 'block' || around.kind === 'add') block = around.path.text;
    if (around.kind !== 'block') inside = around.kind;
    statements = around.statements;
  }
}

function atOf(text: string, position: Position, before: string, word: string, inBody: boolean): At {
  if (isInText(before) || isInComment(text, position)) return { kind: 'prose' };
  if (inBody) return atInBody(before, word);
  const head = atInHead(before);
  if (head) return head;
  return before.includes('{') ? atInBody(before, word) : { kind: 'file' };
}

function isInText(before: string): boolean {
  return before.replace(PROSE, '').includes('"');
}

/** Texts, inch marks and comments; the last of them is where the cursor is if it never ends. */
const PROSE = /\d"|"(?:\\.|[^"\\\n])*"|\/\/[^\n]*|\/\*[^]*?(?:\*\/|$)/g;

function isInComment(text: string, { line, character }: Position): boolean {
  let start = 0;
  for (let i = 0; i < line; i++) start = text.indexOf('\n', start) + 1;
  const until = text.slice(0, start + character);
  let last = '';
  let end = 0;
  for (const found of until.matchAll(PROSE)) [last, end] = [found[0], found.index + found[0].length];
  if (end < until.length) return false;
  return last.startsWith('//') || (last.startsWith('/*') && !(last.length > 3 && last.endsWith('*/')));
}
