import { type TemplateResult, html, nothing } from 'lit';
import type { ComparisonTable, ReadingRow } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';
import { figureCell } from '../figure.js';
import { byTitle, occasionOf } from './parts.js';

/** What was read off the builds, beside what they compute to as they were made. */
export function readingsSection(
  { readings }: ComparisonTable,
  words: SideBySideWords,
): TemplateResult | typeof nothing {
  if (readings.length === 0) return nothing;
  const rows = withRuns(readings.map((reading) => ({ ...reading, title: occasionOf(reading) })));
  return html`<section aria-labelledby="readings">
    <h2 id="readings">${words.readings}</h2>
    <table role="table" class="wide readings">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">${words.what}</th>
          <th role="columnheader" scope="col" class="figure">${words.reading}</th>
          <th role="columnheader" scope="col" class="figure">${words.computed}</th>
          <th role="columnheader" scope="col" class="figure">${words.difference}</th>
          <th role="columnheader" scope="col" class="word">${words.inWords}</th>
          <th role="columnheader" scope="col" class="verdict">${words.verdict}</th>
        </tr>
      </thead>
      ${byTitle(rows, 6, row)}
    </table>
  </section>`;
}

type Titled = ReadingRow & { readonly title: string };
/** `run`: rows from here on of which the same is to be said; none for a row of which it has been said. */
type InRun = Titled & { readonly run: number };

function withRuns(rows: readonly Titled[]): readonly InRun[] {
  const begins = (i: number) => {
    const [here, before] = [rows[i], rows[i - 1]];
    return here?.verdictInWords !== before?.verdictInWords || here?.title !== before?.title;
  };
  return rows.map((each, i) => {
    if (!begins(i)) return { ...each, run: 0 };
    let end = i + 1;
    while (end < rows.length && !begins(end)) end += 1;
    return { ...each, run: end - i };
  });
}

function row({ path, reading, prediction, difference, word, verdict, verdictInWords, run }: InRun): TemplateResult {
  return html`<tr role="row" class=${verdict}>
    <th role="rowheader" scope="row">${path}</th>
    ${figureCell(reading, '', difference)} ${figureCell(prediction, 'spread')} ${figureCell(difference)}
    <td role="cell" class="word">${word}</td>
    ${run > 0 ? html`<td role="cell" class="verdict" rowspan=${run}>${verdictInWords}</td>` : nothing}
  </tr>`;
}
