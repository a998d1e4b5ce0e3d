import { type TemplateResult, html, nothing } from 'lit';
import type { ComparedEvidence, EvidenceRow } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';
import { figureCell } from '../figure.js';
import { fill } from '../page.js';
import { evidencePlot } from './evidence-plot.js';
import { byTitle, occasionOf } from './parts.js';
import { toldScale } from './told-scale.js';

/** What the builds say of the difference, with the noise floor drawn in. */
export function evidenceSection(
  evidence: ComparedEvidence | undefined,
  words: SideBySideWords,
): TemplateResult | typeof nothing {
  if (!evidence) return nothing;
  const { builds, against, summary, undeclared, rows } = evidence;
  const sources = new Set(rows.flatMap(({ scatterFrom }) => scatterFrom ?? []));
  return html`<section aria-labelledby="evidence">
    <h2 id="evidence">${words.evidence}</h2>
    <p class="quiet">${fill(words.evidenceAgainst, builds.join(', '), against.join(', '))}</p>
    <p>${summary}</p>
    ${undeclared.map((sentence) => html`<p>${sentence}</p>`)} ${evidencePlot(rows, words)}
    <table role="table" class="wide evidence">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">${words.what}</th>
          <th role="columnheader" scope="col" class="figure">${words.reading}</th>
          <th role="columnheader" scope="col" class="figure">${words.mean}</th>
          <th role="columnheader" scope="col" class="figure">${words.difference}</th>
          <th role="columnheader" scope="col" class="word">${words.inWords}</th>
          <th role="columnheader" scope="col" class="figure floor">${words.floor}</th>
          <th role="columnheader" scope="col" class="figure">${words.predicted}</th>
          <th role="columnheader" scope="col" class="verdict">${words.verdict}</th>
        </tr>
      </thead>
      ${byTitle(
        rows.map((each) => ({ ...each, title: occasionOf(each) })),
        8,
        row,
      )}
    </table>
    ${[...sources].map((source) => html`<p class="quiet">${fill(words.floorFrom, source)}</p>`)}
  </section>`;
}

function row(each: EvidenceRow): TemplateResult {
  const { shares } = each;
  return html`<tr role="row" class=${each.verdict}>
    <th role="rowheader" scope="row">${each.path}</th>
    ${figureCell(each.reading, '', each.difference)} ${figureCell(each.mean, '', each.difference)}
    ${figureCell(each.difference)}
    <td role="cell" class="word">${each.word}</td>
    ${figureCell(each.floor, 'floor')} ${figureCell(each.predicted)}
    <td role="cell" class="verdict">
      ${shares && shares.floor > 0 ? toldScale(shares.difference / shares.floor, each.verdictInWords) : each.verdictInWords}
    </td>
  </tr>`;
}
