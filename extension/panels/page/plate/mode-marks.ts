import { type TemplateResult, svg } from 'lit';
import type { DrawnMode } from '../../../../language/server/protocol.js';

/** + and − where each area of a mode moves most; `neck` as for the lines. */
export function modeMarks({ areas }: Pick<DrawnMode, 'areas'>, neck: number): TemplateResult {
  return svg`<g class="marks" aria-hidden="true">
    ${areas.map(
      ({ way, most: [station, offset] }) => svg`<g>
        <circle cx=${offset} cy=${neck - station} r="9" />
        <text x=${offset} y=${neck - station + 6}>${way === 'up' ? '+' : '−'}</text>
      </g>`,
    )}
  </g>`;
}
