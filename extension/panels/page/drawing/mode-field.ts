/** A mode as it moves, seen from the front: contours each fifth of the largest movement, and the lines that stand still. */
import { type TemplateResult, nothing, svg } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { DrawnMode, ModeShapes } from '../../../../language/server/protocol.js';
import { modeLines } from '../plate/mode-lines.js';
import { shownMode } from '../plate/shown-mode.js';
import type { Board } from './board.js';

/** Per mille of the largest movement. */
const LEVELS = [100, 300, 500, 700, 900];

export function modeField(board: Board): TemplateResult | typeof nothing {
  const { modes, drawing } = board;
  const mode = drawnMode(board);
  if (!modes || !mode) return nothing;
  return svg`<g class=${modes.state === 'waiting' ? 'stale' : ''}>
    ${guard([mode.movement, drawing.length], () => field(modes.grid, mode, drawing.length))}
  </g>`;
}

export function drawnMode({ modes, view }: Board): DrawnMode | undefined {
  return modes?.modes[shownMode(view.mode, modes.modes)];
}

function field(grid: ModeShapes['grid'], mode: DrawnMode, length: number): TemplateResult {
  const { around, still } = modeLines(grid, mode, length);
  return svg`
    ${LEVELS.map((level) => svg`<path class="up" d=${around('up', level)} /><path class="down" d=${around('down', level)} />`)}
    <path class="hatched" d=${around('down', LEVELS[0]!)} />
    <path class="still" d=${still()} />`;
}
