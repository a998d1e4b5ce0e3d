/** Nearer and farther: what of the plan is in the frame. */
import { type TemplateResult, html } from 'lit';
import type { Board } from './board.js';
import { placeOf } from './measure.js';

export type Frame = readonly [x: number, y: number, width: number, height: number];

const MOST = 12;

/** The part of the whole frame that is seen, its middle where it was put, never beyond the whole. */
export function framed(box: Frame, zoom: number, middle: readonly [number, number] | null): Frame {
  const [width, height] = [box[2] / zoom, box[3] / zoom];
  const [cx, cy] = middle ?? [box[0] + box[2] / 2, box[1] + box[3] / 2];
  const within = (at: number, low: number, size: number, seen: number) =>
    Math.min(Math.max(at - seen / 2, low), low + size - seen);
  return [within(cx, box[0], box[2], width), within(cy, box[1], box[3], height), width, height];
}

/** With Ctrl (or a pinch) the wheel zooms about the pointer; without, it scrolls the page as everywhere. */
export function zoomed(board: Board, event: WheelEvent, box: Frame): void {
  if (!event.ctrlKey && !event.metaKey) return;
  event.preventDefault();
  const at = placeOf(event);
  if (!at) return;
  const before = board.view.zoom;
  const zoom = Math.min(MOST, Math.max(1, before * 1.2 ** -Math.sign(event.deltaY)));
  const [x, y, width, height] = framed(box, before, board.view.middle);
  // What is under the pointer stays there.
  const share = before / zoom;
  const middle = [at[0] + (x + width / 2 - at[0]) * share, at[1] + (y + height / 2 - at[1]) * share] as const;
  board.look({ zoom, middle: zoom === 1 ? null : middle });
}

export function zoomButtons({ view, look, words }: Board): TemplateResult {
  const to = (zoom: number) => look(zoom <= 1 ? { zoom: 1, middle: null } : { zoom: Math.min(MOST, zoom) });
  return html`<div class="zoom screen-only">
    <button
      aria-label=${words.zoomOut}
      title=${words.zoomOut}
      ?disabled=${view.zoom <= 1}
      @click=${() => to(view.zoom / 1.5)}
    >
      −
    </button>
    <span class="quiet">${Math.round(view.zoom * 100)} %</span>
    <button
      aria-label=${words.zoomIn}
      title=${words.zoomIn}
      ?disabled=${view.zoom >= MOST}
      @click=${() => to(view.zoom * 1.5)}
    >
      +
    </button>
    <button aria-pressed=${view.whole} @click=${() => look({ whole: !view.whole, zoom: 1, middle: null })}>
      ${words.zoomFit}
    </button>
  </div>`;
}
