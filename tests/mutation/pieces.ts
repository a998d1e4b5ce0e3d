/**
 * A source file cut into pieces along its declarations, so that a run can be stopped and gone on with, and so that a share of it
 * can be drawn. Every mutant lies within one declaration or class member, and so within one piece.
 */
import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** Lines of one file, counted from 1, both ends included. */
export interface Piece {
  readonly file: string;
  readonly from: number;
  readonly to: number;
}

/** Pieces of some size; `most` lines in each, unless one declaration has more. */
export function piecesOf(file: string, most: number): readonly Piece[] {
  const pieces: Piece[] = [];
  for (const next of declarationsOf(file)) {
    const last = pieces.at(-1);
    if (last && next.to - last.from < most) pieces[pieces.length - 1] = { ...last, to: next.to };
    else pieces.push(next);
  }
  return pieces;
}

export function declarationsOf(file: string): readonly Piece[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const lineOf = (position: number) => source.getLineAndCharacterOfPosition(position).line + 1;
  const found = source.statements
    .filter(
      (node) => !ts.isImportDeclaration(node) && !ts.isInterfaceDeclaration(node) && !ts.isTypeAliasDeclaration(node),
    )
    .flatMap((node): readonly ts.Node[] => (ts.isClassDeclaration(node) ? node.members : [node]));
  return found.map((node) => ({ file, from: lineOf(node.getStart()), to: lineOf(node.getEnd()) }));
}

/** Each with the same chance, drawn by a seed: the same seed, the same share. (Park and Miller's generator, 1988) */
export function drawn<T>(all: readonly T[], share: number, seed: number): readonly T[] {
  let state = (seed % 2147483646) + 1;
  return all.filter(() => (state = (state * 48271) % 2147483647) / 2147483647 < share);
}
