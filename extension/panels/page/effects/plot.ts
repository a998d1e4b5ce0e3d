import { type TemplateResult, html, nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import type { ResponseTable } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import type { EffectsWords } from './words.js';

/** Each label stands above its band, so that a narrow panel leaves room for both. */
const [WIDTH, ROW, LABEL, BAND, AXIS] = [460, 34, 9, 25, 40];

/** Each effect as a mark, on the band about nothing in which it could not be told from nothing; what was computed beside. */
export function effectsPlot({ name, unit, effects }: ResponseTable, words: EffectsWords): TemplateResult {
  const sizes = effects.flatMap(({ size: { amount, band, computed } }) => [amount, band, computed ?? 0]);
  const most = Math.max(...sizes.map(Math.abs), Number.MIN_VALUE) * 1.08;
  const x = scaleLinear([-most, most], [24, WIDTH - 24]).nice();
  const bottom = effects.length * ROW + 4;
  const isComputed = effects.some(({ size }) => size.computed !== undefined);
  return html`<figure>
    <svg class="plot" role="img" aria-label=${fill(words.plot, name)} viewBox="0 0 ${WIDTH} ${bottom + AXIS}">
      ${effects.map(
        ({ what, size: { amount, band, computed }, distinguishable }, i) =>
          svg`<g transform="translate(0 ${i * ROW})">
            <rect class="floor" x=${x(-band)} width=${x(band) - x(-band)} y=${BAND - 7} height="14" />
            <text x="0" y=${LABEL} class="label">${what}</text>
            <line class="axis" x1=${x(0)} x2=${x(0)} y1=${BAND - 10} y2=${BAND + 10} />
            ${computed === undefined ? nothing : computedMark(x(computed), BAND)}
            ${mark(x(amount), BAND, distinguishable)}
          </g>`,
      )}
      ${svg`${x.ticks(6).map(
        (tick) => svg`<g transform="translate(${x(tick)} ${bottom})">
            <line class="axis" y2="4" /><text class="tick" y="16">${signed(tick)}</text></g>`,
      )}
        <text class="tick" x=${WIDTH / 2} y=${bottom + 34}>${unit === '' ? words.axisBare : fill(words.axis, unit)}</text>`}
    </svg>
    <figcaption>
      ${legend(svg`<rect class="floor" y="1" width="28" height="10" />`, words.floorLegend, 28)}
      ${legend(mark(6, 6, true), words.foundLegend)} ${legend(mark(6, 6, false), words.hiddenLegend)}
      ${isComputed ? legend(computedMark(6, 6), words.computedLegend) : nothing}
    </figcaption>
  </figure>`;
}

/** Filled where it stands out, hollow where it does not: the shape says it too, not colour alone. */
function mark(x: number, y: number, distinguishable: boolean): TemplateResult {
  return svg`<circle class=${distinguishable ? 'mark found' : 'mark'} cx=${x} cy=${y} r="4.5" />`;
}

function computedMark(x: number, y: number): TemplateResult {
  return svg`<path class="computed" d=${`M${x} ${y - 7}V${y + 7}`} />`;
}

function legend(sign: TemplateResult, text: string, width = 12): TemplateResult {
  return html`<span class="legend"
    ><svg width=${width} height="12" viewBox="0 0 ${width} 12" aria-hidden="true">${sign}</svg>${text}</span
  >`;
}

function signed(tick: number): string {
  return `${tick < 0 ? '−' : tick > 0 ? '+' : ''}${Number(Math.abs(tick).toPrecision(6))}`;
}
