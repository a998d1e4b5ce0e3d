/** What a change does: each voicing quantity before and after, and whether a difference of that size can be told apart. */
import type { DerivedQuantity, Evaluation } from './evaluation.js';

export interface Effect {
  readonly path: string;
  readonly quantity: DerivedQuantity;
  /** SI. */
  readonly before: number;
  readonly after: number;
  readonly difference: number;
  /**
   * The smallest difference between two such instruments that the shop's tolerances and the wood's own uncertainty
   * would not produce anyway: twice the standard uncertainty of the difference (JCGM 100:2008, 6.2.1, k = 2), SI; for
   * what is heard, with the scatter between instruments built alike.
   */
  readonly discernible: number;
}

/** Every derived quantity with its `*` filled in by the members both instruments have. */
export function concretePaths(quantities: Iterable<DerivedQuantity>, ...evaluations: Evaluation[]): readonly string[] {
  const paths: string[] = [];
  for (const { path } of quantities) {
    const star = path.indexOf('.*');
    if (star < 0) {
      paths.push(path);
      continue;
    }
    const part = path.slice(0, star);
    const [first, ...others] = evaluations;
    if (!first) continue;
    const all = others.map((evaluation) => evaluation.ground.members(part));
    for (const member of first.ground.members(part)) {
      if (all.every((members) => members.includes(member))) paths.push(first.derivations.pathOf(path, member));
    }
  }
  return paths;
}

/** The voicing quantities that differ between two evaluations, largest against what can be told apart first. */
export function effectsBetween(before: Evaluation, after: Evaluation): readonly Effect[] {
  return differencesBetween(before, after)
    .map((difference) => withDoubt(difference, before, after))
    .sort((a, b) => size(b) - size(a));
}

/** Whether any of them can be told apart. The largest come first, and with the first that can nothing further is worked out. */
export function makesDifference(before: Evaluation, after: Evaluation): boolean {
  return differencesBetween(before, after)
    .sort((a, b) => share(b) - share(a))
    .some((difference) => isDiscernible(withDoubt(difference, before, after)));
}

export function effectOn(path: string, before: Evaluation, after: Evaluation): Effect | undefined {
  const difference = differenceOn(path, before, after);
  return difference && withDoubt(difference, before, after);
}

type Difference = Omit<Effect, 'discernible'>;

function differencesBetween(before: Evaluation, after: Evaluation): Difference[] {
  const voicing = before.derivations.all.filter((quantity) => quantity.voicing);
  return concretePaths(voicing, before, after).flatMap((path) => {
    const found = differenceOn(path, before, after);
    return found && Math.abs(found.difference) > 1e-9 * Math.abs(found.before) ? [found] : [];
  });
}

function differenceOn(path: string, before: Evaluation, after: Evaluation): Difference | undefined {
  const a = before.derived(path);
  if (!a?.known) return undefined;
  const b = after.derived(path);
  if (!b?.known) return undefined;
  return { path, quantity: a.quantity, before: a.si, after: b.si, difference: b.si - a.si };
}

function withDoubt(difference: Difference, before: Evaluation, after: Evaluation): Effect {
  return { ...difference, discernible: discernibleDifference(difference.path, before, after) };
}

/**
 * The smallest difference in a quantity that would mean anything: what the tolerances of shop and wood would produce
 * anyway (k = 2), and for what is heard also the scatter between instruments built alike.
 */
export function discernibleDifference(path: string, a: Evaluation, b: Evaluation): number {
  const known = a.derived(path);
  const scatter = known?.known ? (known.quantity.scatter ?? 0) * Math.abs(known.si) : 0;
  return Math.hypot(2 * uncertaintyOfDifference(path, a, b), scatter);
}

export function isDiscernible(effect: Effect): boolean {
  return Math.abs(effect.difference) > effect.discernible;
}

/**
 * Standard uncertainty of the difference of one quantity between two instruments. What both share (the very same wood
 * set) cancels as far as both lean on it; what each has of its own (a thickness planed twice) does not.
 */
export function uncertaintyOfDifference(path: string, a: Evaluation, b: Evaluation): number {
  const slopesA = a.gradient(path);
  const slopesB = b.gradient(path);
  let sum = 0;
  for (const [id, slope] of slopesA) {
    if (isShared(id)) sum += ((slope - (slopesB.get(id) ?? 0)) * a.sigma(id)) ** 2;
    else sum += (slope * a.sigma(id)) ** 2;
  }
  for (const [id, slope] of slopesB) {
    if (isShared(id) && slopesA.has(id)) continue;
    sum += (slope * b.sigma(id)) ** 2;
  }
  return Math.sqrt(sum);
}

/**
 * Standard uncertainty that two computed values have in common because one formula gives both, SI: it cancels in their
 * difference as far as both lean on it alike.
 */
export function cancelledDoubt(path: string, a: Evaluation, b: Evaluation): number {
  const slopesB = b.gradient(path);
  let sum = 0;
  for (const [id, slope] of a.gradient(path)) {
    if (!a.leafOf(id)?.model || !isShared(id)) continue;
    const other = slopesB.get(id) ?? 0;
    // Alike in both: the smaller of the two, where they go the same way.
    if (slope * other > 0) sum += (Math.min(Math.abs(slope), Math.abs(other)) * a.sigma(id)) ** 2;
  }
  return Math.sqrt(sum);
}

/** Leaves of things with a name of their own carry it before a space: `wood sitka-118: mass`. */
function isShared(id: string): boolean {
  return id.includes(' ');
}

function share({ difference, before }: Difference): number {
  return Math.abs(difference) / (Math.abs(before) || Math.abs(difference));
}

function size(effect: Effect): number {
  return Math.abs(effect.difference) / (effect.discernible || Math.abs(effect.before) * 1e-6 || 1);
}
