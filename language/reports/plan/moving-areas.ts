/** Areas of a plate that move one way in a mode, in words a person can be told: how many, where, which way. */
import type { Grid } from '../../mechanics/plate/index.js';

export interface MovingArea {
  readonly way: 'up' | 'down';
  /** Where it moves most, and its middle: station and offset, in the grid's unit. */
  readonly most: readonly [number, number];
  readonly middle: readonly [number, number];
}

/** Per mille of the largest movement: what moves less counts as still. */
const STILL = 80;
/** Share of all that moves, by area: a smaller patch is a ripple of the drawing, not an area. */
const LEAST_SHARE = 0.01;

/** The largest area first. `field`: per mille of the largest movement; NaN off the plate. */
export function areasOf(grid: Grid, field: Float64Array): readonly MovingArea[] {
  const seen = new Uint8Array(field.length);
  const areas: (MovingArea & { readonly size: number })[] = [];
  for (let start = 0; start < field.length; start++) {
    if (seen[start] || !moves(field[start]!)) continue;
    const members = connected(grid, field, start, seen);
    const strongest = members.reduce((most, i) => (Math.abs(field[i]!) > Math.abs(field[most]!) ? i : most), start);
    const places = members.map((i) => placeOf(grid, i));
    const mean = (axis: 0 | 1) => Math.round(places.reduce((sum, place) => sum + place[axis], 0) / places.length);
    areas.push({
      way: field[start]! > 0 ? 'up' : 'down',
      most: placeOf(grid, strongest),
      middle: [mean(0), mean(1)],
      size: members.length,
    });
  }
  const moving = areas.reduce((sum, { size }) => sum + size, 0);
  return areas
    .filter(({ size }) => size >= LEAST_SHARE * moving)
    .sort((a, b) => b.size - a.size)
    .map(({ way, most, middle }) => ({ way, most, middle }));
}

function moves(value: number): boolean {
  return Math.abs(value) >= STILL;
}

/** Points reached from `start` over neighbours that move the same way. */
function connected({ columns }: Grid, field: Float64Array, start: number, seen: Uint8Array): readonly number[] {
  const members = [start];
  seen[start] = 1;
  for (let next = 0; next < members.length; next++) {
    const i = members[next]!;
    for (const other of [i - 1, i + 1, i - columns, i + columns]) {
      const value = field[other] ?? 0;
      if (seen[other] || !moves(value) || value > 0 !== field[start]! > 0) continue;
      seen[other] = 1;
      members.push(other);
    }
  }
  return members;
}

function placeOf({ x0, y0, step, columns }: Grid, index: number): readonly [number, number] {
  return [x0 + Math.floor(index / columns) * step, y0 + (index % columns) * step];
}
