/** A projected stiffness of a few columns, some of which may depend on the others or be zero. */
import { symmetricEigen } from './symmetric-eigen.js';

/** A column that keeps less than this share of its square beside the earlier ones adds nothing. */
const DEPENDENT = 1e-12;

export class SmallSystem {
  /** Cholesky factor of the stiffness scaled to unit diagonal; Infinity on its diagonal for a dropped column. */
  private readonly l: readonly Float64Array[];
  private readonly scale: readonly number[];
  private readonly used: readonly number[];

  /** Rows and columns `used` of `k`, in that order. */
  constructor(k: readonly (readonly number[])[], used: readonly number[]) {
    const n = used.length;
    this.used = used;
    this.scale = used.map((j) => (k[j]![j]! > 0 ? 1 / Math.sqrt(k[j]![j]!) : 0));
    const l = Array.from({ length: n }, () => new Float64Array(n));
    for (let i = 0; i < n; i++) {
      for (let j = 0; j <= i; j++) {
        let sum = k[used[i]!]![used[j]!]! * this.scale[i]! * this.scale[j]!;
        for (let p = 0; p < j; p++) sum -= l[i]![p]! * l[j]![p]!;
        if (i > j) l[i]![j] = sum / l[j]![j]!;
        else l[i]![i] = sum > DEPENDENT ? Math.sqrt(sum) : Infinity;
      }
    }
    this.l = l;
  }

  /** Weights of the columns that answer `right`, one number per used column. */
  solve(right: readonly number[]): Float64Array {
    const x = Float64Array.from(right, (value, i) => value * this.scale[i]!);
    this.forward(x);
    this.backward(x);
    return x.map((value, i) => value * this.scale[i]!);
  }

  /** The `wanted` lowest pairs of k x = λ m x with xᵀ m x = 1; undefined when too few columns are left. */
  lowest(
    m: readonly (readonly number[])[],
    wanted: number,
  ): { readonly values: readonly number[]; readonly vectors: readonly Float64Array[] } | undefined {
    const { l, used, scale } = this;
    const n = used.length;
    if (l.filter((row, i) => row[i]! < Infinity).length < wanted) return undefined;
    // The lowest of k against m are the greatest of m against k, reduced by the factor from both sides.
    const columns = used.map((j, c) => Float64Array.from(used, (i, r) => m[i]![j]! * scale[r]! * scale[c]!));
    for (const column of columns) this.forward(column);
    const rows = Array.from({ length: n }, (_, r) => Float64Array.from(columns, (column) => column[r]!));
    for (const row of rows) this.forward(row);
    const { values, vectors } = symmetricEigen(rows, n);
    return {
      values: Array.from({ length: wanted }, (_, i) => 1 / values[i]!),
      vectors: Array.from({ length: wanted }, (_, i) => {
        const y = vectors[i]!.slice();
        this.backward(y);
        return y.map((value, r) => (value * scale[r]!) / Math.sqrt(values[i]!));
      }),
    };
  }

  private forward(x: Float64Array): void {
    const { l } = this;
    for (let i = 0; i < x.length; i++) {
      for (let p = 0; p < i; p++) x[i]! -= l[i]![p]! * x[p]!;
      x[i]! /= l[i]![i]!;
    }
  }

  private backward(x: Float64Array): void {
    const { l } = this;
    for (let i = x.length - 1; i >= 0; i--) {
      for (let p = i + 1; p < x.length; p++) x[i]! -= l[p]![i]! * x[p]!;
      x[i]! /= l[i]![i]!;
    }
  }
}
