import { type TemplateResult, html, nothing, svg } from 'lit';
import { scaleLinear, scalePoint } from 'd3-scale';
import type { ResponseTable } from '../../../../language/server/protocol.js';
import { fill } from '../page.js';
import type { EffectsWords } from './words.js';

const [WIDTH, HEIGHT, LEFT, BOTTOM] = [620, 210, 46, 54];

/** Readings along the series, each with what instruments built alike differ by; computed beside; a tick where a change came in. */
export function runPlot(
  { name, unit, chart: { points, scatter = 0 } }: ResponseTable,
  words: EffectsWords,
): TemplateResult {
  const builds = [...new Set(points.map(({ build }) => build))];
  const values = points.flatMap(({ read, computed, odd }) => [
    ...(odd ? [] : [read * (1 - scatter), read * (1 + scatter)]),
    ...(computed === undefined ? [] : [computed]),
  ]);
  const x = scalePoint(builds, [LEFT, WIDTH - 14]).padding(0.6);
  const y = scaleLinear([Math.min(...values), Math.max(...values)], [HEIGHT - BOTTOM, 10]).nice();
  const computed = points.filter((point) => point.computed !== undefined);
  return html`<figure>
    <svg class="plot wide" role="img" aria-label=${fill(words.runPlot, name)} viewBox="0 0 ${WIDTH} ${HEIGHT}">
      ${y
        .ticks(5)
        .map(
          (tick) =>
            svg`<line class="grid" x1=${LEFT} x2=${WIDTH - 8} y1=${y(tick)} y2=${y(tick)} /><text class="tick side" x=${LEFT - 6} y=${y(tick)}>${tick}</text>`,
        )}
      ${builds.map(
        (build) =>
          svg`<text class="tick" transform="translate(${x(build)} ${HEIGHT - BOTTOM + 16}) rotate(-30)">${build}</text>`,
      )}
      ${points.map(({ build, changes }) =>
        changes.length === 0
          ? nothing
          : svg`<g><title>${changes.join(', ')}</title><path class="came-in" d="M${x(build)} ${HEIGHT - BOTTOM}v-7" /></g>`,
      )}
      <path
        class="computed-line"
        d=${computed.map((point, i) => `${i === 0 ? 'M' : 'L'}${x(point.build)} ${y(point.computed!)}`).join('')}
      />
      ${points.map(({ build, occasion, read, odd }) =>
        odd
          ? nothing
          : svg`<g><title>${build} ${occasion}: ${Number(read.toPrecision(5))} ${unit}</title>
            <line class="interval builds" x1=${x(build)} x2=${x(build)} y1=${y(read * (1 - scatter))} y2=${y(read * (1 + scatter))} />
            <circle class="mark builds" cx=${x(build)} cy=${y(read)} r="3.5" /></g>`,
      )}
    </svg>
    <figcaption class="quiet">${fill(words.runLegend, unit)}</figcaption>
  </figure>`;
}

/** Read against computed, with the line on which both are the same and the shop’s own. */
export function calibrationPlot(
  { name, unit, chart }: ResponseTable,
  words: EffectsWords,
): TemplateResult | typeof nothing {
  const points = chart.points.filter((point) => point.computed !== undefined && !point.odd);
  if (points.length < 3) return nothing;
  const all = points.flatMap(({ read, computed }) => [read, computed!]);
  const ends = [Math.min(...all), Math.max(...all)] as const;
  const size = 260;
  const x = scaleLinear([...ends], [46, size - 20]).nice();
  const y = scaleLinear(x.domain(), [size - 46, 8]);
  const [low, high] = x.domain() as [number, number];
  const factor = chart.calibration?.factor;
  return html`<figure>
    <svg class="plot square" role="img" aria-label=${fill(words.calibrationPlot, name)} viewBox="0 0 ${size} ${size}">
      <path class="grid" d="M${x(low)} ${y(low)}L${x(high)} ${y(high)}" />
      ${
        factor === undefined
          ? nothing
          : svg`<path class="computed-line" d="M${x(Math.max(low, low / factor))} ${y(Math.max(low, low / factor) * factor)}L${x(Math.min(high, high / factor))} ${y(Math.min(high, high / factor) * factor)}" />`
      }
      ${x.ticks(4).map((tick) => svg`<text class="tick" x=${x(tick)} y=${size - 32}>${tick}</text>`)}
      ${y.ticks(4).map((tick) => svg`<text class="tick side" x="40" y=${y(tick)}>${tick}</text>`)}
      ${points.map(
        ({ build, read, computed }) =>
          svg`<g><title>${build}</title><circle class="mark builds" cx=${x(computed!)} cy=${y(read)} r="3.5" /></g>`,
      )}
      <text class="tick" x=${size / 2} y=${size - 12}>${fill(words.computedAxis, unit)}</text>
    </svg>
    <figcaption class="quiet">${words.calibrationLegend}</figcaption>
  </figure>`;
}
