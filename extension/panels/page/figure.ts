import { type TemplateResult, html } from 'lit';

/**
 * A written quantity as a table cell, its decimal point under that of the cells above, its unit beside it. Read aloud and
 * copied it is the text as it came: `−0.134 N·m`.
 */
export function figureCell(text: string | undefined, kind = ''): TemplateResult {
  const parts = /^([−+-]?\d+)(\.\d+)?(.*)$/.exec(text ?? '');
  if (!parts) return html`<td role="cell" class="figure ${kind}"><span class="plain">${text ?? '–'}</span></td>`;
  const [, whole, fraction, unit] = parts;
  return html`<td role="cell" class="figure ${kind}">
    <span class="spoken">${text}</span
    ><span class="aligned" aria-hidden="true"
      ><span class="whole">${whole}</span><span class="fraction">${fraction}</span
      ><span class="unit">${unit?.trim()}</span></span
    >
  </td>`;
}
