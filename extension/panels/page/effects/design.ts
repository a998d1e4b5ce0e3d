import { type TemplateResult, html, nothing } from 'lit';
import type { ModelEffectsTable } from '../../../../language/server/protocol.js';
import { breaking } from './breaks.js';
import type { EffectsWords } from './words.js';

/** What was changed between the builds, by number, and which build has what. */
export function designSection(table: ModelEffectsTable, words: EffectsWords): TemplateResult {
  const { variables, leftOut, summary } = table;
  return html`<section aria-labelledby="changed">
    <h2 id="changed">${words.changed}</h2>
    <p>${summary}</p>
    ${variables.length === 0 ? nothing : changes(table, words)}
    ${leftOut.map((sentence) => html`<p class="quiet">${sentence}</p>`)}
    ${variables.length === 0 ? nothing : matrix(table, words)}
  </section>`;
}

function changes({ variables }: ModelEffectsTable, words: EffectsWords): TemplateResult {
  return html`<table class="changes">
    <thead>
      <tr>
        <th scope="col" class="number">${words.number}</th>
        <th scope="col">${words.what}</th>
        <th scope="col">${words.step}</th>
        <th scope="col">${words.standing}</th>
      </tr>
    </thead>
    <tbody>
      ${variables.map(
        ({ paths, step, standing }, i) =>
          html`<tr>
            <td class="number">${i + 1}</td>
            <th scope="row">${breaking(paths)}</th>
            <td>${breaking(step)}</td>
            <td>${breaking(standing)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** The design matrix. Wide with many changes, so it may be scrolled by itself, by keys too. */
function matrix({ builds, variables }: ModelEffectsTable, words: EffectsWords): TemplateResult {
  return html`<h3 id="design">${words.design}</h3>
    <div class="scrolled" tabindex="0" role="region" aria-labelledby="design">
      <table class="design">
        <caption class="quiet">
          ${words.designCaption}
        </caption>
        <thead>
          <tr>
            <th scope="col">${words.build}</th>
            ${variables.map(({ paths }, i) => html`<th scope="col" title=${paths}>${i + 1}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${builds.map(
            (build, row) =>
              html`<tr>
                <th scope="row">${build}</th>
                ${variables.map(({ values }) => {
                  const { text, moved } = values[row]!;
                  return html`<td>${moved ? html`<strong>${text}</strong>` : text}</td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
}
