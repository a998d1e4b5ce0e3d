/** What each word of a file is, for colouring. The same word may be a keyword here and a name there. */
import { CstUtils } from 'langium';
import type { LeafCstNode } from 'langium';
import type { ParsedFile } from './parse.js';
import { type Place, placeOf } from './problem.js';
import { relationIndex } from './relation.js';
import { type Token, isWord, kindOf } from './token.js';

export type MarkKind =
  'keyword' | 'name' | 'path' | 'choice' | 'number' | 'unit' | 'text' | 'date' | 'comment' | 'sign' | 'unreadable';

export interface MarkedWord {
  readonly kind: MarkKind;
  readonly text: string;
  readonly span: Place;
}

export function markWords(file: ParsedFile): MarkedWord[] {
  const byPlace = new Map<number, MarkKind>();
  for (const { ast } of file.definitions) {
    if (ast.$cstNode === undefined) continue;
    for (const leaf of CstUtils.flattenCst(ast.$cstNode)) byPlace.set(leaf.offset, markOfLeaf(leaf));
    const relation = ast.words[relationIndex(ast.words.map((word) => word.text))]?.$cstNode;
    if (relation) byPlace.set(relation.offset, 'keyword');
  }
  return file.tokens.map((token) => ({
    kind: markOf(token, byPlace),
    text: token.image,
    span: placeOf(token, token),
  }));
}

function markOfLeaf(leaf: LeafCstNode): MarkKind {
  if (leaf.grammarSource?.$type === 'Keyword') return /^\w/.test(leaf.text) ? 'keyword' : 'sign';
  const { $type, $containerProperty } = leaf.astNode;
  if ($type === 'Word') return 'name';
  // A path in the place of a value is a choice or the name of something.
  if ($type === 'Path') return $containerProperty === 'items' ? 'choice' : 'path';
  return $type === 'Broken' ? 'unreadable' : 'sign';
}

const BY_TOKEN: ReadonlyMap<string, MarkKind> = new Map(
  Object.entries<MarkKind>({
    NUMBER: 'number',
    UNIT: 'unit',
    STRING: 'text',
    OPEN_TEXT: 'text',
    DATE: 'date',
    LINE_COMMENT: 'comment',
    BLOCK_COMMENT: 'comment',
    OPEN_COMMENT: 'comment',
    STRAY: 'unreadable',
  }),
);

function markOf(token: Token, byPlace: ReadonlyMap<number, MarkKind>): MarkKind {
  // A word that no tree contains stands on a line that does not read.
  return BY_TOKEN.get(kindOf(token)) ?? byPlace.get(token.startOffset) ?? (isWord(token) ? 'unreadable' : 'sign');
}
