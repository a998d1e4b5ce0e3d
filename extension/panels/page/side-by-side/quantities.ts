import { type TemplateResult, html, nothing } from 'lit';
import type { ComparisonTable, DerivedRow } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';
import { choice } from '../choice.js';
import { figureCell } from '../figure.js';
import { fill } from '../page.js';
import { PAIR_COLUMNS, pairHead } from './pair-head.js';
import { byTitle } from './parts.js';
import { scale, toldScale } from './told-scale.js';

export type Wanted = 'distinct' | 'all';

/** Computed values that differ, as many as the maker wants to see. */
export function shownRows({ derived }: ComparisonTable, wanted: Wanted): readonly DerivedRow[] {
  return derived.filter(({ verdict }) => verdict === 'distinct' || (wanted === 'all' && verdict === 'too-small'));
}

/** What the differences come to, and whether anybody could tell afterwards. */
export function quantitiesSection(
  table: ComparisonTable,
  words: SideBySideWords,
  wanted: Wanted,
  look: (wanted: Wanted) => void,
): TemplateResult {
  const { derived } = table;
  const rows = shownRows(table, wanted);
  const of = (...verdicts: readonly DerivedRow['verdict'][]) =>
    derived.filter(({ verdict }) => verdicts.includes(verdict));
  const hidden = wanted === 'all' ? 0 : of('too-small').length;
  return html`<section aria-labelledby="does">
    <h2 id="does">${words.does}</h2>
    ${choice(
      'wanted',
      words.show,
      [
        { value: 'distinct', label: words.showDistinct },
        { value: 'all', label: words.showAll },
      ],
      wanted,
      look,
    )}
    ${
      rows.length === 0
        ? html`<p>${words.doesNone}</p>`
        : html`<table role="table" class="wide pair quantities">
              ${pairHead(table, words, words.toldApart)} ${byTitle(rows, PAIR_COLUMNS, row)}
            </table>
            <p class="quiet legend">${scale(1.8)} ${words.scaleLegend}</p>`
    }
    ${hidden > 0 ? html`<p class="quiet">${fill(words.hidden, hidden)}</p>` : nothing}
    ${table.leftOut === undefined ? nothing : html`<p class="quiet">${table.leftOut}</p>`}
    ${listed(words.pending, of('pending'))} ${listed(words.same, of('same'))}
    ${reasons(words.notKnown, of('one-only', 'unknown'))}
  </section>`;
}

function row({
  name,
  sentence,
  a,
  b,
  difference,
  percent,
  word,
  verdict,
  verdictInWords,
  times,
}: DerivedRow): TemplateResult {
  return html`<tr role="row" class=${verdict}>
    <th role="rowheader" scope="row" title=${sentence}>${name}</th>
    ${figureCell(a, '', difference)} ${figureCell(b, '', difference)} ${figureCell(difference)}
    ${figureCell(percent, 'share')}
    <td role="cell" class="word">${word}</td>
    <td role="cell" class="verdict">${times === undefined ? verdictInWords : toldScale(times, verdictInWords)}</td>
  </tr>`;
}

/** Names only, folded away: there are many, and there is nothing to say of them. */
function listed(sentence: string, rows: readonly DerivedRow[]): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  return html`<details class="quiet">
    <summary>${fill(sentence, rows.length)}</summary>
    <p>${rows.map(({ path }) => path).join(', ')}</p>
  </details>`;
}

function reasons(sentence: string, rows: readonly DerivedRow[]): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  return html`<details class="quiet">
    <summary>${fill(sentence, rows.length)}</summary>
    <ul>
      ${rows.map(({ path, verdictInWords }) => html`<li>${path}: ${verdictInWords}</li>`)}
    </ul>
  </details>`;
}
