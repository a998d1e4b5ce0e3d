/** What each word of a file is, for colouring. The same word may be a keyword here and a name there. */
import { CstUtils } from 'langium';
import type { ParsedFile } from './parse.js';
import { type Place, placeOf } from './problem.js';
import { type Token, kindOf } from './token.js';

export type MarkKind =
  'keyword' | 'name' | 'path' | 'choice' | 'number' | 'unit' | 'text' | 'date' | 'comment' | 'sign' | 'unreadable';

export interface MarkedWord {
  readonly kind: MarkKind;
  readonly span: Place;
}

export function markWords(file: ParsedFile): MarkedWord[] {
  const byPlace = new Map<number, MarkKind>();
  for (const { ast } of file.definitions) {
    if (ast.$cstNode === undefined) continue;
    for (const leaf of CstUtils.flattenCst(ast.$cstNode)) {
      const keyword = leaf.grammarSource?.$type === 'Keyword' && /^\w/.test(leaf.text);
      const mark = keyword ? 'keyword' : BY_NODE[`${leaf.astNode.$type}`];
      if (mark !== undefined)
        byPlace.set(leaf.offset, leaf.astNode.$containerProperty === 'items' ? (VALUE_MARKS[mark] ?? mark) : mark);
    }
  }
  return file.tokens.map((token) => ({ kind: markOf(token, byPlace), span: placeOf(token, token) }));
}

const BY_NODE: Readonly<Record<string, MarkKind>> = { Word: 'name', Path: 'path' };
/** A path in the place of a value is a choice or the name of something. */
const VALUE_MARKS: Partial<Record<MarkKind, MarkKind>> = { path: 'choice' };

const BY_TOKEN: Readonly<Record<string, MarkKind>> = {
  NUMBER: 'number',
  UNIT: 'unit',
  STRING: 'text',
  OPEN_TEXT: 'text',
  DATE: 'date',
  LINE_COMMENT: 'comment',
  BLOCK_COMMENT: 'comment',
  OPEN_COMMENT: 'comment',
  STRAY: 'unreadable',
};

function markOf(token: Token, byPlace: ReadonlyMap<number, MarkKind>): MarkKind {
  const kind = kindOf(token);
  const mark = BY_TOKEN[kind] ?? byPlace.get(token.startOffset);
  if (mark !== undefined) return mark;
  // A word no tree contains stands on a line that does not read.
  return /^[A-Za-z]+$/.test(kind) && !/^(TIMES|PLUS_MINUS|ARROW|DOTS)$/.test(kind) && token.image.length > 0
    ? 'unreadable'
    : 'sign';
}
