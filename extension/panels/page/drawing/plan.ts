/** The plan: outline, soundhole, braces, bridge to scale; under them the thickness, or a mode as it moves. */
import { type TemplateResult, html, nothing, svg } from 'lit';
import type { DrawnPart, PlanPoint } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import { modeMarks } from '../plate/mode-marks.js';
import { planLine } from '../plate/plan-line.js';
import { type Board, bracesOf, partLink } from './board.js';
import { drawnMode, modeField } from './mode-field.js';
import { thicknessMarks, thicknessShading } from './thickness.js';

/** mm around the body. */
const MARGIN = 8;
/** mm below it, for the scale. */
const FOOT = 14;

export function plan(board: Board): TemplateResult | typeof nothing {
  const { drawing, plate, words } = board;
  if (drawing.outline.length === 0) return nothing;
  const { length, width } = drawing;
  const parts = drawing.parts.filter((part) => part.plate === plate && part.shape);
  const under = parts.filter(({ kind }) => kind === 'soundhole' || kind === 'bridge-plate');
  const over = parts.filter(({ kind }) => kind === 'bridge');
  const braces = bracesOf(board).filter(({ shape }) => shape);
  const outline = planLine(drawing.outline, length);
  const mode = drawnMode(board);
  const frame = [-width / 2 - MARGIN, -MARGIN, width + 2 * MARGIN, length + MARGIN + FOOT];
  return html`<figure>
    <svg
      class="plan ${board.modes ? 'moving' : ''}"
      viewBox=${frame.join(' ')}
      role="group"
      aria-label=${fill(plate === 'top' ? words.planTop : words.planBack, drawing.name)}
      @pointerleave=${() => board.look({ pointed: '' })}
    >
      <defs>
        <clipPath id="body"><path d=${outline} /></clipPath>
        <pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line y2="5" class="hatch" />
        </pattern>
      </defs>
      <path class="body" d=${outline} />
      <g clip-path="url(#body)">${board.modes ? modeField(board) : thicknessShading(board, outline)}</g>
      <line class="centre" y1=${-MARGIN / 2} y2=${length + MARGIN / 2} />
      ${[...under, ...braces, ...over].map((part) => shape(board, part))}
      <path class="rim" d=${outline} />
      ${braces.map((part, i) => number(part, i + 1, length))} ${thicknessMarks(board)}
      ${mode ? modeMarks(mode, length) : nothing} ${scaleBar(width, length)}
    </svg>
  </figure>`;
}

function shape(board: Board, part: DrawnPart): TemplateResult {
  const { point, go, press, isPointed, label } = partLink(board, part);
  return svg`<path
    class="part ${part.kind} ${isPointed ? 'pointed' : ''}"
    d=${planLine(part.shape!, board.drawing.length)}
    role="link"
    tabindex="0"
    aria-label=${label}
    @pointerenter=${point}
    @focus=${point}
    @click=${go}
    @keydown=${press}
  />`;
}

/** mm from the end of a brace to its number. */
const NUMBER_IN = 26;

/** Near a brace's lower end, where there is room: the number it has in the table. */
function number({ shape: corners }: DrawnPart, n: number, length: number): TemplateResult {
  const ends = [middle(corners![0]!, corners![3]!), middle(corners![1]!, corners![2]!)] as const;
  const [from, to] = ends[0][0] <= ends[1][0] ? ends : [ends[1], ends[0]];
  const share = NUMBER_IN / Math.hypot(to[0] - from[0], to[1] - from[1]);
  const y = length - from[0] - (to[0] - from[0]) * share;
  const x = from[1] + (to[1] - from[1]) * share;
  return svg`<g class="number" aria-hidden="true">
    <circle cx=${x} cy=${y} r="7.5" />
    <text x=${x} y=${y + 3.8}>${n}</text>
  </g>`;
}

function scaleBar(width: number, length: number): TemplateResult {
  const x = width / 2 - 100;
  return svg`<g class="scale" aria-hidden="true">
    <path d=${`M${x} ${length + 7} v6 m0 -3 h100 m0 -3 v6`} />
    <text x=${x + 50} y=${length + 6}>100 mm</text>
  </g>`;
}

function middle(a: PlanPoint, b: PlanPoint): PlanPoint {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
