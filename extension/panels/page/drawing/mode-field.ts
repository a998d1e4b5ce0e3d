/** A mode as it moves, seen from the front: contours each fifth of the largest movement, and the lines that stand still. */
import { contours } from 'd3-contour';
import { type TemplateResult, nothing, svg } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { DrawnMode, ModeShapes } from '../../../../language/server/protocol.js';
import type { Board } from './board.js';
import { shownMode } from './modes.js';
import { stillLines } from './still-lines.js';

/** Per mille of the largest movement. */
const LEVELS = [100, 300, 500, 700, 900];

export function modeField(board: Board): TemplateResult | typeof nothing {
  const { modes, drawing } = board;
  const mode = modeOf(board);
  if (!modes || !mode) return nothing;
  return svg`<g class=${modes.state === 'waiting' ? 'stale' : ''}>
    ${guard([mode.movement, drawing.length], () => field(modes.grid, mode, drawing.length))}
  </g>`;
}

/** + and − where each area moves most. */
export function modeMarks(board: Board): TemplateResult | typeof nothing {
  const { length } = board.drawing;
  const areas = modeOf(board)?.areas ?? [];
  return svg`<g class="marks" aria-hidden="true">
    ${areas.map(
      ({ way, most: [station, offset] }) => svg`<g>
        <circle cx=${offset} cy=${length - station} r="9" />
        <text x=${offset} y=${length - station + 6}>${way === 'up' ? '+' : '−'}</text>
      </g>`,
    )}
  </g>`;
}

function modeOf({ modes, view }: Board): DrawnMode | undefined {
  return modes?.modes[shownMode(view.mode, modes.modes)];
}

function field({ x0, y0, step, rows, columns }: ModeShapes['grid'], mode: DrawnMode, length: number): TemplateResult {
  const trace = contours().size([columns, rows]).smooth(true);
  // A point of the grid is the middle of a cell to d3; the neck is up.
  const x = (column: number) => (y0 + (column - 0.5) * step).toFixed(1);
  const y = (row: number) => (length - x0 - (row - 0.5) * step).toFixed(1);
  const path = (values: readonly number[], level: number) =>
    trace
      .contour([...values], level)
      .coordinates.flat()
      .map((ring) => `M${ring.map(([column, row]) => `${x(column!)} ${y(row!)}`).join('L')}Z`)
      .join('');
  const up = mode.movement;
  const down = up.map((value) => -value);
  const still = stillLines({ rows, columns, movement: up })
    .map((line) => `M${line.map(([column, row]) => `${x(column)} ${y(row)}`).join('L')}`)
    .join('');
  return svg`
    ${LEVELS.map((level) => svg`<path class="up" d=${path(up, level)} /><path class="down" d=${path(down, level)} />`)}
    <path class="hatched" d=${path(down, LEVELS[0]!)} />
    <path class="still" d=${still} />`;
}
