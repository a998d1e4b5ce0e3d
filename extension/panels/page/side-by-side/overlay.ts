import { type TemplateResult, html, nothing, svg } from 'lit';
import type { Drawing, DrawnPart, PlanPoint } from '../../../../language/server/protocol.js';
import type { SideBySideContent } from '../../side-by-side-messages.js';
import type { SideBySideWords } from './words.js';
import { choice } from '../choice.js';
import { fill } from '../page.js';
import { profiles } from './profiles.js';

export type Plate = 'top' | 'back';

/** Space around the plan, mm. */
const MARGIN = 8;

/** Both plans over each other: what is the same in quiet lines, the one's own solid, the other's own dashed. */
export function overlaySection(
  { drawings: { a, b } }: SideBySideContent,
  names: { readonly a: string; readonly b: string },
  words: SideBySideWords,
  plate: Plate,
  look: (plate: Plate) => void,
): TemplateResult | typeof nothing {
  if (!a || !b || (a.outline.length === 0 && b.outline.length === 0)) return nothing;
  const [ofA, ofB] = [shapes(a, plate), shapes(b, plate)];
  const both = [...ofA].filter(([path, shape]) => isSame(shape, ofB.get(path)));
  const own = (all: ReadonlyMap<string, readonly PlanPoint[]>, other: ReadonlyMap<string, readonly PlanPoint[]>) =>
    [...all].filter(([path, shape]) => !isSame(shape, other.get(path)));
  const [onlyA, onlyB] = [own(ofA, ofB), own(ofB, ofA)];
  const differing = [...new Set([...onlyA, ...onlyB].map(([path]) => path))];
  const [length, width] = [Math.max(a.length, b.length), Math.max(a.width, b.width)];
  const box = [-width / 2 - MARGIN, -length - MARGIN, width + 2 * MARGIN, length + 2 * MARGIN];
  const label = fill(words.drawnLabel, names.a, names.b, differing.join(', ') || words.drawnNothing);
  const missing = [...new Set([...a.missing, ...b.missing].map(({ part }) => part))];
  return html`<section aria-labelledby="drawn" class="drawn">
    <h2 id="drawn">${words.drawn}</h2>
    ${choice(
      'plate',
      words.plate,
      [
        { value: 'top', label: words.top },
        { value: 'back', label: words.back },
      ],
      plate,
      look,
    )}
    <figure>
      <svg class="plan" role="img" aria-label=${label} viewBox=${box.join(' ')}>
        ${both.map(([, shape]) => outline(shape, 'same'))} ${onlyA.map(([, shape]) => outline(shape, 'of-a'))}
        ${onlyB.map(([, shape]) => outline(shape, 'of-b'))}
      </svg>
      <figcaption>
        ${legend('of-a', names.a)} ${legend('of-b', names.b)} ${legend('same', words.drawnSame)}
        <p>${label}</p>
        ${missing.length > 0 ? html`<p class="quiet">${fill(words.drawnMissing, missing.join(', '))}</p>` : nothing}
      </figcaption>
    </figure>
    ${profiles(a, b, plate, words)}
  </section>`;
}

/** Closed lines by the path of their part; the outline is the plate's. */
function shapes(drawing: Drawing, plate: Plate): ReadonlyMap<string, readonly PlanPoint[]> {
  const parts = drawing.parts.filter((part): part is DrawnPart & { shape: readonly PlanPoint[] } => {
    return part.plate === plate && part.shape !== undefined;
  });
  return new Map([['body', drawing.outline] as const, ...parts.map(({ path, shape }) => [path, shape] as const)]);
}

/** To the hundredth of a millimetre, which is how they come. */
function isSame(one: readonly PlanPoint[], other: readonly PlanPoint[] | undefined): boolean {
  return other?.length === one.length && one.every(([x, y], i) => other[i]![0] === x && other[i]![1] === y);
}

/** Neck up: stations grow upwards, the bass side is on the left. */
function outline(shape: readonly PlanPoint[], kind: string): TemplateResult {
  return svg`<polygon class=${kind} points=${shape.map(([station, offset]) => `${offset},${-station}`).join(' ')} />`;
}

export function legend(kind: string, text: string): TemplateResult {
  return html`<span class="legend"
    ><svg width="28" height="10" viewBox="0 0 28 10" aria-hidden="true">
      ${svg`<line class=${kind} x1="0" x2="28" y1="5" y2="5" />`}</svg
    >${text}</span
  >`;
}
