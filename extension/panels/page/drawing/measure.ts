/// <reference lib="dom" />
/** Where the pointer is on the instrument, and how far from a place that was clicked. */
import { type TemplateResult, html, nothing, svg } from 'lit';
import { fill } from '../page.js';
import type { Board } from './board.js';

type Place = readonly [x: number, y: number];

/** In the plan's own millimetres. */
export function placeOf(event: MouseEvent): Place | undefined {
  const drawn = (event.currentTarget as Element).closest<SVGSVGElement>('svg');
  const matrix = drawn?.getScreenCTM();
  if (!matrix) return undefined;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  return [Math.round(x * 10) / 10, Math.round(y * 10) / 10];
}

export function measuring(board: Board, event: MouseEvent, clicked = false): void {
  const at = placeOf(event);
  if (!at) return;
  const { view, look } = board;
  if (clicked && view.measure) look({ from: view.from ? null : at, at });
  else if (view.at?.[0] !== at[0] || view.at[1] !== at[1]) look({ at });
}

export function measureLine({ view }: Board): TemplateResult | typeof nothing {
  const { from, at, measure } = view;
  if (!measure || !from || !at) return nothing;
  return svg`<g class="measure" aria-hidden="true">
    <line x1=${from[0]} y1=${from[1]} x2=${at[0]} y2=${at[1]} />
    <circle cx=${from[0]} cy=${from[1]} r="2" />
  </g>`;
}

/** `Station 252.1 mm, offset −13.0 mm`, and from a place that was clicked the distance. */
export function measured({ view, drawing, words, look }: Board): TemplateResult {
  const { at, from, measure } = view;
  const here = at ? fill(words.place, (drawing.length - at[1]).toFixed(1), signed(at[0])) : '';
  const apart = measure && from && at ? fill(words.apart, Math.hypot(at[0] - from[0], at[1] - from[1]).toFixed(1)) : '';
  return html`<p class="measured screen-only">
    <label
      ><input
        type="checkbox"
        .checked=${measure}
        @change=${() => look({ measure: !measure, from: null })}
      />${words.measure}</label
    >
    <span class="quiet">${[here, apart].filter((text) => text !== '').join(' · ')}</span>
  </p>`;
}

function signed(value: number): string {
  return value.toFixed(1).replace('-', '−');
}
