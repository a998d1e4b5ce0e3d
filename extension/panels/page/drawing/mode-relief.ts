/** A mode as a relief, in the place of the plan. */
import { type TemplateResult, html, nothing } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { DrawnMode, PlanPoint } from '../../../../language/server/protocol.js';
import { choice } from '../choice.js';
import { fill } from '../page.js';
import type { ReliefPicture } from '../plate/relief/paint.js';
import { asksForLittleMotion, PlateRelief } from '../plate/relief/plate-relief.js';
import { movementAt, surfaceOf } from '../plate/relief/relief.js';
import type { Board } from './board.js';
import { drawnMode } from './mode-field.js';

if (!customElements.get('plate-relief')) customElements.define('plate-relief', PlateRelief);

/** Flat or as a relief, and whether it swings. */
export function reliefChoice({ modes, view, words, look }: Board): TemplateResult | typeof nothing {
  if (!modes || modes.modes.length === 0) return nothing;
  const options = [
    { value: 'flat', label: words.flat },
    { value: 'relief', label: words.relief },
  ];
  const isStill = asksForLittleMotion();
  return html`<div class="choices screen-only">
    ${choice('seen-as', words.seenAs, options, view.relief ? 'relief' : 'flat', (value) => look({ relief: value === 'relief' }))}
    ${
      view.relief
        ? html`<label
            ><input
              type="checkbox"
              .checked=${view.moving && !isStill}
              ?disabled=${isStill}
              @change=${() => look({ moving: !view.moving })}
            />${isStill ? words.littleMotion : words.moving}</label
          >`
        : nothing
    }
  </div>`;
}

/** Nothing where the mode is to be drawn flat, or there is none. */
export function modeRelief(board: Board): TemplateResult | typeof nothing {
  const { modes, view, words, drawing } = board;
  const mode = drawnMode(board);
  if (!view.relief || !modes || !mode || drawing.outline.length === 0) return nothing;
  return html`<figure class=${modes.state === 'waiting' ? 'stale' : ''}>
    <plate-relief
      tabindex="0"
      role="img"
      aria-label=${fill(words.reliefOf, mode.frequency, drawing.name)}
      .picture=${guard([mode.movement, drawing.outline], () => pictureOf(board, mode))}
      .moving=${view.moving && !asksForLittleMotion()}
    ></plate-relief>
    <figcaption class="quiet screen-only">${words.reliefHint}</figcaption>
  </figure>`;
}

function pictureOf({ modes, drawing, plate }: Board, mode: DrawnMode): ReliefPicture {
  const { grid } = modes!;
  const moved = ([station, offset]: PlanPoint) =>
    [station, offset, movementAt(grid, mode.movement, station, offset) / 1000] as const;
  const hole = drawing.parts.find((part) => part.kind === 'soundhole' && part.plate === plate)?.shape;
  return {
    surface: surfaceOf(drawing.outline, grid, mode.movement),
    lines: [
      ...(hole ? [{ kind: 'hole' as const, points: hole.map(moved) }] : []),
      { kind: 'rim', points: drawing.outline.map(moved) },
    ],
  };
}
