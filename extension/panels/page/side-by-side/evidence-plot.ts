import { type TemplateResult, html, nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import type { EvidenceRow } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';

const [LABELS, WIDTH, ROW, AXIS] = [230, 640, 20, 40];

/** Each difference as a mark, per cent, on the band in which builds alike differ anyway. */
export function evidencePlot(rows: readonly EvidenceRow[], words: SideBySideWords): TemplateResult | typeof nothing {
  const drawn = rows.flatMap(({ shares, ...row }) => (shares ? [{ ...row, shares }] : []));
  if (drawn.length === 0) return nothing;
  const most = Math.max(...drawn.map(({ shares }) => Math.max(Math.abs(shares.difference), shares.floor))) * 108;
  const x = scaleLinear([-most, most], [LABELS, WIDTH - 30]).nice();
  const several = new Set(drawn.map(({ build }) => build)).size > 1;
  const bottom = drawn.length * ROW + 4;
  return html`<figure>
    <svg class="evidence-plot" role="img" aria-label=${words.evidencePlot} viewBox="0 0 ${WIDTH} ${bottom + AXIS}">
      ${drawn.map(
        ({ path, occasion, build, shares, verdict }, i) =>
          svg`<g transform="translate(0 ${i * ROW})">
            <rect class="floor" x=${x(-shares.floor * 100)} width=${x(shares.floor * 100) - x(-shares.floor * 100)} y="3" height=${ROW - 6} />
            <text x=${LABELS - 10} y=${ROW / 2} class="label">${[several ? build : '', path, occasion].filter(Boolean).join(' ')}</text>
            ${mark(x(shares.difference * 100), ROW / 2, verdict)}
          </g>`,
      )}
      ${svg`<line class="axis" x1=${x(0)} x2=${x(0)} y1="0" y2=${bottom} />
        ${x.ticks(5).map(
          (tick) => svg`<g transform="translate(${x(tick)} ${bottom})">
            <line class="axis" y2="4" /><text class="tick" y="16">${signed(tick)}</text></g>`,
        )}
        <text class="tick" x=${(LABELS + WIDTH) / 2} y=${bottom + 34}>${words.evidenceAxis}</text>`}
    </svg>
    <figcaption>
      <span class="legend"
        ><svg width="28" height="10" viewBox="0 0 28 10" aria-hidden="true">
          ${svg`<rect class="floor" width="28" height="10" />`}</svg
        >${words.floorLegend}</span
      >
      <span class="legend"
        ><svg width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">${mark(6, 6, 'distinct')}</svg
        >${words.differenceLegend}</span
      >
    </figcaption>
  </figure>`;
}

/** Filled where it can be told apart, hollow where it cannot: the shape says it too, not colour alone. */
function mark(x: number, y: number, verdict: EvidenceRow['verdict']): TemplateResult {
  return svg`<circle class="mark ${verdict}" cx=${x} cy=${y} r="4.5" />`;
}

function signed(tick: number): string {
  return `${tick < 0 ? '−' : tick > 0 ? '+' : ''}${Math.abs(tick)} %`;
}
