/** A share of the declarations of a source file, for a quick look that can be had again. */
import { readFileSync } from 'node:fs';
import ts from 'typescript';

/** Lines of one declaration or class member, counted from 0, both ends included. */
export interface Piece {
  readonly from: number;
  readonly to: number;
}

export function declarationsOf(file: string): readonly Piece[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest, true);
  const lineOf = (position: number) => source.getLineAndCharacterOfPosition(position).line;
  return source.statements
    .flatMap((node): readonly ts.Node[] => (ts.isClassDeclaration(node) ? node.members : [node]))
    .map((node) => ({ from: lineOf(node.getStart()), to: lineOf(node.getEnd()) }));
}

/** Each with the same chance, drawn by a seed: the same seed, the same share. (Park and Miller's generator, 1988) */
export function drawn<T>(all: readonly T[], share: number, seed: number): readonly T[] {
  let state = (seed % 2147483646) + 1;
  return all.filter(() => (state = (state * 48271) % 2147483647) / 2147483647 < share);
}
