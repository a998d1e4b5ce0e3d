/** Which columns of a design can be told apart, which always moved together, and which are tangled among several. */
import { correlationOf, directionsOf, isVaried, LEAST_VARIED } from './least-squares.js';

export interface Separation {
  /** Columns (by index) that moved as one; most have one member. Columns that never moved are in none. */
  readonly groups: readonly (readonly number[])[];
  /** Groups whose own effect can be found. */
  readonly clear: readonly (readonly number[])[];
  /** Groups of which one can be made up from the others: none of their effects can be found by itself. */
  readonly tangled: readonly (readonly (readonly number[])[])[];
}

export function separate(columns: readonly (readonly number[])[]): Separation {
  const groups = movedTogether(columns);
  const never = neverVaried(groups.map(([first]) => columns[first!]!));
  const clear = groups.filter((_, i) => never[i]![i]! < SHARED);
  const left = new Set(groups.flatMap((_, i) => (never[i]![i]! < SHARED ? [] : [i])));
  const tangled: (readonly number[])[][] = [];
  for (const start of left) {
    const knot = [start];
    left.delete(start);
    for (const i of knot) {
      for (const j of left) {
        if (never[i]![j]! ** 2 < SHARED ** 2) continue;
        left.delete(j);
        knot.push(j);
      }
    }
    tangled.push(knot.sort((a, b) => a - b).map((i) => groups[i]!));
  }
  return { groups, clear, tangled };
}

/** Whatever moved with any member of a group belongs to it. */
function movedTogether(columns: readonly (readonly number[])[]): readonly (readonly number[])[] {
  let groups: (readonly number[])[] = [];
  columns.forEach((column, i) => {
    if (!isVaried(column)) return;
    const isWith = (j: number) => Math.abs(correlationOf(columns[j]!, column)) > 1 - LEAST_VARIED;
    const joined = groups.filter((group) => group.some(isWith));
    // A group keeps the place of its first member.
    const merged = [...joined.flat(), i].sort((a, b) => a - b);
    groups = [...groups.filter((group) => !joined.includes(group)), merged].sort(([a], [b]) => a! - b!);
  });
  return groups;
}

/** A column with less than this share of its square in what was never varied is clear of it. */
const SHARED = 1e-3;

/** The projector onto the combinations of columns that nobody varied. */
function neverVaried(columns: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const { values, vectors, least } = directionsOf(columns);
  const idle = vectors.filter((_, k) => values[k]! < least);
  return columns.map((_, i) => columns.map((__, j) => idle.reduce((sum, v) => sum + v[i]! * v[j]!, 0)));
}
