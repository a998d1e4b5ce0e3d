/**
 * Semantic tokens: what each word of a file is, as the folder knows it. The colours of the grammar are painted first and
 * by the shape of a line alone; these say which names exist, which properties the catalogue knows, what is computed.
 *
 * A word nobody can make sense of has no token, so that it keeps the colour of its shape.
 */
import { type Definition, DEFINITION_KINDS, type Position, type Span } from '../../facts/facts.js';
import { type BookmatchParser, type Lexeme, readLexemes } from '../../recipes/shelf/reader.js';
import { allStatements } from '../../recipes/instrument/values.js';
import { type Desk, isBefore, shifted } from '../../checks/desk.js';
import { KEYWORDS } from '../keywords.js';
import type { Meaning } from './meaning.js';
import { meaningsIn } from './word-meanings.js';

/** One word on one line. Lines count from the file's first, columns and lengths in UTF-16 units. */
export interface SemanticToken extends Meaning {
  readonly line: number;
  readonly character: number;
  readonly length: number;
}

/** Tokens of a file, or of the part of it that touches `within`, in the order of the text. */
export function semanticTokens(
  desk: Desk,
  parser: BookmatchParser,
  uri: string,
  within?: Span,
): readonly SemanticToken[] {
  const text = desk.text(uri);
  if (text === undefined) return [];
  const facts = desk.shelf.file(uri)?.definitions ?? [];
  const touched = facts.filter(({ definition, line }) => !within || touches(shifted(definition.span, line), within));
  const meanings = new Map<string, Meaning & { readonly span: Span }>();
  const unread = new Set<number>();
  for (const { definition, line } of touched) {
    for (const { span, kind, modifiers } of meaningsIn(desk, definition)) {
      const here = shifted(span, line);
      meanings.set(keyOf(here.start), { span: here, kind, modifiers });
    }
    for (const unreadable of unreadLines(definition)) unread.add(unreadable + line);
  }
  const tokens: SemanticToken[] = [];
  for (const lexeme of readLexemes(text, parser).words) {
    if (within && !touches(lexeme.span, within)) continue;
    const meant = meanings.get(keyOf(lexeme.span.start));
    if (meant) tokens.push(...segmentsOf(lexeme, meanings));
    else tokens.push(...plainToken(lexeme, unread));
  }
  return tokens;
}

/** A path is one word of the text and several of the language: `top.thickness`. */
function segmentsOf(
  lexeme: Lexeme,
  meanings: ReadonlyMap<string, Meaning & { readonly span: Span }>,
): readonly SemanticToken[] {
  const tokens: SemanticToken[] = [];
  const { start, end } = lexeme.span;
  for (let character = start.character; character < end.character || tokens.length === 0;) {
    const meant = meanings.get(keyOf({ line: start.line, character }));
    if (!meant) character++;
    else {
      // A text or a name in quotes is one stretch; nothing of it may reach beyond its own word.
      const length = Math.min(meant.span.end.character, end.character) - character;
      tokens.push({ line: start.line, character, length, kind: meant.kind, modifiers: meant.modifiers });
      character += Math.max(length, 1);
    }
  }
  return tokens.filter(({ length }) => length > 0);
}

function plainToken(lexeme: Lexeme, unread: ReadonlySet<number>): readonly SemanticToken[] {
  const meaning = plainMeaning(lexeme);
  if (meaning === undefined) return [];
  if (lexeme.kind === 'word' && unread.has(lexeme.span.start.line)) return [];
  // A comment may run over several lines; a token may not.
  return lexeme.text.split(/\r\n|\n|\r/).flatMap((piece, i) => {
    const character = i === 0 ? lexeme.span.start.character : 0;
    const line = lexeme.span.start.line + i;
    return piece === '' ? [] : [{ line, character, length: piece.length, ...meaning }];
  });
}

const DEFINING: ReadonlySet<string> = new Set(DEFINITION_KINDS);
const JOINING: ReadonlySet<string> = new Set(['is', 'for', 'from', 'of', 'at', 'by', 'most', 'per', 'below', 'above']);
const WORDS: ReadonlySet<string> = new Set(KEYWORDS.map(({ word }) => word));
const OPERATOR = /^(?:->|→|±|\+\/-|\+-|\.\.\.?|…|[x×])$/u;

function plainMeaning({ kind, text }: Lexeme): Meaning | undefined {
  if (kind === 'sign') return OPERATOR.test(text) ? { kind: 'operator', modifiers: [] } : undefined;
  if (kind !== 'word') return { kind, modifiers: [] };
  if (DEFINING.has(text)) return { kind: 'keyword', modifiers: ['declaration'] };
  if (JOINING.has(text)) return { kind: 'joining', modifiers: [] };
  return WORDS.has(text) ? { kind: 'keyword', modifiers: [] } : undefined;
}

/** Lines of a definition on which something could not be read: their words are whatever they are. */
function unreadLines(definition: Definition): readonly number[] {
  const lines: number[] = [];
  const add = ({ start, end }: Span) => {
    for (let line = start.line; line <= end.line; line++) lines.push(line);
  };
  for (const statement of allStatements(definition.statements))
    if (statement.kind === 'unreadable') add(statement.span);
  return lines;
}

function touches(a: Span, b: Span): boolean {
  return !isBefore(a.end, b.start) && !isBefore(b.end, a.start);
}

function keyOf({ line, character }: Position): string {
  return `${line}:${character}`;
}
