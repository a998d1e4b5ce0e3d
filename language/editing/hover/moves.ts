/** What a small step in one value moves: slope times step, beside what the shop could tell apart. */
import { concretePaths, discernibleDifference } from '../../recipes/evaluation/effects.js';
import type { DerivedQuantity, Evaluation } from '../../recipes/evaluation/evaluation.js';

export interface Move {
  readonly path: string;
  readonly quantity: DerivedQuantity;
  /** SI. */
  readonly value: number;
  readonly difference: number;
  /** What two instruments made alike could differ by anyway; of a wood set, how well it is known (k = 2), SI. */
  readonly discernible: number;
}

/** The quantities moved by a step in the value at `path`, most noticeable first. */
export function movesOf(path: string, step: number, evaluation: Evaluation): readonly Move[] {
  const leaf = evaluation.ground.leaf(path);
  if (!leaf) return [];
  const { all } = evaluation.derivations;
  const voicing = all.filter((quantity) => quantity.voicing);
  // A wood set has no voice of its own: there everything computed is of interest, and how well it is known.
  const isOfRecord = voicing.length === 0;
  const moves: Move[] = [];
  for (const each of concretePaths(isOfRecord ? all : voicing, evaluation)) {
    const slope = each === path ? undefined : evaluation.gradient(each).get(leaf.id);
    const derived = slope === undefined || slope === 0 ? undefined : evaluation.derived(each);
    if (!derived?.known || derived.given || slope === undefined) continue;
    const discernible = isOfRecord
      ? 2 * evaluation.uncertainty(each)
      : discernibleDifference(each, evaluation, evaluation);
    moves.push({ path: each, quantity: derived.quantity, value: derived.si, difference: slope * step, discernible });
  }
  return moves.sort((a, b) => size(b) - size(a));
}

/** Less than a tenth of what could be told is not worth a line. */
export function isWorthSaying(move: Move): boolean {
  return Math.abs(move.difference) >= move.discernible / 10;
}

export function canBeTold(move: Move): boolean {
  return Math.abs(move.difference) > move.discernible;
}

function size(move: Move): number {
  return Math.abs(move.difference) / (move.discernible || Math.abs(move.value) * 1e-6 || 1);
}
