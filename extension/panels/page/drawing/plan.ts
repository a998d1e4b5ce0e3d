/** The plan: what the server drew, in layers; pointed at, zoomed, measured; under it the thickness, or a mode as it moves. */
import { type TemplateResult, html, nothing, svg } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { DrawnPart, PlanLabel, PlanMark, PlanPicture } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import { modeMarks } from '../plate/mode-marks.js';
import { planLine } from '../plate/plan-line.js';
import { type Board, bracesOf, partLink } from './board.js';
import { measureLine, measuring } from './measure.js';
import { drawnMode, modeField } from './mode-field.js';
import { thicknessShading } from './thickness.js';
import { framed, zoomed } from './zoom.js';

/** mm around what is drawn. */
const MARGIN = 8;

export function plan(board: Board): TemplateResult | typeof nothing {
  const { drawing, plate, words, content, view } = board;
  if (drawing.outline.length === 0) return nothing;
  const { length, width } = drawing;
  const picture = content.plan?.views.find(({ name }) => name === plate);
  const outline = planLine(drawing.outline, length);
  const mode = drawnMode(board);
  const box =
    frameOf(board, picture) ?? ([-width / 2 - MARGIN, -MARGIN, width + 2 * MARGIN, length + 2 * MARGIN] as const);
  const frame = framed(box, view.zoom, view.middle);
  return html`<figure>
    <svg
      class="plan ${board.modes ? 'moving' : ''} ${view.measure ? 'measuring' : ''}"
      viewBox=${frame.join(' ')}
      role="group"
      aria-label=${fill(plate === 'top' ? words.planTop : words.planBack, drawing.name)}
      @pointerleave=${() => board.look({ pointed: '', at: null })}
      @pointermove=${(event: PointerEvent) => measuring(board, event)}
      @click=${(event: PointerEvent) => measuring(board, event, true)}
      @wheel=${(event: WheelEvent) => zoomed(board, event, box)}
    >
      <defs>
        <clipPath id="body"><path d=${outline} /></clipPath>
        <pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line y2="5" class="hatch" />
        </pattern>
      </defs>
      <path class="body" d=${outline} />
      <g clip-path="url(#body)">${board.modes ? modeField(board) : thicknessShading(board, outline)}</g>
      ${guard([picture, view.hidden, content.plan?.changed, board.modes !== null], () => (picture ? lines(board, picture) : nothing))}
      ${parts(board).map((part) => hitArea(board, part))}
      ${guard([picture, view.hidden, board.modes !== null], () => (picture ? labels(board, picture) : nothing))}
      ${bracesOf(board).map((part, i) => (part.shape ? number(part, i + 1, length) : nothing))}
      ${mode ? modeMarks(mode, length) : nothing} ${measureLine(board)}
    </svg>
  </figure>`;
}

/** The instrument from its side, as tall as the plan beside it. */
export function sidePlan(board: Board): TemplateResult | typeof nothing {
  const { content, words, drawing, view } = board;
  const picture = content.plan?.views.find(({ name }) => name === 'side');
  if (!picture) return nothing;
  const { left, right, bottom } = picture.box;
  const top = view.whole ? picture.box.top : Math.max(picture.box.top, -NECK);
  const box = [left - MARGIN, top - MARGIN, right - left + 2 * MARGIN, bottom - top + 2 * MARGIN];
  return html`<figure class="side-view">
    <svg class="plan" viewBox=${box.join(' ')} role="img" aria-label=${fill(words.planSide, drawing.name)}>
      ${guard([picture, view.hidden], () => [lines(board, picture), labels(board, picture)])}
    </svg>
  </figure>`;
}

type View = PlanPicture['views'][number];

/** mm of the neck above the body, where not the whole plan is wanted. */
const NECK = 70;

/** The body with what is told beside it; the head and the nut are a whole neck away. */
function frameOf({ view }: Board, picture: View | undefined): readonly [number, number, number, number] | undefined {
  if (!picture) return undefined;
  const { left, right, bottom } = picture.box;
  const top = view.whole ? picture.box.top : Math.max(picture.box.top, -NECK);
  return [left - MARGIN, top - MARGIN, right - left + 2 * MARGIN, bottom - top + 2 * MARGIN];
}

/** What would stand in the way of a mode. */
const NOT_WITH_MODES: ReadonlySet<string> = new Set(['dimensions', 'thickness', 'grain', 'strings', 'rim']);

function isShown({ view, modes }: Board, layer: string): boolean {
  return !view.hidden.includes(layer) && !(modes && NOT_WITH_MODES.has(layer));
}

function lines(board: Board, { marks }: View): readonly TemplateResult[] {
  const changed = new Set(board.content.plan?.changed.map(({ part }) => part));
  const isChanged = ({ part }: PlanMark) => part !== undefined && changed.has(part);
  return marks
    .filter(({ layer }) => isShown(board, layer))
    .map(
      (mark) =>
        svg`<path class="mark ${mark.line} on-${mark.layer} ${isChanged(mark) ? 'changed' : ''}" d=${mark.d} />`,
    );
}

function labels(board: Board, { labels: all }: View): readonly TemplateResult[] {
  const at = ({ x, y, turned }: PlanLabel) => (turned === 0 ? nothing : `rotate(${turned} ${x} ${y})`);
  return all
    .filter(({ layer }) => isShown(board, layer))
    .map(
      (label) =>
        svg`<text class="label" x=${label.x} y=${label.y} transform=${at(label)} text-anchor=${label.anchor} style="font-size: ${label.height * 2.2}px">${label.text}</text>`,
    );
}

function parts({ drawing, plate }: Board): readonly DrawnPart[] {
  const drawn = drawing.parts.filter((part) => part.plate === plate && part.shape);
  const order = ['soundhole', 'bridge-plate', 'brace', 'bridge'];
  return [...drawn].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
}

/** What is pointed at, clicked and reached by keys; its lines are those of the plan. */
function hitArea(board: Board, part: DrawnPart): TemplateResult {
  const { point, go, press, isPointed, label } = partLink(board, part);
  return svg`<path
    class="part ${part.kind} ${isPointed ? 'pointed' : ''}"
    d=${planLine(part.shape!, board.drawing.length)}
    role="link"
    tabindex="0"
    aria-label=${label}
    @pointerenter=${point}
    @focus=${point}
    @click=${(event: Event) => {
      if (board.view.measure) return;
      event.stopPropagation();
      go();
    }}
    @keydown=${press}
  />`;
}

/** mm from the end of a brace to its number. */
const NUMBER_IN = 26;

/** Near a brace's lower end, where there is room: the number it has in the table. */
function number({ shape: corners }: DrawnPart, n: number, length: number): TemplateResult {
  const half = Math.floor(corners!.length / 2);
  const ends = [
    middle(corners![0]!, corners![corners!.length - 1]!),
    middle(corners![half - 1]!, corners![half]!),
  ] as const;
  const [from, to] = ends[0][0] <= ends[1][0] ? ends : [ends[1], ends[0]];
  const share = NUMBER_IN / Math.hypot(to[0] - from[0], to[1] - from[1]);
  const y = length - from[0] - (to[0] - from[0]) * share;
  const x = from[1] + (to[1] - from[1]) * share;
  return svg`<g class="number" aria-hidden="true">
    <circle cx=${x} cy=${y} r="7.5" />
    <text x=${x} y=${y + 3.8}>${n}</text>
  </g>`;
}

function middle(a: readonly [number, number], b: readonly [number, number]): readonly [number, number] {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}
