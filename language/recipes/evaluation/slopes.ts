/** How much a derived quantity moves with one of the numbers it asked for. */
import { MechanicsError } from '../../mechanics/error.js';
import { Asking } from './asking.js';
import type { Ask, DerivedQuantity, Leaf, ModelError } from './derived-quantity.js';
import type { Answering } from './respondent.js';

/** One number a quantity asked for. */
export interface Asked {
  readonly path: string;
  readonly si: number;
}

/**
 * d(quantity)/d(input) for every number it asks for, SI per SI, of a quantity that knows its own slopes; undefined while it cannot
 * tell them, its analysis having been dropped since: it will be asked for again with the quantity itself.
 */
export function slopesOf(
  evaluation: Answering,
  slopes: (ask: Ask) => ReadonlyMap<string, number>,
  member: string,
): ReadonlyMap<string, number> | undefined {
  const asked = new Asking(evaluation, member, undefined);
  try {
    return slopes(asked);
  } catch (error) {
    if (!isNoAnswer(error, asked)) throw error;
    return undefined;
  }
}

/** d(quantity)/d(input) by a central difference, everything else it asked for kept as it was. */
export function differenceTo(evaluation: Answering, quantity: DerivedQuantity, member: string, input: Asked): number {
  const step = Math.abs(input.si) * 1e-4 || 1e-9;
  const at = (si: number) => {
    const asked = new Asking(evaluation, member, { path: input.path, si });
    try {
      return quantity.compute(asked);
    } catch (error) {
      if (!isNoAnswer(error, asked)) throw error;
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

/** What a formula may be off by is one more number it leans on: 1, times what it computes. */
export function leavesOfDoubts(doubts: readonly ModelError[], owner: string): readonly Leaf[] {
  return doubts.flatMap((model) =>
    [
      { id: `formula: ${model.key}`, sigma: model.common },
      { id: `${owner}formula:${model.key}`, sigma: model.own },
    ].flatMap(({ id, sigma }): readonly Leaf[] => (sigma === 0 ? [] : [{ id, si: 1, sigma, basis: 'assumed', model }])),
  );
}

/** Ended because something is missing or out of bounds; any other exception is a bug and goes on. */
function isNoAnswer(error: unknown, { pending, absent }: Asking): boolean {
  return pending || absent.length > 0 || error instanceof MechanicsError;
}
