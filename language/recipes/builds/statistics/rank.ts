/** Which columns depend on one another. */
import type { Matrix } from './cholesky.js';

/** Less of its length than this outside the others: by common practice a column cannot be told from them any more. */
const SHARED = 0.1;

/** Number of independent columns. */
export function rankOf(rows: Matrix): number {
  return new Basis(1e-6).addAll(rows).length;
}

/**
 * A set of columns that spans them all, and those of them that none of the others can make up. `open`: columns of which
 * nothing is known beforehand; only these can get in each other's way.
 */
export function standIn(
  rows: Matrix,
  open: readonly boolean[],
): { readonly columns: readonly number[]; readonly clear: ReadonlySet<number> } {
  const width = open.length;
  const all = Array.from({ length: width }, (_, j) => j);
  const free = all.filter((j) => open[j]);
  const kept = new Set(new Basis(SHARED).add(rows, free));
  const clear = all.filter((j) => !open[j] || (kept.has(j) && isClear(rows, free, j)));
  return { columns: all.filter((j) => !open[j] || kept.has(j)), clear: new Set(clear) };
}

function isClear(rows: Matrix, free: readonly number[], j: number): boolean {
  const others = new Basis(SHARED);
  others.add(
    rows,
    free.filter((k) => k !== j),
  );
  return others.takes(rows.map((row) => row[j]!));
}

/** Columns at right angles, one at a time. */
class Basis {
  private readonly vectors: (readonly number[])[] = [];

  constructor(private readonly shared: number) {}

  addAll(rows: Matrix): readonly number[] {
    return this.add(
      rows,
      (rows[0] ?? []).map((_, j) => j),
    );
  }

  /** Those that were not made up from the ones before. */
  add(rows: Matrix, columns: readonly number[]): readonly number[] {
    return columns.filter((j) => {
      const column = rows.map((row) => row[j]!);
      if (!this.takes(column)) return false;
      const rest = this.outside(column);
      const length = Math.hypot(...rest);
      this.vectors.push(rest.map((value) => value / length));
      return true;
    });
  }

  takes(column: readonly number[]): boolean {
    const centred = this.vectors.length > 0 ? less(column, this.vectors[0]!) : column;
    return Math.hypot(...this.outside(column)) > this.shared * Math.hypot(...centred);
  }

  private outside(column: readonly number[]): readonly number[] {
    // Twice, as once leaves what rounding leaves.
    return [...this.vectors, ...this.vectors].reduce(less, column);
  }
}

function less(column: readonly number[], vector: readonly number[]): readonly number[] {
  const along = column.reduce((sum, value, i) => sum + value * vector[i]!, 0);
  return column.map((value, i) => value - along * vector[i]!);
}
