/**
 * Where somebody is typing: which definition, inside which blocks, and at which point of which statement. Worked out
 * from the text before the cursor, since the line being typed is the one line that cannot be read yet.
 */
import type { Definition, DefinitionKind, Position, Span, Statement } from '../recipes/facts.js';
import { DEFINITION_KINDS } from '../recipes/facts.js';
import { contains, type Desk, isBefore, shifted } from './desk.js';

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
  readonly inside?: 'together' | 'add' | 'reading' | 'request';
}

export type At =
  /** Outside any definition, at the beginning of one. */
  | { readonly kind: 'file' }
  /** Behind `is`, `for`, `from`, `of` in a head. */
  | { readonly kind: 'target'; readonly of: DefinitionKind; readonly relation: string }
  /** Behind the name in a head. */
  | { readonly kind: 'relation'; readonly of: DefinitionKind }
  /** At the beginning of a statement. */
  | { readonly kind: 'statement' }
  /** Behind `change`, `add`, `drop`, `hold`, `expect`, `with`, `accept`. */
  | { readonly kind: 'after'; readonly keyword: string }
  /** Behind `hold q [at v] by`. */
  | { readonly kind: 'hold-by'; readonly quantity: string }
  /** Where a value is due. `side` says on which side of the arrow of a change. */
  | { readonly kind: 'value'; readonly path: string; readonly side: 'plain' | 'old' | 'new' | 'expected' }
  /** Straight behind a number: its unit, or, after a space, the next statement. */
  | { readonly kind: 'unit'; readonly path: string; readonly orStatement: boolean }
  /** In a comment or a text: nothing to offer. */
  | { readonly kind: 'prose' };

export function typingPlace(desk: Desk, uri: string, position: Position): TypingPlace | undefined {
  const text = desk.text(uri);
  if (text === undefined) return undefined;
  const before = lineOf(text, position.line).slice(0, position.character);
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
    at: atOf(before, word, found !== undefined && !isInHead(found, position)),
    word,
    range: { start, end: position },
    startsLine: before.trim() === word,
    definition: found?.definition,
    ...around,
  };
}

/** The word under the cursor; of `2.8m` only the `m`, which is a unit in the making. */
function typedWord(before: string): string {
  const word = /[\p{L}\p{N}_.*-]*$/u.exec(before)![0];
  return word.replace(/^-?[\d.]+/, '');
}

function isInHead({ definition, line }: { definition: Definition; line: number }, position: Position): boolean {
  return contains(shifted(definition.head, line), position);
}

function lineOf(text: string, line: number): string {
  return text.split('\n', line + 1)[line]?.replace(/\r$/, '') ?? '';
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

const NUMBER = String.raw`-?(?:\d+ \d+/\d+|\d+/\d+|\d*\.?\d+)`;
const KINDS = DEFINITION_KINDS.join('|');

/** One finished `path: value`, so that what follows on the same line starts a statement of its own. */
const FINISHED = new RegExp(
  String.raw`^\s*[\p{L}\p{N}_.*-]+\s*:\s*(?:"[^"]*"|\([^)]*\)|${NUMBER}\s*[^\s\d"{}:,]+(?:\s+x\s+${NUMBER}\s*[^\s\d"{}:,]+)*|\d{4}-\d\d-\d\d|[\p{L}][\p{L}\p{N}_.-]*)\s+(?=\S*\s*$|[\p{L}_.*-]+\s*:)`,
  'u',
);

function atOf(before: string, word: string, inBody: boolean): At {
  if (isProse(before)) return { kind: 'prose' };
  const head = new RegExp(String.raw`^\s*(${KINDS})\s+\S+\s+(?:(is|for|from|of)\s+)?\S*$`, 'u').exec(before);
  if (head && !before.includes('{') && !inBody) {
    const of = head[1] as DefinitionKind;
    return head[2] ? { kind: 'target', of, relation: head[2] } : { kind: 'relation', of };
  }
  if (!inBody && !before.includes('{')) return { kind: 'file' };
  const rest = currentStatement(before);
  const typed = rest.slice(0, rest.length - word.length);
  return inStatement(typed);
}

/** What has been typed of the statement at the end of a line. */
function currentStatement(before: string): string {
  let rest = before.slice(Math.max(before.lastIndexOf('{'), before.lastIndexOf('}')) + 1);
  for (let next = FINISHED.exec(rest); next; next = FINISHED.exec(rest)) rest = rest.slice(next[0].length);
  return rest;
}

function inStatement(typed: string): At {
  if (/^\s*$/.test(typed)) return { kind: 'statement' };
  const held = /^\s*hold\s+(\S+)(?:\s+at\s+.+?)?\s+by\s+$/u.exec(typed);
  if (held) return { kind: 'hold-by', quantity: held[1]! };
  const keyword = /^\s*(change|add|drop|hold|expect|with|accept|allow)\s+$/u.exec(typed);
  if (keyword) return { kind: 'after', keyword: keyword[1]! };
  const value = /^\s*(?:(change|expect)\s+)?([\p{L}\p{N}_.*-]+)\s*:\s*(.*)$/u.exec(typed);
  if (!value) return { kind: 'prose' };
  const [, how, path, so] = value as unknown as [string, string | undefined, string, string];
  const arrow = Math.max(so.lastIndexOf('->'), so.lastIndexOf('→'));
  const side = how === 'expect' ? 'expected' : how !== 'change' ? 'plain' : arrow < 0 ? 'old' : 'new';
  const last = arrow < 0 ? so : so.slice(arrow + (so[arrow] === '-' ? 2 : 1));
  if (new RegExp(String.raw`(?:^|[\s(,x±.])${NUMBER}\s*$`, 'u').test(last)) {
    return { kind: 'unit', path, orStatement: false };
  }
  return { kind: 'value', path, side };
}

function isProse(before: string): boolean {
  const withoutTexts = before.replace(/"(?:\\.|[^"\\])*"/g, '').replace(/\d\s?"/g, '');
  return withoutTexts.includes('//') || withoutTexts.includes('"');
}
