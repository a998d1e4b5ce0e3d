/** Which mode is drawn, and all of them in a table. */
import { type TemplateResult, html, nothing } from 'lit';
import { choice } from '../choice.js';
import { fill } from '../page.js';
import { modesCaution, movementOf, whyNoModes } from '../plate/mode-in-words.js';
import { shownMode } from '../plate/shown-mode.js';
import type { Board } from './board.js';

export function modeChoice({ modes, view, words, look }: Board): TemplateResult | typeof nothing {
  if (!modes || modes.modes.length === 0) return nothing;
  const options = modes.modes.map(({ frequency }, i) => ({ value: i, label: frequency }));
  return choice('mode', words.mode, options, shownMode(view.mode, modes.modes), (mode) => look({ mode }));
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
                      <td>${movementOf(mode, words)}</td>
                    </tr>`,
                )}
              </tbody>
            </table>
            <p class="quiet">${words.modesLegend}</p>
            <p class="quiet">${modesCaution(modes, words)}</p>`
    }
  </section>`;
}

function stateOf({ modes, words, view }: Board): string {
  if (!modes) return words.modesWaiting;
  if (modes.state === 'waiting' && modes.modes.length > 0) return words.modesWaitingAnew;
  const why = whyNoModes(modes, words);
  if (why !== undefined) return why;
  const index = shownMode(view.mode, modes.modes);
  const mode = modes.modes[index];
  return mode ? fill(words.modeDrawn, index + 1, mode.frequency, movementOf(mode, words)) : '';
}
