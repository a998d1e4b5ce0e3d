import { type TemplateResult, html, nothing } from 'lit';
import type { ComparedFingerboard, ComparedNote, ComparisonTable } from '../../../../language/server/protocol.js';
import { figureCell } from '../figure.js';
import { fill } from '../page.js';
import { fingerboardPlot } from './fingerboard-plot.js';
import type { SideBySideWords } from './words.js';

/** What is heard of the two, note by note: two pictures, the wolves, and every number in a table. */
export function fingerboardSection(
  { a, b, fingerboard }: ComparisonTable,
  words: SideBySideWords,
): TemplateResult | typeof nothing {
  if (!fingerboard) return nothing;
  return html`<section aria-labelledby="heard">
    <h2 id="heard">${words.heard}</h2>
    <p class="quiet">${fingerboard.pluck}</p>
    ${fingerboardPlot(fingerboard, { a, b }, words)} ${wolves(a, fingerboard.wolves.a, words)}
    ${wolves(b, fingerboard.wolves.b, words)}
    <details>
      <summary>${words.noteByNote}</summary>
      ${noteTable(fingerboard, { a, b }, words)}
    </details>
  </section>`;
}

function wolves(name: string, sentences: readonly string[], words: SideBySideWords): TemplateResult {
  if (sentences.length === 0) return html`<p>${fill(words.noWolf, name)}</p>`;
  return html`<p>${fill(words.wolves, name)}</p>
    <ul>
      ${sentences.map((sentence) => html`<li>${sentence}</li>`)}
    </ul>`;
}

function noteTable(
  { strings }: ComparedFingerboard,
  { a, b }: { readonly a: string; readonly b: string },
  words: SideBySideWords,
): TemplateResult {
  const pair = [a, b].map((name) => html`<th role="columnheader" scope="col" class="figure">${name}</th>`);
  return html`<table role="table" class="wide notes">
    <thead role="rowgroup">
      <tr role="row">
        <th role="columnheader" scope="col">${words.note}</th>
        <th role="columnheader" scope="col">${words.fret}</th>
        ${pair}
        <th role="columnheader" scope="col" class="figure">${words.loudness}</th>
        ${pair}
        <th role="columnheader" scope="col" class="figure">${words.sustain}</th>
      </tr>
    </thead>
    ${strings.map(
      ({ name, notes }) =>
        html`<tbody role="rowgroup">
          <tr role="row">
            <th role="rowheader" scope="rowgroup" colspan="8">${fill(words.stringNamed, name)}</th>
          </tr>
          ${notes.map(noteRow)}
        </tbody>`,
    )}
  </table>`;
}

function noteRow({ fret, note, a, b, louder, longer }: ComparedNote): TemplateResult {
  return html`<tr role="row">
    <th role="rowheader" scope="row">${note}</th>
    <td role="cell">${fret}</td>
    ${figureCell(a?.loud)} ${figureCell(b?.loud)} ${figureCell(louder)} ${figureCell(a?.long)} ${figureCell(b?.long)}
    ${figureCell(longer, 'share')}
  </tr>`;
}
