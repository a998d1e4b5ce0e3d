/** A plate in motion as a surface in space, and how that looks from somewhere: numbers only, nothing is drawn here. */
import type { ModeShapes, PlanPoint } from '../../../../../language/server/protocol.js';

/** Corners in rows across the plate, each row from edge to edge, so that the rim is as smooth as the outline. */
export interface Surface {
  readonly rows: number;
  readonly columns: number;
  /** mm, by `row × columns + column`: station and offset, as in the plan. */
  readonly station: Float64Array;
  readonly offset: Float64Array;
  /** Movement as a share of the largest, −1 to 1. */
  readonly movement: Float64Array;
  /** mm: the plate's middle, and its length. */
  readonly middle: readonly [station: number, offset: number];
  readonly length: number;
}

/** Where one looks from; degrees. `turn`: about the upright; `height`: 90 is from straight above. */
export interface Stand {
  readonly turn: number;
  readonly height: number;
}

/** Where a point lands on the page, and how near it is to whoever looks; mm, y downwards. */
export type Seen = readonly [x: number, y: number, near: number];

const ROWS = 54;
const COLUMNS = 27;

/** How high the largest movement stands, as a share of the length: much more than in earnest. */
const HEIGHT = 0.1;

export function surfaceOf(
  outline: readonly PlanPoint[],
  grid: ModeShapes['grid'],
  movement: readonly number[],
): Surface {
  const stations = outline.map(([station]) => station);
  const [low, high] = [Math.min(...stations), Math.max(...stations)];
  const count = ROWS * COLUMNS;
  const [station, offset, moved] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  let [least, most] = [Infinity, -Infinity];
  for (let row = 0; row < ROWS; row += 1) {
    // Closer together towards the ends, where the outline runs across.
    const s = low + ((high - low) * (1 - Math.cos((Math.PI * row) / (ROWS - 1)))) / 2;
    const [from, to] = acrossAt(outline, s);
    [least, most] = [Math.min(least, from), Math.max(most, to)];
    for (let column = 0; column < COLUMNS; column += 1) {
      const at = row * COLUMNS + column;
      station[at] = s;
      offset[at] = from + ((to - from) * column) / (COLUMNS - 1);
      moved[at] = movementAt(grid, movement, s, offset[at]) / 1000;
    }
  }
  const middle = [(low + high) / 2, (least + most) / 2] as const;
  return { rows: ROWS, columns: COLUMNS, station, offset, movement: moved, middle, length: high - low };
}

/** Movement between the points of the grid, which lie closely. */
export function movementAt(
  { x0, y0, step, rows, columns }: ModeShapes['grid'],
  movement: readonly number[],
  station: number,
  offset: number,
): number {
  const [r, c] = [(station - x0) / step, (offset - y0) / step];
  const [row, column] = [Math.floor(r), Math.floor(c)];
  if (row < 0 || column < 0 || row + 1 >= rows || column + 1 >= columns) return 0;
  const [u, v] = [r - row, c - column];
  const at = row * columns + column;
  const low = movement[at]! * (1 - v) + movement[at + 1]! * v;
  const high = movement[at + columns]! * (1 - v) + movement[at + columns + 1]! * v;
  return low * (1 - u) + high * u;
}

/** The plate's two edges at a station; a single point at its very ends. */
function acrossAt(outline: readonly PlanPoint[], station: number): readonly [number, number] {
  let [from, to] = [Infinity, -Infinity];
  outline.forEach(([s, o], i) => {
    const [t, p] = outline[(i + 1) % outline.length]!;
    if (Math.min(s, t) > station || Math.max(s, t) < station) return;
    const places = s === t ? [o, p] : [o + ((p - o) * (station - s)) / (t - s)];
    for (const place of places) [from, to] = [Math.min(from, place), Math.max(to, place)];
  });
  return [from, to];
}

/** How a point of the plate is seen; `out`: its height as a share of the largest movement. The neck is up the page at turn 0. */
export function look(
  { middle, length }: Surface,
  { turn, height }: Stand,
): (station: number, offset: number, out: number) => Seen {
  const [sinT, cosT] = sinCos(turn);
  const [sinH, cosH] = sinCos(height);
  return (station, offset, out) => {
    const [along, across, up] = [station - middle[0], offset - middle[1], out * HEIGHT * length];
    const x = across * cosT - along * sinT;
    const away = across * sinT + along * cosT;
    return [x, -(away * sinH + up * cosH), up * sinH - away * cosH];
  };
}

/** A facet as it is painted: its four corners, how far out its middle is, and how much light falls on it. */
export interface Facet {
  readonly corners: readonly [Seen, Seen, Seen, Seen];
  readonly out: number;
  /** 0 to 1. */
  readonly light: number;
  readonly near: number;
}

/** From the upper left and in front, as in a drawing; unit length. */
const LIGHT = [-0.4, 0.5, 0.77] as const;

/** From the farthest to the nearest, at a moment of the swing: 1 farthest out, −1 farthest in. */
export function facets(surface: Surface, stand: Stand, swing: number): readonly Facet[] {
  const { rows, columns, station, offset, movement, length } = surface;
  const see = look(surface, stand);
  const seen = Array.from(station, (s, i) => see(s, offset[i]!, swing * movement[i]!));
  const up = (i: number) => swing * movement[i]! * HEIGHT * length;
  const found: Facet[] = [];
  for (let row = 0; row + 1 < rows; row += 1) {
    for (let column = 0; column + 1 < columns; column += 1) {
      const a = row * columns + column;
      const [b, c, d] = [a + 1, a + columns + 1, a + columns];
      // The two diagonals span the facet: across, along, up.
      const [px, py, pz] = [offset[c]! - offset[a]!, station[c]! - station[a]!, up(c) - up(a)];
      const [qx, qy, qz] = [offset[d]! - offset[b]!, station[d]! - station[b]!, up(d) - up(b)];
      const [nx, ny, nz] = [py * qz - pz * qy, pz * qx - px * qz, px * qy - py * qx];
      const size = Math.hypot(nx, ny, nz);
      const facing = size === 0 ? 0 : (LIGHT[0] * nx + LIGHT[1] * ny + LIGHT[2] * nz) / size;
      const corners = [seen[a]!, seen[b]!, seen[c]!, seen[d]!] as const;
      found.push({
        corners,
        out: (swing * (movement[a]! + movement[b]! + movement[c]! + movement[d]!)) / 4,
        light: Math.max(0, Math.min(1, 0.1 + 0.9 * facing)),
        near: corners.reduce((sum, [, , near]) => sum + near, 0) / 4,
      });
    }
  }
  return found.sort((one, other) => one.near - other.near);
}

function sinCos(degrees: number): readonly [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [Math.sin(angle), Math.cos(angle)];
}
