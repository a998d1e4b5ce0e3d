/** How far the computed effect of a step may be off for what is not known of the instrument: woods, sizes, tensions. */
import type { Evaluation } from './evaluation.js';

/**
 * Standard uncertainty of the difference of one quantity before and after a step of one instrument, SI (JCGM 100:2008, eq. 10
 * applied to the difference): whatever is uncertain is the same before and after, so only the change of slope counts.
 */
export function uncertaintyOfStep(path: string, before: Evaluation, after: Evaluation): number {
  const [a, b] = [before.gradient(path), after.gradient(path)];
  let sum = 0;
  for (const id of new Set([...a.keys(), ...b.keys()])) {
    // What is only there before or after is the step itself.
    if (!a.has(id) || !b.has(id)) continue;
    sum += ((b.get(id)! - a.get(id)!) * Math.max(before.sigma(id), after.sigma(id))) ** 2;
  }
  return Math.sqrt(sum);
}
