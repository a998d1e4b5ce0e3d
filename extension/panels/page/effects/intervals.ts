import { type TemplateResult, html, nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import type { EffectRow } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import type { EffectsWords } from './words.js';

const [WIDTH, LEFT, ROW] = [520, 100, 28];

/** Computed, builds alone and together on one scale, each from end to end of its interval; nothing is where the line stands. */
export function intervalsPlot({ what, sizes }: EffectRow, unit: string, words: EffectsWords): TemplateResult {
  const rows = [
    { size: sizes.computed, label: words.computed, kind: 'computed' },
    { size: sizes.builds, label: words.alone, kind: 'builds' },
    { size: sizes.together, label: words.together, kind: 'together' },
  ].flatMap(({ size, ...rest }) => (size ? [{ size, ...rest }] : []));
  const ends = rows.flatMap(({ size: { amount, band } }) => [amount - band, amount + band]);
  const most = Math.max(...ends.map(Math.abs), Number.MIN_VALUE) * 1.05;
  const x = scaleLinear([-most, most], [LEFT, WIDTH - 12]).nice();
  const bottom = rows.length * ROW + 4;
  return html`<figure>
    <svg class="plot" role="img" aria-label=${fill(words.intervalsPlot, what)} viewBox="0 0 ${WIDTH} ${bottom + 40}">
      <line class="axis" x1=${x(0)} x2=${x(0)} y1="0" y2=${bottom} />
      ${rows.map(({ size: { amount, band }, label, kind }, i) => {
        const y = i * ROW + ROW / 2;
        return svg`<text x="0" y=${y}>${label}</text>
          <line class="interval ${kind}" x1=${x(amount - band)} x2=${x(amount + band)} y1=${y} y2=${y} />
          ${[amount - band, amount + band].map(
            (end) => svg`<line class="interval ${kind}" x1=${x(end)} x2=${x(end)} y1=${y - 5} y2=${y + 5} />`,
          )}
          <circle class="mark ${kind}" cx=${x(amount)} cy=${y} r="4.5" />`;
      })}
      ${x
        .ticks(6)
        .map(
          (tick) =>
            svg`<g transform="translate(${x(tick)} ${bottom})"><line class="axis" y2="4" /><text class="tick" y="14">${signed(tick)}</text></g>`,
        )}
      ${unit === '' ? nothing : svg`<text class="tick" x=${(LEFT + WIDTH) / 2} y=${bottom + 32}>${fill(words.axis, unit)}</text>`}
    </svg>
  </figure>`;
}

function signed(tick: number): string {
  return `${tick < 0 ? '−' : tick > 0 ? '+' : ''}${Number(Math.abs(tick).toPrecision(6))}`;
}
