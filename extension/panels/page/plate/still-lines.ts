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
/** The share of a line that must lie between such areas; the rest of it is drawn as well, so that no line ends in mid-plate. */
const LEAST = 0.25;
/** Points: what is shorter only cuts off a corner at the edge, where hardly anything moves. */
const SHORTEST = 8;
/** Points by which the movement is carried on past the edge, so that a line meets the edge where it runs. */
const PAST = 4;

/** Each closed, or from edge to edge. */
export function stillLines(field: Field): readonly (readonly Point[])[] {
  const { rows, columns } = field;
  const off = offPlate(field);
  const { movement, past } = carriedOn(field, off);
  const rings = contours()
    .size([columns, rows])
    .smooth(true)
    .contour(movement, 0)
    .coordinates.flat() as unknown as readonly (readonly Point[])[];
  const isOn = ([x, y]: Point) => {
    const [column, row] = [Math.round(x - 0.5), Math.round(y - 0.5)];
    const isWithin = column > 0 && row > 0 && column < columns - 1 && row < rows - 1;
    return isWithin && past[row * columns + column]! < PAST;
  };
  return rings
    .flatMap((ring) => stretches(ring, isOn))
    .filter((line) => {
      if (lengthOf(line) < SHORTEST) return false;
      const telling = line.filter((point) => dividesMovement(field, point)).length;
      return telling >= LEAST * line.length;
    });
}

/** Points that are no part of the plate: still, and joined to the border of the grid by others that are. */
function offPlate({ rows, columns, movement }: Field): Uint8Array {
  const off = new Uint8Array(rows * columns);
  const border = Array.from({ length: rows * columns }, (_, i) => i).filter((i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    return row === 0 || column === 0 || row === rows - 1 || column === columns - 1;
  });
  const open = border.filter((i) => movement[i] === 0);
  for (const i of open) off[i] = 1;
  while (open.length > 0) {
    const i = open.pop()!;
    for (const next of neighbours(i, columns, rows)) {
      if (off[next] || movement[next] !== 0) continue;
      off[next] = 1;
      open.push(next);
    }
  }
  return off;
}

function neighbours(i: number, columns: number, rows: number): readonly number[] {
  const [row, column] = [Math.floor(i / columns), i % columns];
  return [
    ...(row > 0 ? [i - columns] : []),
    ...(row < rows - 1 ? [i + columns] : []),
    ...(column > 0 ? [i - 1] : []),
    ...(column < columns - 1 ? [i + 1] : []),
  ];
}

/**
 * The movement with the points around the plate as their neighbours on it move, and how many points past it each lies. Close to
 * a held edge the plate hardly moves, so some of these are on it still; the page clips what is not.
 */
function carriedOn({ rows, columns, movement }: Field, off: Uint8Array): { movement: number[]; past: Uint8Array } {
  const values = [...movement];
  const known = Uint8Array.from(off, (each) => (each ? 0 : 1));
  const past = Uint8Array.from(off, (each) => (each ? PAST : 0));
  for (let round = 0; round < PAST; round += 1) {
    const found: (readonly [i: number, value: number])[] = [];
    for (let i = 0; i < values.length; i += 1) {
      if (known[i]) continue;
      const near = neighbours(i, columns, rows).filter((next) => known[next]);
      if (near.length > 0) found.push([i, near.reduce((sum, next) => sum + values[next]!, 0) / near.length]);
    }
    for (const [i, value] of found) [values[i], known[i], past[i]] = [value, 1, Math.min(round + 1, past[i]!)];
  }
  return { movement: values, past };
}

/** The longest stretches of a closed line whose points all hold; the whole of it, closed, where they all do. */
function stretches(ring: readonly Point[], holds: (point: Point) => boolean): readonly (readonly Point[])[] {
  const isOn = ring.map(holds);
  const gap = isOn.indexOf(false);
  if (gap < 0) return [ring];
  const found: Point[][] = [];
  let open: Point[] | undefined;
  // Begun at a gap, no stretch is parted where the ring happens to begin.
  for (let k = 1; k <= ring.length; k += 1) {
    const i = (gap + k) % ring.length;
    if (!isOn[i]) open = undefined;
    else if (open) open.push(ring[i]!);
    else found.push((open = [ring[i]!]));
  }
  return found.filter((stretch) => stretch.length > 1);
}

function lengthOf(line: readonly Point[]): number {
  return line.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - line[i]![0], y - line[i]![1]), 0);
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
