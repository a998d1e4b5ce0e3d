/** Which mode is drawn, and all of them in a table. */
import { type TemplateResult, html, nothing } from 'lit';
import type { DrawnMode } from '../../../../language/server/protocol.js';
import type { DrawingWords } from '../../drawing-messages.js';
import { choice } from '../choice.js';
import { fill } from '../page.js';
import type { Board } from './board.js';

export function modeChoice({ modes, view, words, look }: Board): TemplateResult | typeof nothing {
  if (!modes || modes.modes.length === 0) return nothing;
  const options = modes.modes.map(({ frequency }, i) => ({ value: i, label: frequency }));
  return choice('mode', words.mode, options, shownMode(view.mode, modes.modes), (mode) => look({ mode }));
}

/** A plate may have fewer modes than the one looked at before. */
export function shownMode(wanted: number, modes: readonly DrawnMode[]): number {
  return Math.max(0, Math.min(wanted, modes.length - 1));
}

export function modeTable(board: Board): TemplateResult {
  const { modes, plate, words, view } = board;
  const drawn = modes ? shownMode(view.mode, modes.modes) : 0;
  return html`<section>
    <h2>${plate === 'top' ? words.modesTop : words.modesBack}</h2>
    <p role="status">${stateOf(board)}</p>
    ${
      !modes || modes.modes.length === 0
        ? nothing
        : html`<table>
              <thead>
                <tr>
                  <th scope="col" class="number">${words.number}</th>
                  <th scope="col" class="number">${words.frequency}</th>
                  <th scope="col" class="number">${words.air}</th>
                  <th scope="col">${words.movement}</th>
                </tr>
              </thead>
              <tbody>
                ${modes.modes.map(
                  (mode, i) =>
                    html`<tr class=${i === drawn ? 'pointed' : ''}>
                      <td class="number">${i + 1}</td>
                      <td class="number">${mode.frequency}</td>
                      <td class="number">${mode.air}</td>
                      <td>${movementOf(mode, words)}${mode.main ? `; ${words.mainMode}` : nothing}</td>
                    </tr>`,
                )}
              </tbody>
            </table>
            <p class="quiet">${words.modesLegend}</p>
            <p class="quiet">${modes.edge === 'rim' ? words.modesCautionRim : words.modesCautionHinged}</p>`
    }
  </section>`;
}

function stateOf({ modes, words, view }: Board): string {
  if (!modes) return words.modesWaiting;
  const { state, missing, trouble } = modes;
  if (state === 'waiting') return modes.modes.length > 0 ? words.modesWaitingAnew : words.modesWaiting;
  if (state === 'unknown') {
    return missing.length > 0 ? fill(words.modesMissing, missing.join(', ')) : fill(words.modesTrouble, trouble ?? '');
  }
  const index = shownMode(view.mode, modes.modes);
  const mode = modes.modes[index];
  return mode ? fill(words.modeDrawn, index + 1, mode.frequency, movementOf(mode, words)) : '';
}

/** In words: as one, side against side, end against end, or in so many areas. */
function movementOf({ areas }: DrawnMode, words: DrawingWords): string {
  const [one, other] = areas;
  if (!one || !other) return words.asOne;
  if (areas.length > 2) return fill(words.areas, areas.length);
  const along = Math.abs(one.middle[0] - other.middle[0]);
  const across = Math.abs(one.middle[1] - other.middle[1]);
  return across > along ? words.beside : words.behind;
}
