import { type TemplateResult, html } from 'lit';
import type { SideBySideWords } from './words.js';

/** Columns a heading of such a table spans: its own, since others may be left out where there is little room. */
export const PAIR_COLUMNS = 1;

/** Head of such a table: what it is, the one, the other, the difference told in three ways, and `last`. */
export function pairHead(
  { a, b }: { readonly a: string; readonly b: string },
  words: SideBySideWords,
  last: string,
): TemplateResult {
  return html`<thead role="rowgroup">
    <tr role="row">
      <th role="columnheader" scope="col">${words.what}</th>
      <th role="columnheader" scope="col" class="figure">${a}</th>
      <th role="columnheader" scope="col" class="figure">${b}</th>
      <th role="columnheader" scope="col" class="figure">${words.difference}</th>
      <th role="columnheader" scope="col" class="figure share">${words.share}</th>
      <th role="columnheader" scope="col" class="word">${words.inWords}</th>
      <th role="columnheader" scope="col" class="verdict">${last}</th>
    </tr>
  </thead>`;
}
