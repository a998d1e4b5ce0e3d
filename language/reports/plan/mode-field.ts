/** The movement of a plate on a grid, and the areas that move together. */
import { bentOnGrid, type Grid, type GridWeights, gridWeights } from '../../mechanics/plate/index.js';
import { contains } from '../../mechanics/plate/mesh/polygon.js';
import type { PlateDrawing } from '../../recipes/evaluation/analyst.js';
import { areasOf, type MovingArea } from './moving-areas.js';

type Point = readonly [number, number];

/** m: fine enough for smooth contours in print, coarse enough to be sent as the text is typed. */
const STEP = 0.006;

export class ModeField {
  /** In mm, as a plan has them: point `row × columns + column` stands at `(x0 + row × step, y0 + column × step)`. */
  readonly grid: Grid;
  private readonly metres: Grid;
  private readonly weights: GridWeights;
  /** Points inside the outline but not on the plate: the soundhole, and slivers at the edge. */
  private readonly gaps: readonly number[];

  constructor(
    outline: readonly Point[],
    private readonly drawing: PlateDrawing,
  ) {
    const [fromX, toX] = stepsAround(outline.map(([x]) => x));
    const [fromY, toY] = stepsAround(outline.map(([, y]) => y));
    const size = { rows: toX - fromX + 1, columns: toY - fromY + 1 };
    this.metres = { x0: fromX * STEP, y0: fromY * STEP, step: STEP, ...size };
    const [x0, y0, step] = [fromX, fromY, 1].map((steps) => Math.round(1e6 * steps * STEP) / 1e3) as [
      number,
      number,
      number,
    ];
    this.grid = { x0, y0, step, ...size };
    this.weights = gridWeights(drawing, this.metres);
    this.gaps = Array.from({ length: size.rows * size.columns }, (_, i) => i).filter((i) => {
      const [row, column] = [Math.floor(i / size.columns), i % size.columns];
      return this.weights.nodes[3 * i]! < 0 && contains(outline, (fromX + row) * STEP, (fromY + column) * STEP);
    });
  }

  /** Movement in per mille of the largest, which is up, and the areas that move one way. */
  of(mode: number): { readonly movement: readonly number[]; readonly areas: readonly MovingArea[] } {
    const { shapes, slopes } = this.drawing;
    const field = bentOnGrid(this.weights, this.drawing, { w: shapes[mode]!, slopes: slopes[mode]! });
    const largest = field.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
    const scaled = field.map((value) => (largest === 0 ? 0 : (1000 * value) / largest));
    const areas = areasOf(this.grid, scaled);
    const filled = bridged(scaled, this.gaps, this.grid.columns);
    // Off the plate nothing moves; the edge is held, so contours close there by themselves.
    return { movement: Array.from(filled, (value) => (Number.isNaN(value) ? 0 : Math.round(value))), areas };
  }
}

/** Whole steps from below the least to above the greatest. */
function stepsAround(values: readonly number[]): readonly [number, number] {
  return [Math.floor(Math.min(...values) / STEP) - 1, Math.ceil(Math.max(...values) / STEP) + 1];
}

/** Enough for a soundhole of twenty points across to settle to within what is drawn. */
const ROUNDS = 80;

/** Over the soundhole the values run on smoothly from its edge, so that contours meet the edge where they should. */
function bridged(field: Float64Array, gaps: readonly number[], columns: number): Float64Array {
  const result = Float64Array.from(field);
  for (const i of gaps) result[i] = 0;
  for (let round = 0; round < ROUNDS; round++) {
    for (const i of gaps) {
      let sum = 0;
      let known = 0;
      for (const step of [-1, 1, -columns, columns]) {
        const value = result[i + step]!;
        if (Number.isNaN(value)) continue;
        sum += value;
        known++;
      }
      result[i] = known === 0 ? 0 : sum / known;
    }
  }
  return result;
}
