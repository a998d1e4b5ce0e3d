/** What two instruments say otherwise: exactly, since what they say alike has its answers taken over. */
import type { Value } from '../../facts/facts.js';
import type { Held } from '../instrument/instrument.js';
import { sameValue } from '../instrument/values.js';
import type { Differences } from './derived-quantity.js';

interface Said {
  readonly values: ReadonlyMap<string, Held>;
  readonly others: ReadonlyMap<string, { readonly name: string; readonly evaluation: unknown }>;
  readonly members: (part: string) => readonly string[];
}

/** `parts`: those whose members are worth comparing. */
export function differencesBetween(a: Said, b: Said, parts: Iterable<string>): Differences {
  const { values, isInOrder } = differingValues(a.values, b.values);
  const elsewhere = differingNames(a.others, b.others);
  const members = new Set<string>();
  for (const part of parts) {
    // A list has its entries for members, a set of strings its strings, and the number of frets says how many there are.
    const mayHaveOthers =
      !isInOrder || values.has(part) || elsewhere.has(part) || (part === 'frets' && values.has('frets.count'));
    if (mayHaveOthers && !sameWords(a.members(part), b.members(part))) members.add(part);
  }
  return { values, members, elsewhere };
}

/** `isInOrder`: the same paths, in the order in which members of a part are told. */
function differingValues(a: ReadonlyMap<string, Held>, b: ReadonlyMap<string, Held>) {
  const values = new Set<string>();
  let isInOrder = a.size === b.size;
  const inOrder = b.keys();
  for (const [path, held] of a) {
    if (inOrder.next().value !== path) isInOrder = false;
    const other = b.get(path);
    if (!other || !isTheSame(held.value, other.value)) values.add(path);
  }
  if (!isInOrder) for (const path of b.keys()) if (!a.has(path)) values.add(path);
  return { values, isInOrder };
}

function differingNames(a: Said['others'], b: Said['others']): ReadonlySet<string> {
  const differing = new Set<string>();
  for (const [path, { name, evaluation }] of a) {
    const other = b.get(path);
    if (other?.name !== name || other.evaluation !== evaluation) differing.add(path);
  }
  for (const path of b.keys()) if (!a.has(path)) differing.add(path);
  return differing;
}

/** To the last digit, and in the same unit; a value of several parts is taken for another unless it is the very same. */
function isTheSame(a: Value, b: Value): boolean {
  if (a === b) return true;
  if (a.kind === 'quantity' && b.kind === 'quantity') {
    const [one, other] = [a.quantity, b.quantity];
    return (
      one.si === other.si &&
      one.tolerance === other.tolerance &&
      one.unit === other.unit &&
      one.dimension.name === other.dimension.name
    );
  }
  if (a.kind === 'point' && b.kind === 'point') return isTheSame(a.station, b.station) && isTheSame(a.offset, b.offset);
  return (a.kind === 'name' || a.kind === 'text' || a.kind === 'date') && sameValue(a, b);
}

function sameWords(a: readonly string[], b: readonly string[]): boolean {
  return a === b || (a.length === b.length && a.every((word, i) => word === b[i]));
}
