import { type TemplateResult, html } from 'lit';
import { type Board, figuresIn, nameOf } from './board.js';

/** The line under the plan: the numbers of the part under the pointer or with the focus, or how to come by them. */
export function pointedAt({ drawing, plate, view, words }: Board): TemplateResult {
  const part = drawing.parts.find((each) => each.path === view.pointed && each.plate === plate);
  return html`<p class="pointed-at screen-only">
    ${part ? html`<b>${nameOf(part, words)}</b> ${figuresIn(part)}` : html`<span class="quiet">${words.pointHere}</span>`}
  </p>`;
}
