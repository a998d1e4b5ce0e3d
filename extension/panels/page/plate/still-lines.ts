/** The lines of a mode that stand still, where the plate on either side of them really moves. */
import { contours } from 'd3-contour';

/** Rows of values; in d3's places, in which the first value stands at ½, ½. */
export interface Field {
  readonly rows: number;
  readonly columns: number;
  /** Per mille of the largest movement. */
  readonly movement: readonly number[];
}

type Point = readonly [number, number];

/** How much must move on both sides within `REACH` points: in a quiet corner the zero wanders, and means nothing. */
const MOVES = 40;
const REACH = 6;

export function stillLines(field: Field): readonly (readonly Point[])[] {
  const { rows, columns, movement } = field;
  const rings = contours()
    .size([columns, rows])
    .smooth(true)
    .contour([...movement], 0)
    .coordinates.flat() as unknown as readonly (readonly Point[])[];
  return rings.flatMap((ring) => runs(ring, (point) => dividesMovement(field, point)));
}

/** The longest stretches of a line whose points all hold. */
function runs(line: readonly Point[], holds: (point: Point) => boolean): readonly (readonly Point[])[] {
  const found: Point[][] = [];
  let open: Point[] | undefined;
  for (const point of line) {
    if (!holds(point)) {
      open = undefined;
    } else if (open) {
      open.push(point);
    } else {
      open = [point];
      found.push(open);
    }
  }
  return found.filter((run) => run.length > 1);
}

function dividesMovement({ rows, columns, movement }: Field, [x, y]: Point): boolean {
  let up = 0;
  let down = 0;
  const [column, row] = [Math.round(x - 0.5), Math.round(y - 0.5)];
  for (let r = Math.max(0, row - REACH); r <= Math.min(rows - 1, row + REACH); r++) {
    for (let c = Math.max(0, column - REACH); c <= Math.min(columns - 1, column + REACH); c++) {
      const value = movement[r * columns + c]!;
      up = Math.max(up, value);
      down = Math.max(down, -value);
    }
  }
  return Math.min(up, down) >= MOVES;
}
