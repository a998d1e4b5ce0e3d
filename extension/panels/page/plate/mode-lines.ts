/** The lines a mode is drawn by: where it moves as much as a level says, and where it stands still. */
import { contours } from 'd3-contour';
import type { DrawnMode, ModeShapes } from '../../../../language/server/protocol.js';
import { stillLines } from './still-lines.js';

export interface ModeLines {
  /** Closed paths around what moves out, or in, by at least so many per mille of the largest movement. */
  readonly around: (way: 'up' | 'down', level: number) => string;
  /** Where the plate stands still between areas that move against each other. */
  readonly still: () => string;
}

/** As paths in the plan, the station of `neck` at the top of the page; mm. */
export function modeLines(
  { x0, y0, step, rows, columns }: ModeShapes['grid'],
  { movement }: DrawnMode,
  neck: number,
): ModeLines {
  // A point of the grid is the middle of a cell to d3; the neck is up.
  const places = (line: readonly (readonly number[])[]) =>
    line
      .map(([column, row]) => {
        const x = y0 + (column! - 0.5) * step;
        const y = neck - x0 - (row! - 0.5) * step;
        return `${x.toFixed(1)} ${y.toFixed(1)}`;
      })
      .join('L');
  const trace = contours().size([columns, rows]).smooth(true);
  return {
    around: (way, level) =>
      trace
        .contour(
          movement.map((value) => (way === 'up' ? value : -value)),
          level,
        )
        .coordinates.flat()
        .map((ring) => `M${places(ring)}Z`)
        .join(''),
    still: () =>
      stillLines({ rows, columns, movement })
        .map((line) => `M${places(line)}`)
        .join(''),
  };
}
