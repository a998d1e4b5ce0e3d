/** A mode of the one over the mode of the other that moves most like it, and all such pairs in a table. */
import { type TemplateResult, html, nothing, svg } from 'lit';
import { guard } from 'lit/directives/guard.js';
import type { ComparedModes, Drawing, DrawnMode, ModePair, ModeShapes } from '../../../../language/server/protocol.js';
import { choice } from '../choice.js';
import { figureCell } from '../figure.js';
import { fill } from '../page.js';
import { modeLines } from '../plate/mode-lines.js';
import { modesCaution, movementOf, whyNoModes } from '../plate/mode-in-words.js';
import { modeMarks } from '../plate/mode-marks.js';
import { planLine } from '../plate/plan-line.js';
import { shownMode } from '../plate/shown-mode.js';
import type { Overlay } from './overlaid.js';
import { bothPlans, frameOf, legend, neckOf } from './overlay-parts.js';
import { pairHead } from './pair-head.js';
import type { SideBySideWords } from './words.js';

/** Per mille of the largest movement; one line is enough where two plates lie over each other. */
const LEVEL = 500;

export function modeChoice({ content: { modes }, words, mode, lookAt }: Overlay): TemplateResult | typeof nothing {
  if (!modes || modes.pairs.length === 0) return nothing;
  const options = modes.pairs.map((pair, value) => {
    const { one, other } = modesOf(modes, pair);
    return { value, label: `${one?.frequency ?? '–'} / ${other?.frequency ?? '–'}` };
  });
  return choice('mode', words.mode, options, shownMode(mode, modes.pairs), lookAt);
}

export function modesFigure({ subject, content, words, mode }: Overlay, a: Drawing, b: Drawing): TemplateResult {
  const { modes } = content;
  const pair = modes?.pairs[shownMode(mode, modes.pairs)];
  const drawn = modes && pair ? modesOf(modes, pair) : {};
  const told = modes && pair ? inWords(modes, pair, words) : '';
  const neck = neckOf(a, b);
  return html`<p role="status">${stateOf(modes, words)}</p>
    <figure>
      <svg class="plan moving" role="img" aria-label=${told} viewBox=${frameOf(a, b)}>
        <defs>${clip('a', a, neck)} ${clip('b', b, neck)}</defs>
        <g class="quietly">${bothPlans(a, b, subject.plate).lines}</g>
        <g class=${modes?.state === 'waiting' ? 'stale' : ''}>
          ${lines('a', modes?.a, drawn.one, neck)} ${lines('b', modes?.b, drawn.other, neck)}
        </g>
        ${drawn.one || drawn.other ? modeMarks((drawn.one ?? drawn.other)!, neck) : nothing}
      </svg>
      <figcaption>
        ${legend('of-a', a.name)} ${legend('of-b', b.name)}
        <p>${told}</p>
        ${
          modes && pair
            ? html`<p class="quiet">${words.modesLegend}</p>
                <p class="quiet">${modesCaution(modes.a.modes.length > 0 ? modes.a : modes.b, words)}</p>`
            : nothing
        }
      </figcaption>
    </figure>`;
}

export function modesTable({ subject, content, words, mode }: Overlay): TemplateResult | typeof nothing {
  const { modes } = content;
  if (!modes || modes.pairs.length === 0) return nothing;
  const drawn = shownMode(mode, modes.pairs);
  return html`<h3 id="modes">${subject.plate === 'top' ? words.modesTop : words.modesBack}</h3>
    <table role="table" class="wide modes" aria-labelledby="modes">
      ${pairHead(subject, words, words.modeLikeness)}
      <tbody role="rowgroup">
        ${modes.pairs.map((pair, i) => row(modes, pair, i === drawn, words))}
      </tbody>
    </table>`;
}

function row(modes: ComparedModes, pair: ModePair, isDrawn: boolean, words: SideBySideWords): TemplateResult {
  const { one, other } = modesOf(modes, pair);
  const { difference, percent, word, likeness } = pair;
  return html`<tr role="row" class=${isDrawn ? 'distinct' : ''}>
    <th role="rowheader" scope="row">${movementOf((one ?? other)!, words)}</th>
    ${figureCell(one?.frequency)} ${figureCell(other?.frequency)} ${figureCell(difference ?? '')}
    ${figureCell(percent ?? '', 'share')}
    <td role="cell">${word}</td>
    <td role="cell" class="verdict">${likeness}</td>
  </tr>`;
}

interface DrawnPair {
  readonly one?: DrawnMode | undefined;
  readonly other?: DrawnMode | undefined;
}

function modesOf(modes: ComparedModes, { a, b }: ModePair): DrawnPair {
  return {
    one: a === undefined ? undefined : modes.a.modes[a],
    other: b === undefined ? undefined : modes.b.modes[b],
  };
}

function inWords(modes: ComparedModes, pair: ModePair, words: SideBySideWords): string {
  const { one, other } = modesOf(modes, pair);
  const { a, b } = modes;
  if (one && other) {
    const difference = pair.difference ?? '';
    return fill(words.modePair, one.frequency, a.name, other.frequency, b.name, difference, movementOf(one, words));
  }
  const [mode, of, than] = one ? [one, a, b] : [other!, b, a];
  const alone = fill(words.modeAlone, mode.frequency, of.name, movementOf(mode, words));
  return than.modes.length > 0 ? `${alone} ${fill(words.modeUnlike, than.name)}` : alone;
}

function stateOf(modes: ComparedModes | null, words: SideBySideWords): string {
  if (!modes) return words.modesWaiting;
  const { state, a, b } = modes;
  // Last time's, while those of the text as it is now are on their way.
  if (state === 'waiting' && a.state === 'known' && b.state === 'known') return words.modesWaitingAnew;
  return [a, b]
    .flatMap((each) => {
      const why = whyNoModes(each, words);
      return why === undefined ? [] : [fill(words.modesOf, each.name, why)];
    })
    .join(' ');
}

function clip(id: string, drawing: Drawing, neck: number): TemplateResult {
  return svg`<clipPath id=${`body-${id}`}><path d=${planLine(drawing.outline, neck)} /></clipPath>`;
}

function lines(
  side: 'a' | 'b',
  modes: ModeShapes | undefined,
  mode: DrawnMode | undefined,
  neck: number,
): TemplateResult | typeof nothing {
  if (!modes || !mode) return nothing;
  return svg`<g clip-path=${`url(#body-${side})`}>
    ${guard([mode.movement, neck], () => {
      const { around, still } = modeLines(modes.grid, mode, neck);
      return svg`<path class=${`level of-${side}`} d=${around('up', LEVEL) + around('down', LEVEL)} />
        <path class=${`still of-${side}`} d=${still()} />`;
    })}
  </g>`;
}
