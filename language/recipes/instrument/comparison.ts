/**
 * Two instruments side by side: what differs in their values, what differs in what they compute to, and how much of
 * each difference every change is answerable for.
 */
import { DIMENSION, sameDimension } from '../../quantities/dimension.js';
import type { VariableClass } from '../../catalogue/property.js';
import { cancelledDoubt, concretePaths, discernibleDifference } from '../evaluation/effects.js';
import type { DerivedQuantity, Evaluation } from '../evaluation/evaluation.js';
import type { TogetherStatement } from '../../facts/facts.js';
import type { Held } from './instrument.js';
import { allStatements, sameValue } from './values.js';

export interface Side {
  readonly name: string;
  readonly kind: 'recipe' | 'model' | 'build';
  readonly values: ReadonlyMap<string, Held>;
  readonly evaluation: Evaluation;
}

export interface Comparison {
  readonly a: Side;
  readonly b: Side;
  /** The nearest recipe both descend from (or are). */
  readonly ancestor?: string;
  readonly differences: readonly Difference[];
  readonly derived: readonly DerivedDifference[];
}

/** Paths that differ for one reason: one path, one member come or gone, or one `together` group. */
export interface Difference {
  readonly label: string;
  readonly class: VariableClass;
  readonly paths: readonly { readonly path: string; readonly a?: Held; readonly b?: Held }[];
}

export interface DerivedDifference {
  readonly path: string;
  readonly quantity: DerivedQuantity;
  /** SI; undefined where it cannot be computed, with what is missing. */
  readonly a?: number;
  readonly b?: number;
  readonly missing: readonly string[];
  /** Why it cannot be computed although nothing is missing. */
  readonly trouble?: string;
  /** The solver is still at one of the two, or at what each change does by itself. */
  readonly pending?: true;
  readonly difference?: number;
  readonly percent?: number;
  /** What would have to be exceeded to be told apart (k = 2), SI. */
  readonly discernible?: number;
  /** Standard uncertainty of the formula that both have in common: it is in each value and not in their difference. */
  readonly cancelled?: number;
  /** By label of `Difference`, SI; their sum and `remainder` make up the difference. */
  readonly contributions: readonly { readonly label: string; readonly amount: number }[];
  /** What the changes do together beyond what each does by itself. */
  readonly remainder: number;
}

export interface ComparisonContext {
  readonly ancestor?: string;
  readonly classOf: (path: string) => VariableClass;
  /** Evaluates what is near one side as that side is: the two may come from different texts of one folder. */
  readonly evaluate: (values: ReadonlyMap<string, Held>, near: 'a' | 'b') => Evaluation;
}

export function compare(a: Side, b: Side, context: ComparisonContext): Comparison {
  const differences = differencesBetween(a.values, b.values, context.classOf);
  return { a, b, ancestor: context.ancestor, differences, derived: compareDerived(a, b, differences, context) };
}

/** The nearest recipe of both lines, given each line from base to tip. */
export function nearestCommon(a: readonly string[], b: readonly string[]): string | undefined {
  const others = new Set(b);
  return [...a].reverse().find((name) => others.has(name));
}

export function differencesBetween(
  a: ReadonlyMap<string, Held>,
  b: ReadonlyMap<string, Held>,
  classOf: (path: string) => VariableClass,
): readonly Difference[] {
  const groups = new Map<string, { path: string; a?: Held; b?: Held }[]>();
  for (const path of new Set([...a.keys(), ...b.keys()])) {
    const [x, y] = [a.get(path), b.get(path)];
    if (sameValue(x?.value, y?.value)) continue;
    const label = reasonFor(path, x, y, a, b);
    const group = groups.get(label);
    if (group) group.push({ path, a: x, b: y });
    else groups.set(label, [{ path, a: x, b: y }]);
  }
  return [...groups].map(([label, paths]) => ({ label, paths, class: classOf(paths[0]!.path) }));
}

function reasonFor(
  path: string,
  x: Held | undefined,
  y: Held | undefined,
  a: ReadonlyMap<string, Held>,
  b: ReadonlyMap<string, Held>,
): string {
  const group = (y && groupOf(y)) ?? (x && groupOf(x));
  if (group?.reason) return group.reason.text;
  const member = path.slice(0, path.lastIndexOf('.'));
  const [inA, inB] = [hasMember(a, member), hasMember(b, member)];
  return member.includes('.') && inA !== inB ? member : path;
}

