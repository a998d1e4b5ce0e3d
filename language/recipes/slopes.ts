/** How much a derived quantity moves with one of the numbers it asked for. */
import { Asking } from './asking.js';
import type { DerivedQuantity } from './derived-quantity.js';
import type { Evaluation } from './evaluation.js';

/** One number a quantity asked for. */
export interface Asked {
  readonly path: string;
  readonly si: number;
}

/** d(quantity)/d(input), SI per SI: what the quantity itself knows, or else a central difference. */
export function partialOf(evaluation: Evaluation, quantity: DerivedQuantity, member: string, input: Asked): number {
  if (!quantity.slopes) return difference(evaluation, quantity, member, input);
  try {
    return quantity.slopes(new Asking(evaluation, member, undefined)).get(input.path) ?? 0;
  } catch {
    return 0; // the analysis has been dropped since; it will be asked for again with the quantity itself
  }
}

/** With respect to one direct input, everything else it asked for kept as it was. */
function difference(evaluation: Evaluation, quantity: DerivedQuantity, member: string, input: Asked): number {
  const step = Math.abs(input.si) * 1e-4 || 1e-9;
  const at = (si: number) => {
    try {
      return quantity.compute(new Asking(evaluation, member, { path: input.path, si }));
    } catch {
      return Number.NaN; // at the edge of what the formula allows; the one-sided slope below is used instead
    }
  };
  const up = at(input.si + step);
  const down = at(input.si - step);
  if (Number.isFinite(up) && Number.isFinite(down)) return (up - down) / (2 * step);
  const here = at(input.si);
  if (Number.isFinite(up)) return (up - here) / step;
  if (Number.isFinite(down)) return (here - down) / step;
  return 0;
}
