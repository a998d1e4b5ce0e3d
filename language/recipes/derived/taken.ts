/** A number a recipe may leave out: what the catalogue takes in its place, said where it is more than that nothing is there. */
import { takenAs } from '../../catalogue/taken-as.js';
import type { Ask } from '../evaluation/derived-quantity.js';

/** `as`: the path under which the catalogue says so, where it is another. */
export function taken(ask: Ask, path: string, as = path): number {
  const usual = takenAs(as);
  if (!usual) return ask.number(path);
  if (usual.word !== undefined && ask.word(path) === usual.word) return usual.si;
  return usual.assumption === undefined
    ? (ask.numberIf(path) ?? usual.si)
    : ask.numberOr(path, usual.si, usual.assumption);
}