function hasMember(values: ReadonlyMap<string, Held>, member: string): boolean {
  for (const path of values.keys()) if (path.startsWith(`${member}.`)) return true;
  return false;
}

/** The `together` group in which a value was set, if any. */
function groupOf(held: Held): TogetherStatement | undefined {
  for (const statement of allStatements(held.from.definition.statements)) {
    if (statement.kind !== 'together') continue;
    for (const inner of allStatements(statement.statements)) if (inner.span === held.from.span) return statement;
  }
  return undefined;
}

function compareDerived(
  a: Side,
  b: Side,
  differences: readonly Difference[],
  context: ComparisonContext,
): readonly DerivedDifference[] {
  const steps = differences.map((difference) => ({
    label: difference.label,
    forward: context.evaluate(swapped(a.values, difference, 'b'), 'a'),
    backward: context.evaluate(swapped(b.values, difference, 'a'), 'b'),
  }));
  return concretePaths(a.evaluation.derivations.all, a.evaluation, b.evaluation).map((path) => {
    const { quantity } = a.evaluation.derivations.find(path)!;
    const [x, y] = [a.evaluation.derived(path)!, b.evaluation.derived(path)!];
    if (!x.known || !y.known) {
      const missing = [...new Set([...(x.known ? [] : x.missing), ...(y.known ? [] : y.missing)])];
      const trouble = (x.known ? undefined : x.trouble) ?? (y.known ? undefined : y.trouble);
      const pending = [x, y].some((side) => !side.known && side.pending);
      return {
        path,
        quantity,
        a: x.known ? x.si : undefined,
        b: y.known ? y.si : undefined,
        missing,
        ...(trouble === undefined ? {} : { trouble }),
        ...(pending ? { pending: true } : {}),
        contributions: [],
        remainder: 0,
      };
    }
    const difference = y.si - x.si;
    const moved = Math.abs(difference) > 1e-9 * Math.max(Math.abs(x.si), Math.abs(y.si));
    const pending = moved && steps.length > 1 && steps.some((step) => isPending(path, step));
    const contributions = moved && !pending ? shares(path, x.si, y.si, steps) : [];
    return {
      path,
      quantity,
      a: x.si,
      b: y.si,
      missing: [],
      ...(pending ? { pending: true } : {}),
      difference,
      // A level is a logarithm: a share of it says nothing.
      percent: x.si === 0 || sameDimension(quantity.dimension, DIMENSION.level) ? undefined : (100 * difference) / x.si,
      discernible: discernibleDifference(path, a.evaluation, b.evaluation),
      cancelled: cancelledDoubt(path, a.evaluation, b.evaluation),
      contributions,
      remainder: pending ? 0 : difference - contributions.reduce((sum, { amount }) => sum + amount, 0),
    };
  });
}

interface Step {
  readonly label: string;
  readonly forward: Evaluation;
  readonly backward: Evaluation;
}

function isPending(path: string, { forward, backward }: Step): boolean {
  return [forward, backward].some((evaluation) => {
    const answer = evaluation.derived(path);
    return answer?.known === false && answer.pending === true;
  });
}

/**
 * A change's share is the mean of what it does when made first and when made last: with two changes this is their
 * Shapley value, and what is left over with more is reported as a remainder, not spread in silence.
 */
function shares(
  path: string,
  a: number,
  b: number,
  steps: readonly Step[],
): readonly { label: string; amount: number }[] {
  if (steps.length === 1) return [{ label: steps[0]!.label, amount: b - a }];
  const result: { label: string; amount: number }[] = [];
  for (const { label, forward, backward } of steps) {
    const [first, last] = [forward.number(path), backward.number(path)];
    if (first === undefined || last === undefined) continue;
    const amount = (first - a + (b - last)) / 2;
    if (Math.abs(amount) > 1e-9 * Math.max(Math.abs(a), Math.abs(b))) result.push({ label, amount });
  }
  return result.sort((x, y) => Math.abs(y.amount) - Math.abs(x.amount));
}

/** One side's values with one difference taken from the other side. */
function swapped(values: ReadonlyMap<string, Held>, difference: Difference, from: 'a' | 'b'): Map<string, Held> {
  const next = new Map(values);
  for (const entry of difference.paths) {
    const held = entry[from];
    if (held) next.set(entry.path, held);
    else next.delete(entry.path);
  }
  return next;
}
