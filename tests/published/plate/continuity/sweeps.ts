/** How rough the solver's answers are while one size moves in small steps. */
import { TopSolver } from '../../../../language/mechanics/plate/index.js';
import { FIVE_TOPS, MOVES } from './five-tops.js';

/** Percent of the value: greatest second difference of the first mode, the bridge's rotation, dip and belly. */
export type Roughness = readonly [number, number, number, number];

/** What a step of half a millimetre may bring, percent. */
export const WANTED: Roughness = [0.15, 0.5, 1, 1];

/** From −`range` to `range` mm in steps of `step`. Throws where a top is refused. */
export function roughness(top: string, move: string, range: number, step: number): Roughness {
  const { base, make } = FIVE_TOPS.find(({ name }) => name === top)!;
  const solver = new TopSolver();
  const rows: number[][] = [];
  for (let k = Math.round(-range / step); k <= Math.round(range / step); k++) {
    const result = solver.solve(make(MOVES[move]!(base, k * step)), { modes: 3 });
    if (!result.ok) throw new Error(`${top}, ${move} ${k * step} mm: ${JSON.stringify(result.problems)}`);
    const { modes, statics } = result.solution;
    rows.push([modes[0]!.frequency, statics!.rotation, statics!.dip, statics!.belly]);
  }
  return [0, 1, 2, 3].map((i) => worst(rows.map((row) => row[i]!))) as unknown as Roughness;
}

function worst(values: readonly number[]): number {
  let most = 0;
  for (let i = 1; i + 1 < values.length; i++) {
    const second = Math.abs(values[i - 1]! - 2 * values[i]! + values[i + 1]!);
    most = Math.max(most, (100 * second) / Math.abs(values[i]!));
  }
  return most;
}
