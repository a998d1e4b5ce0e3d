import { type TemplateResult, html } from 'lit';
import type { ChangeRow, ChangedPath, ComparisonTable } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';
import { figureCell } from '../figure.js';
import { fill } from '../page.js';
import { PAIR_COLUMNS, pairHead } from './pair-head.js';
import { byTitle } from './parts.js';

/** What differs between the two, part by part. */
export function changesSection(table: ComparisonTable, words: SideBySideWords): TemplateResult {
  const { a, b, changes } = table;
  return html`<section aria-labelledby="differs">
    <h2 id="differs">${words.differs}</h2>
    ${
      changes.length === 0
        ? html`<p>${fill(words.differsNone, a, b)}</p>`
        : html`<table role="table" class="wide pair changes">
            ${pairHead(table, words, words.standing)} ${byTitle(changes, PAIR_COLUMNS, changeRows)}
          </table>`
    }
  </section>`;
}

function changeRows(change: ChangeRow): TemplateResult {
  const { label, standing, paths } = change;
  // A group of paths that changed for one reason says the reason once.
  const reason = paths.some(({ path }) => path === label) || paths.length < 2 ? undefined : label;
  return html`${paths.map(
    ({ name, a, b, difference, percent, word }: ChangedPath, i) =>
      html`<tr role="row">
        <th role="rowheader" scope="row">${name}</th>
        ${figureCell(a, '', difference)} ${figureCell(b, '', difference)} ${figureCell(difference ?? '')}
        ${figureCell(percent ?? '', 'share')}
        <td role="cell" class="word">${word}</td>
        <td role="cell" class="quiet verdict">${i === 0 ? [standing, reason].filter(Boolean).join(': ') : ''}</td>
      </tr>`,
  )}`;
}
