/** Likeness of sampled shapes, and the limit of a value over meshes. */

/** Modal assurance criterion: 1 for the same shape, 0 for unrelated ones. R.J. Allemang & D.L. Brown, Proc. 1st IMAC, 1982 (from memory). */
export function mac(a: readonly number[], b: readonly number[]): number {
  const dot = (p: readonly number[], q: readonly number[]): number => p.reduce((sum, v, i) => sum + v * q[i]!, 0);
  return dot(a, b) ** 2 / (dot(a, a) * dot(b, b));
}

/** For each wanted shape the index of the candidate most like it, best pairs first, none twice; −1 when none is left. */
export function matched(wanted: readonly (readonly number[])[], candidates: readonly (readonly number[])[]): number[] {
  const pairs = wanted.flatMap((a, i) => candidates.map((b, j) => ({ i, j, like: mac(a, b) })));
  pairs.sort((p, q) => q.like - p.like);
  const found = wanted.map(() => -1);
  for (const { i, j } of pairs) if (found[i] === -1 && !found.includes(j)) found[i] = j;
  return found;
}

export interface Limit {
  readonly value: number;
  /** Percent of the value. */
  readonly uncertainty_pct: number;
}

/**
 * Richardson's limit of values on three meshes of sizes h, coarse to fine: v = limit + c hᵖ, p from the values where they close in
 * steadily with 1 ≤ p ≤ 4, else p = 2 from the two finest. Uncertainty: how far the finest value lies from the limit, at least half
 * of what the last refinement changed.
 */
export function limitOf(sizes: readonly [number, number, number], values: readonly [number, number, number]): Limit {
  const [h1, h2, h3] = sizes;
  const [v1, v2, v3] = values;
  const ratio = (v1 - v2) / (v2 - v3);
  const expected = (p: number): number => (h1 ** p - h2 ** p) / (h2 ** p - h3 ** p);
  let order = 2;
  if (ratio >= expected(1) && ratio <= expected(4)) {
    let [low, high] = [1, 4];
    while (high - low > 1e-6) {
      const middle = (low + high) / 2;
      if (expected(middle) < ratio) low = middle;
      else high = middle;
    }
    order = low;
  }
  const value = v3 + ((v3 - v2) * h3 ** order) / (h2 ** order - h3 ** order);
  const uncertainty = Math.max(Math.abs(value - v3), Math.abs(v3 - v2) / 2);
  return { value, uncertainty_pct: (100 * uncertainty) / Math.abs(value) };
}
