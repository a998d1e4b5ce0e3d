import { type TemplateResult, html, nothing } from 'lit';
import type { EffectRow, ModelEffectsTable, ResponseTable } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import { breaking } from './breaks.js';
import type { Chosen } from './chosen.js';
import type { EffectsWords } from './words.js';

/**
 * Changes down, readings across. Filled where an effect is told apart, hollow where it is not, empty where nothing was read;
 * up or down by the shape. One press opens the effect.
 */
export function matrixSection(
  table: ModelEffectsTable,
  chosen: Chosen | undefined,
  choose: (chosen: Chosen) => void,
  inWords: boolean,
  words: EffectsWords,
): TemplateResult {
  const { variables, responses } = table;
  const shown = responses.map((response, i) => ({ response, i })).filter(({ response }) => response.effects.length > 0);
  return html`<section aria-labelledby="matrix">
    <h2 id="matrix">${words.matrix}</h2>
    <table class="matrix">
      <thead>
        <tr>
          <th scope="col">${words.what}</th>
          ${shown.map(({ response }) => html`<th scope="col">${breaking(response.name)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${variables.map(
          ({ paths, step }, row) =>
            html`<tr>
              <th scope="row">${breaking(paths)}<br /><span class="quiet">${breaking(step)}</span></th>
              ${shown.map(({ response, i }) => cell({ response, at: i, variable: row }, chosen, choose, inWords))}
            </tr>`,
        )}
      </tbody>
    </table>
    ${inWords ? nothing : legend(words)}
  </section>`;
}

interface Place {
  readonly response: ResponseTable;
  /** Which of the responses it is, and of the variables. */
  readonly at: number;
  readonly variable: number;
}

function cell(
  { response, at, variable }: Place,
  chosen: Chosen | undefined,
  choose: (chosen: Chosen) => void,
  inWords: boolean,
): TemplateResult {
  const j = response.effects.findIndex(({ variables }) => variables.includes(variable));
  const effect = response.effects[j];
  if (!effect) return html`<td></td>`;
  const isOpen = chosen?.response === at && chosen.effect === j;
  const said = `${response.name}: ${effect.sentence} ${effect.verdictInWords}`;
  return html`<td>
    <button
      class="cell ${effect.verdict}"
      aria-pressed=${isOpen}
      aria-label=${said}
      title=${said}
      @click=${() => choose({ response: at, effect: j })}
    >
      ${inWords ? (effect.together ?? effect.builds ?? effect.computed ?? '–') : signOf(effect)}
    </button>
  </td>`;
}

/** ▲▼ filled, △▽ hollow, ◆ where builds and mechanics disagree; · where these builds cannot tell. */
function signOf({ sizes, verdict }: EffectRow): string {
  const size = sizes.together ?? sizes.builds;
  if (verdict === 'disagrees') return '◆';
  if (!size) return '·';
  const isUp = size.amount >= 0;
  return verdict === 'hidden' ? (isUp ? '△' : '▽') : isUp ? '▲' : '▼';
}

function legend(words: EffectsWords): TemplateResult {
  const signs = [
    ['▲▼', words.signTold],
    ['△▽', words.signHidden],
    ['◆', words.signDisagrees],
    ['·', words.signTangled],
  ] as const;
  return html`<p class="quiet legend-line">
    ${signs.map(([sign, text]) => html`<span class="legend"><span aria-hidden="true">${sign}</span> ${text}</span>`)}
    <span class="legend">${fill(words.signEmpty)}</span>
  </p>`;
}
