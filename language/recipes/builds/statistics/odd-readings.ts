/**
 * Readings that do not fit the others: each against what the others say of it, with their scatter (externally studentised
 * residual). Source: R.D. Cook & S. Weisberg, Residuals and Influence in Regression, 1982, sec. 2.2.1 (from memory).
 */
import type { Matrix } from './cholesky.js';
import { solveLeastSquares } from './orthogonal.js';
import { chanceBeyond } from './student-t.js';

export interface Studentised {
  /** In units of the scatter of the others; infinite where these lie on the line exactly. */
  readonly t: number;
  /** How likely one so far off is among so many by chance alone (Bonferroni); 1 where the others say nothing of it. */
  readonly chance: number;
}

/** `rows`: n × k. Undefined where the columns depend on one another or too little is left over. */
export function studentised(rows: Matrix, y: readonly number[]): readonly Studentised[] | undefined {
  const solved = solveLeastSquares(rows, y);
  const freedom = y.length - (rows[0]?.length ?? 0) - 1;
  if (!solved || freedom < 1) return undefined;
  const { solution, inverse, squares } = solved;
  return rows.map((row, i) => {
    const leverage = row.reduce((sum, x, j) => sum + x * inverse[j]!.reduce((s, c, k) => s + c * row[k]!, 0), 0);
    const residual = y[i]! - row.reduce((sum, x, j) => sum + x * solution[j]!, 0);
    const own = 1 - leverage;
    if (own < 1e-9) return { t: 0, chance: 1 };
    const others = Math.max(0, squares - residual ** 2 / own) / freedom;
    const t = residual === 0 ? 0 : residual / Math.sqrt(others * own);
    return { t, chance: Math.min(1, y.length * chanceBeyond(t, freedom)) };
  });
}
