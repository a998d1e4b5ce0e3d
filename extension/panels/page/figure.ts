import { type TemplateResult, html, nothing } from 'lit';

/**
 * A written quantity as a table cell, its decimal point under that of the cells above, its unit beside it. Read aloud and
 * copied it is the text as it came: `−0.134 N·m`. `beside`: a figure of the same row that shows the unit for both.
 */
export function figureCell(text: string | undefined, kind = '', beside?: string): TemplateResult {
  const parts = FIGURE.exec(text ?? '');
  if (!parts) return html`<td role="cell" class="figure ${kind}"><span class="plain">${text ?? '–'}</span></td>`;
  const [, whole, fraction, unit] = parts;
  return html`<td role="cell" class="figure ${kind}">
    <span class="spoken">${text}</span
    ><span class="aligned" aria-hidden="true"
      ><span class="whole">${whole}</span
      ><span class="fraction">${fraction}</span
      >${isSaidBeside(unit, beside) ? nothing : html`<span class="unit">${unit?.trim()}</span>`}</span
    >
  </td>`;
}

const FIGURE = /^([−+-]?\d+)(\.\d+)?(.*)$/;

function isSaidBeside(unit: string | undefined, beside: string | undefined): boolean {
  return beside !== undefined && FIGURE.exec(beside)?.[3] === unit;
}
