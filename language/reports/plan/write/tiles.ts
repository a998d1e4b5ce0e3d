/** Sheets of paper laid over a picture at full size, a little over one another, to be trimmed and joined. mm. */
import type { Box, Point } from '../plan.js';

export const PAPERS = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
} as const;
export type Paper = keyof typeof PAPERS;

/** Few printers print nearer to the edge. */
export const EDGE = 10;
/** What neighbouring sheets show alike. */
export const OVERLAP = 10;
/** Below the picture, for the name of the sheet and the bar to check it by. */
export const FOOT = 12;
/** Length of that bar. */
export const CHECK_BAR = 100;

export interface Tile {
  /** `B3`: row, counted downwards from A, and column. */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** What of the picture stands in the lower left corner of the sheet’s frame. */
  readonly corner: Point;
}

export interface Tiling {
  readonly paper: { readonly width: number; readonly height: number };
  /** The frame on each sheet, from the lower left of the paper. */
  readonly frame: Box;
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
}

/** The paper upright or on its side, whichever takes fewer sheets. */
export function tilingOf(box: Box, paper: Paper): Tiling {
  const { width, height } = PAPERS[paper];
  const ways = [tilingOn(box, { width, height }), tilingOn(box, { width: height, height: width })];
  return ways[1]!.tiles.length < ways[0]!.tiles.length ? ways[1]! : ways[0]!;
}

function tilingOn(box: Box, paper: Tiling['paper']): Tiling {
  const frame = { left: EDGE, bottom: EDGE + FOOT, right: paper.width - EDGE, top: paper.height - EDGE };
  const room = { width: frame.right - frame.left, height: frame.top - frame.bottom };
  const steps = (size: number, on: number) => Math.max(1, Math.ceil((size - OVERLAP) / (on - OVERLAP)));
  const columns = steps(box.right - box.left, room.width);
  const rows = steps(box.top - box.bottom, room.height);
  // What is left over stands evenly around the picture.
  const spare = (count: number, on: number, size: number) => (count * (on - OVERLAP) + OVERLAP - size) / 2;
  const left = box.left - spare(columns, room.width, box.right - box.left);
  const top = box.top + spare(rows, room.height, box.top - box.bottom);
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const corner: Point = [left + column * (room.width - OVERLAP), top - row * (room.height - OVERLAP) - room.height];
    return { name: `${letters(row)}${column + 1}`, row, column, corner };
  });
  return { paper, frame, rows, columns, tiles };
}

/** A, B … Z, AA, AB … */
function letters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letters(Math.floor(index / 26) - 1) + last;
}
