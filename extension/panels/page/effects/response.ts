import { type TemplateResult, html, nothing } from 'lit';
import type { EffectRow, ResponseTable } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import { breaking } from './breaks.js';
import { effectsPlot } from './plot.js';
import type { EffectsWords } from './words.js';

/** What each change did to what was read under one set of conditions: drawn on the noise floor, and as a table. */
export function responseSection(response: ResponseTable, index: number, words: EffectsWords): TemplateResult {
  const { name, conditions, effects, notes, floor } = response;
  const id = `response-${index}`;
  return html`<section aria-labelledby=${id} class="response">
    <h2 id=${id}>${fill(words.did, name)}</h2>
    <p class="quiet">${conditions}</p>
    ${effects.length === 0 ? nothing : html`${effectsPlot(response, words)} ${table(effects, words)}`}
    ${notes.map((sentence) => html`<p>${sentence}</p>`)} ${floor ? html`<p class="quiet">${floor}</p>` : nothing}
  </section>`;
}

function table(effects: readonly EffectRow[], words: EffectsWords): TemplateResult {
  return html`<table class="effects">
    <thead>
      <tr>
        <th scope="col">${words.what}</th>
        <th scope="col" class="number">${words.effect}</th>
        <th scope="col" class="number">${words.computed}</th>
        <th scope="col">${words.verdict}</th>
      </tr>
    </thead>
    <tbody>
      ${effects.map(
        ({ what, effect, computed, distinguishable, verdict }) =>
          html`<tr class=${distinguishable ? 'found' : ''}>
            <th scope="row">${breaking(what)}</th>
            <td class="number">${effect}</td>
            <td class="number">${computed ?? '–'}</td>
            <td class="verdict">${verdict}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
