/** How thick the plate is: shaded in the plan where it is thinned towards the edge, and told in words. */
import { type TemplateResult, html, nothing, svg } from 'lit';
import type { DrawnPart } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import type { Board } from './board.js';

/** Steps of the shading from the edge inwards. */
const STEPS = 6;

/** Strokes along the outline, one over the other: the nearer to the edge, the more of them. Clipped to the body. */
export function thicknessShading(board: Board, outline: string): TemplateResult | typeof nothing {
  const edge = thicknessOf(board)?.edge;
  if (!edge) return nothing;
  const widths = Array.from({ length: STEPS }, (_, i) => (2 * edge.band * (i + 1)) / STEPS);
  return svg`${widths.map((width) => svg`<path class="thinned" d=${outline} stroke-width=${width} />`)}`;
}

/** The figures where they hold: in the middle, which is told near the tail where there is room, and at single points. */
export function thicknessMarks(board: Board): TemplateResult | typeof nothing {
  const thickness = board.modes ? undefined : thicknessOf(board);
  if (!thickness) return nothing;
  const { length } = board.drawing;
  return svg`<g class="thickness" aria-hidden="true">
    <text x="0" y=${length - 24}>${thickness.centre}</text>
    ${thickness.points.map(
      ({ at, value }) => svg`<g>
        <circle cx=${at[1]} cy=${length - at[0]} r="2" />
        <text x=${at[1]} y=${length - at[0] - 5}>${value}</text>
      </g>`,
    )}
  </g>`;
}

export function thicknessLegend(board: Board): TemplateResult | typeof nothing {
  const thickness = thicknessOf(board);
  if (!thickness) return nothing;
  const { words } = board;
  const { centre, edge, points } = thickness;
  return html`<section>
    <h2>${words.thickness}</h2>
    <p>
      ${
        edge
          ? html`<span class="swatch" aria-hidden="true"></span
              >${fill(words.thicknessEdge, centre, edge.value, edge.width)}
              ${edge.isUsualBand ? words.usualBand : nothing}`
          : fill(words.thicknessEven, centre)
      }
      ${points.map(({ name, value }) => `${name} ${value}`).join(' · ')}
    </p>
  </section>`;
}

function thicknessOf({ drawing, plate }: Board): DrawnPart['thickness'] {
  return drawing.parts.find(({ path }) => path === plate)?.thickness;
}
