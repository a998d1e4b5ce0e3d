/** The parts of both plates over each other: what is the same in quiet lines, the one's own solid, the other's own dashed. */
import { type TemplateResult, html, nothing, svg } from 'lit';
import type { Drawing, DrawnPart, PlanPoint } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import { planLine } from '../plate/plan-line.js';
import type { SideBySideWords } from './words.js';

export type Plate = 'top' | 'back';

export function partsFigure(a: Drawing, b: Drawing, plate: Plate, words: SideBySideWords): TemplateResult {
  const { differing, lines } = bothPlans(a, b, plate);
  const label = fill(words.drawnLabel, a.name, b.name, differing.join(', ') || words.drawnNothing);
  const missing = [...new Set([...a.missing, ...b.missing].map(({ part }) => part))];
  return html`<figure>
    <svg class="plan" role="img" aria-label=${label} viewBox=${frameOf(a, b)}>${lines}</svg>
    <figcaption>
      ${legend('of-a', a.name)} ${legend('of-b', b.name)} ${legend('same', words.drawnSame)}
      <p>${label}</p>
      ${missing.length > 0 ? html`<p class="quiet">${fill(words.drawnMissing, missing.join(', '))}</p>` : nothing}
    </figcaption>
  </figure>`;
}

/** Lines of both, and the paths of the parts in which they differ. Both stand on the tail, so their necks may not meet. */
export function bothPlans(
  a: Drawing,
  b: Drawing,
  plate: Plate,
): { readonly differing: readonly string[]; readonly lines: TemplateResult } {
  const [ofA, ofB] = [shapes(a, plate), shapes(b, plate)];
  const both = [...ofA].filter(([path, shape]) => isSame(shape, ofB.get(path)));
  const own = (all: Shapes, other: Shapes) => [...all].filter(([path, shape]) => !isSame(shape, other.get(path)));
  const [onlyA, onlyB] = [own(ofA, ofB), own(ofB, ofA)];
  const draw = (kind: string) => (each: readonly [string, readonly PlanPoint[]]) =>
    svg`<path class=${kind} d=${planLine(each[1], neckOf(a, b))} />`;
  return {
    differing: [...new Set([...onlyA, ...onlyB].map(([path]) => path))],
    lines: svg`${both.map(draw('same'))} ${onlyA.map(draw('of-a'))} ${onlyB.map(draw('of-b'))}`,
  };
}

/** Station at the top of the page, mm. */
export function neckOf(a: Drawing, b: Drawing): number {
  return Math.max(a.length, b.length);
}

/** Space around the plan, mm. */
const MARGIN = 8;

export function frameOf(a: Drawing, b: Drawing): string {
  const width = Math.max(a.width, b.width);
  return [-width / 2 - MARGIN, -MARGIN, width + 2 * MARGIN, neckOf(a, b) + 2 * MARGIN].join(' ');
}

type Shapes = ReadonlyMap<string, readonly PlanPoint[]>;

/** Closed lines by the path of their part; the outline is the plate's. */
function shapes(drawing: Drawing, plate: Plate): Shapes {
  const parts = drawing.parts.filter((part): part is DrawnPart & { shape: readonly PlanPoint[] } => {
    return part.plate === plate && part.shape !== undefined;
  });
  return new Map([['body', drawing.outline] as const, ...parts.map(({ path, shape }) => [path, shape] as const)]);
}

/** To the hundredth of a millimetre, which is how they come. */
function isSame(one: readonly PlanPoint[], other: readonly PlanPoint[] | undefined): boolean {
  return other?.length === one.length && one.every(([x, y], i) => other[i]![0] === x && other[i]![1] === y);
}

export function legend(kind: string, text: string): TemplateResult {
  return html`<span class="legend"
    ><svg width="28" height="10" viewBox="0 0 28 10" aria-hidden="true">
      ${svg`<line class=${kind} x1="0" x2="28" y1="5" y2="5" />`}</svg
    >${text}</span
  >`;
}
