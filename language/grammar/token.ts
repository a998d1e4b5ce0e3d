/** What a token is to the rest of this folder, and the few questions asked of one. */
import type { LexerResult } from 'langium';
import { DEFINITION_KINDS } from '../facts/facts.js';
import { STATEMENT_WORDS } from '../facts/statement-words.js';

export type Token = LexerResult['tokens'][number];
export type TokenType = Token['tokenType'];
export type TokenTypes = Readonly<Record<string, TokenType>>;

/** The word that opens each kind of definition. */
export const DEFINITION_WORDS: ReadonlySet<string> = new Set(DEFINITION_KINDS);

/** Words that join values, and therefore are no unit after a number. */
export const JOINING_WORDS: ReadonlySet<string> = new Set([
  ...STATEMENT_WORDS,
  'x',
  'by',
  'at',
  'per',
  'to',
  'and',
  'or',
  'is',
  'for',
  'from',
  'of',
]);

/** The item at an index known to exist. */
export function itemAt<T>(list: readonly T[], index: number): T {
  const item = list[index];
  if (item === undefined) throw new RangeError(`There is no item ${index} among ${list.length}.`);
  return item;
}

export function kindOf(token: Token | undefined): string {
  return token?.tokenType.name ?? '';
}

/** True for any word that may name something, keywords included. */
export function isWord(token: Token | undefined): boolean {
  if (token === undefined) return false;
  return (
    token.tokenType.name === 'PATH' ||
    ((token.tokenType.CATEGORIES?.length ?? 0) > 0 && token.tokenType.name !== 'OPEN_TEXT')
  );
}

export function isText(token: Token | undefined): boolean {
  const kind = kindOf(token);
  return kind === 'STRING' || kind === 'OPEN_TEXT';
}

export function lineOf(token: Token): number {
  return token.startLine ?? 1;
}

/** One past the last character. */
export function endOffset(token: Token): number {
  return token.startOffset + token.image.length;
}

/** A token that stands for nothing written, placed right after (or, with `before`, right before) another. */
export function virtualToken(tokenType: TokenType, beside: Token, before = false): Token {
  const line = before ? beside.startLine : beside.endLine;
  const column = before ? (beside.startColumn ?? 1) : (beside.endColumn ?? 0) + 1;
  const offset = before ? beside.startOffset : endOffset(beside);
  return {
    image: '',
    startOffset: offset,
    endOffset: offset - 1,
    startLine: line,
    endLine: line,
    startColumn: column,
    endColumn: column - 1,
    tokenType,
    tokenTypeIdx: tokenType.tokenTypeIdx ?? 0,
  };
}

/** One token in place of several, covering the text from the first to the last. */
export function mergedToken(tokenType: TokenType, first: Token, last: Token, text: string): Token {
  return {
    image: text.slice(first.startOffset, endOffset(last)),
    startOffset: first.startOffset,
    endOffset: last.endOffset,
    startLine: first.startLine,
    endLine: last.endLine,
    startColumn: first.startColumn,
    endColumn: last.endColumn,
    tokenType,
    tokenTypeIdx: tokenType.tokenTypeIdx ?? 0,
  };
}
