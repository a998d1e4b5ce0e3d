import { type TemplateResult, html } from 'lit';

/** Words of a table that may break after the dots of a path, and never between a number and its unit. */
export function breaking(text: string): TemplateResult {
  const pieces = text.replace(/(\d) (?=[^\s→+±])/g, '$1\u00a0').split(/(?<=[a-z*]\.)/);
  return html`${pieces.map((piece, i) => (i === 0 ? piece : html`<wbr />${piece}`))}`;
}
