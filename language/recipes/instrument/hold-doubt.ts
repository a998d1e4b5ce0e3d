/** How exactly a hold can be kept: the standard uncertainty of the size it solved. */
import { uncertaintyOfDifference } from '../evaluation/effects.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import { type SolvedHold, slopeAlong } from './hold.js';
import { movedBy } from './instrument.js';

/**
 * SI, of the size that is adjusted. What is kept equal to the parent's is known as well as their difference is: what both lean
 * on alike, the wood and what one formula gives for both, cancels. A value that is asked for (`at`) is known as well as the
 * quantity is. The tolerance of the size itself is none of it, since it is what is chosen. Undefined for a hold that
 * is not solved, or where it is not known how the quantity goes with the size or what the parent's leans on.
 */
export function uncertaintyOfHold(
  { request, outcome }: SolvedHold,
  now: Evaluation,
  parent: Evaluation | undefined,
): number | undefined {
  if (outcome.kind !== 'solved') return undefined;
  const { quantity, statement } = request;
  const slope = slopeAlong(request, now);
  if (!slope) return undefined;
  const whole = statement.at ? now.uncertainty(quantity) : ofDifference(quantity, parent, now);
  if (whole === undefined) return undefined;
  // The tolerances of what is moved are chosen with it.
  const gradient = now.gradient(quantity);
  const chosen = movedBy(request).flatMap((path) => now.ground.leaf(path) ?? []);
  const rest = chosen.reduce((left, leaf) => left - ((gradient.get(leaf.id) ?? 0) * leaf.sigma) ** 2, whole ** 2);
  return Math.sqrt(Math.max(0, rest)) / Math.abs(slope);
}

/** Without the parent's slopes nothing would cancel, and nothing of the parent's own would be in it. */
function ofDifference(quantity: string, parent: Evaluation | undefined, now: Evaluation): number | undefined {
  return parent && parent.gradient(quantity).size > 0 ? uncertaintyOfDifference(quantity, parent, now) : undefined;
}
