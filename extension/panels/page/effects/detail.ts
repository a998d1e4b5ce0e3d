import { type TemplateResult, html, nothing } from 'lit';
import type { EffectRow, ModelEffectsTable, ResponseTable } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import { breaking } from './breaks.js';
import type { Chosen } from './chosen.js';
import { intervalsPlot } from './intervals.js';
import { calibrationPlot, runPlot } from './run-plot.js';
import type { EffectsWords } from './words.js';

/** One effect: its three intervals on one scale, what it would take to tell it, its run chart, its builds. */
export function detailSection(
  table: ModelEffectsTable,
  chosen: Chosen | undefined,
  inWords: boolean,
  words: EffectsWords,
): TemplateResult | typeof nothing {
  const response = chosen && table.responses[chosen.response];
  const effect = response?.effects[chosen!.effect];
  if (!response || !effect) return nothing;
  return html`<section aria-labelledby="effect" class="detail">
    <h2 id="effect">${fill(words.on, effect.what, response.name)}</h2>
    <p class="quiet">${response.conditions}</p>
    <p>${effect.sentence}</p>
    ${effect.next ? html`<p>${effect.next}</p>` : nothing}
    ${
      effect.beforeAndAfter.length > 0
        ? html`<p>${fill(words.beforeAndAfter, effect.beforeAndAfter.join(', '))}</p>`
        : nothing
    }
    ${inWords ? allIntervals(response, words) : intervalsPlot(effect, response.unit, words)}
    <h3>${words.series}</h3>
    ${inWords ? runTable(response, words) : runPlot(response, words)}
    <h3>${words.predicted}</h3>
    ${calibrationText(response, words)} ${inWords ? nothing : calibrationPlot(response, words)}
    <h3>${words.builds}</h3>
    ${buildsTable(table, effect, words)} ${response.notes.map((sentence) => html`<p>${sentence}</p>`)}
    ${response.floor ? html`<p class="quiet">${response.floor}</p>` : nothing}
  </section>`;
}

/** Every effect on the same reading, with all three columns. */
function allIntervals({ effects }: ResponseTable, words: EffectsWords): TemplateResult {
  return html`<table class="effects">
    <thead>
      <tr>
        <th scope="col">${words.what}</th>
        <th scope="col" class="number">${words.computed}</th>
        <th scope="col" class="number">${words.alone}</th>
        <th scope="col" class="number">${words.together}</th>
        <th scope="col">${words.verdict}</th>
      </tr>
    </thead>
    <tbody>
      ${effects.map(
        ({ what, computed, builds, together, verdict, verdictInWords }) =>
          html`<tr class=${verdict === 'hidden' ? '' : 'found'}>
            <th scope="row">${breaking(what)}</th>
            <td class="number">${computed ?? '–'}</td>
            <td class="number">${builds ?? '–'}</td>
            <td class="number">${together ?? '–'}</td>
            <td class="verdict">${verdictInWords}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function runTable({ chart, unit }: ResponseTable, words: EffectsWords): TemplateResult {
  const write = (value: number | undefined) => (value === undefined ? '–' : `${Number(value.toPrecision(5))} ${unit}`);
  return html`<table>
    <thead>
      <tr>
        <th scope="col">${words.build}</th>
        <th scope="col">${words.occasion}</th>
        <th scope="col" class="number">${words.read}</th>
        <th scope="col" class="number">${words.computed}</th>
        <th scope="col">${words.cameIn}</th>
      </tr>
    </thead>
    <tbody>
      ${chart.points.map(
        ({ build, occasion, read, computed, changes, odd }) =>
          html`<tr>
            <th scope="row">${build}</th>
            <td>${occasion}</td>
            <td class="number">${write(read)}${odd ? ` (${words.keptOut})` : nothing}</td>
            <td class="number">${write(computed)}</td>
            <td>${breaking(changes.join(', '))}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function calibrationText({ chart: { calibration } }: ResponseTable, words: EffectsWords): TemplateResult {
  if (!calibration) return html`<p class="quiet">${words.noCalibration}</p>`;
  const { factor, scatter, builds, helps } = calibration;
  const said = fill(words.calibration, factor.toFixed(3), builds, (100 * scatter).toPrecision(2));
  return html`<p>${said} ${helps ? words.factorHelps : words.factorDoesNotHelp}</p>`;
}

/** Which build has what of the change. */
function buildsTable({ builds, variables }: ModelEffectsTable, effect: EffectRow, words: EffectsWords): TemplateResult {
  const own = effect.variables.flatMap((i) => variables[i] ?? []);
  return html`<table class="builds">
    <thead>
      <tr>
        <th scope="col">${words.build}</th>
        ${own.map(({ paths }) => html`<th scope="col">${breaking(paths)}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${builds.map(
        (build, row) =>
          html`<tr>
            <th scope="row">${build}</th>
            ${own.map(({ values }) => {
              const { text, moved } = values[row]!;
              return html`<td>${moved ? html`<strong>${text}</strong>` : text}</td>`;
            })}
          </tr>`,
      )}
    </tbody>
  </table>`;
}
