import { type TemplateResult, html, nothing } from 'lit';
import type { ModelEffectsTable } from '../../../../language/server/protocol.js';
import { breaking } from './breaks.js';
import type { EffectsWords } from './words.js';

/** What was changed between the builds, and whether its effect can be found by itself. */
export function changesSection({ variables, leftOut }: ModelEffectsTable, words: EffectsWords): TemplateResult {
  return html`<section aria-labelledby="changed">
    <h2 id="changed">${words.changed}</h2>
    ${
      variables.length === 0
        ? nothing
        : html`<table class="changes">
            <thead>
              <tr>
                <th scope="col">${words.what}</th>
                <th scope="col">${words.step}</th>
                <th scope="col">${words.standing}</th>
              </tr>
            </thead>
            <tbody>
              ${variables.map(
                ({ paths, step, standing }) =>
                  html`<tr>
                    <th scope="row">${breaking(paths)}</th>
                    <td>${breaking(step)}</td>
                    <td>${breaking(standing)}</td>
                  </tr>`,
              )}
            </tbody>
          </table>`
    }
    ${leftOut.map((sentence) => html`<p class="quiet">${sentence}</p>`)}
  </section>`;
}
