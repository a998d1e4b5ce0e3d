import { html, nothing } from 'lit';
import type { DrawingAction, DrawingContent, DrawingSubject, DrawingWords } from '../drawing-messages.js';
import { choice } from './choice.js';
import './drawing.css';
import ownStyles from './drawing.css?raw';
import { braceTable } from './drawing/brace-table.js';
import { drawnMode } from './drawing/mode-field.js';
import { modeRelief, reliefChoice } from './drawing/mode-relief.js';
import { modeChoice, modeTable } from './drawing/modes.js';
import { notDrawn } from './drawing/not-drawn.js';
import { otherParts } from './drawing/other-parts.js';
import { changedHere, layerChoice } from './drawing/layers.js';
import { measured } from './drawing/measure.js';
import { plan, sidePlan } from './drawing/plan.js';
import { zoomButtons } from './drawing/zoom.js';
import type { Board, DrawingView } from './drawing/board.js';
import { pointedAt } from './drawing/pointed-at.js';
import { thicknessLegend } from './drawing/thickness.js';
import { fill, openPage } from './page.js';
import pageStyles from './page.css?raw';
import { handOver, printedPage } from './printed.js';

openPage<DrawingSubject, DrawingContent, DrawingWords, DrawingView, DrawingAction>(
  {
    ...{ mode: 0, pointed: '', zoom: 1, whole: false, middle: null, hidden: [], layers: false },
    ...{ measure: false, from: null, at: null, relief: false, moving: false },
  },
  (shown) => {
    const { subject, content, words, view, act } = shown;
    const { drawing, modes } = content;
    if (!drawing) return html`<p>${fill(words.gone, subject.name)}</p>`;
    const { plate } = subject;
    const board: Board = { ...shown, drawing, plate, modes: subject.modes ? modes : null };
    const isRelief = view.relief && drawnMode(board) !== undefined;
    return html`
      <h1>${drawing.name}</h1>
      <p class="quiet">
        ${drawing.size ? fill(words.size, drawing.size.length, drawing.size.width) : nothing} ${words.seen}
      </p>
      <div class="choices">
        ${choice(
          'plate',
          words.plate,
          [
            { value: 'top', label: words.top },
            { value: 'back', label: words.back },
          ],
          plate,
          (value) => act({ kind: 'choose', choice: { plate: value } }),
        )}
        ${choice(
          'shown',
          words.shown,
          [
            { value: 'parts', label: words.parts },
            { value: 'modes', label: words.modes },
          ],
          subject.modes ? 'modes' : 'parts',
          (value) => act({ kind: 'choose', choice: { modes: value === 'modes' } }),
        )}
        <button class="link screen-only" @click=${() => print(board)}>${words.print}</button>
        <button class="link screen-only" @click=${() => act({ kind: 'save' })}>${words.save}</button>
      </div>
      ${modeChoice(board)} ${reliefChoice(board)} ${isRelief ? nothing : layerChoice(board)}
      <div class="board">
        <div class="plans">
          ${
            isRelief
              ? modeRelief(board)
              : html`<div class="plan-and-side">${plan(board)} ${subject.modes ? nothing : sidePlan(board)}</div>
                  ${zoomButtons(board)} ${measured(board)} ${pointedAt(board)}`
          }
        </div>
        <div class="beside">
          ${changedHere(board)} ${subject.modes ? modeTable(board) : thicknessLegend(board)} ${notDrawn(board)}
          ${braceTable(board)} ${otherParts(board)}
        </div>
      </div>
    `;
  },
);

/** The plan and the tables as they stand on the page just now. */
function print({ drawing, content, words, act }: Board): void {
  const html = printedPage(drawing.name, words.printHint, `${pageStyles}\n${ownStyles}`);
  if (content.opensPages) act({ kind: 'print', html });
  else handOver(fill(words.fileName, drawing.name), html);
}
