/** A difference beside what it takes to tell it: a band and a dot, on the same scale in every row. */
import { type TemplateResult, html, svg } from 'lit';
import { scaleLinear } from 'd3-scale';

const WIDTH = 84;
const HEIGHT = 12;
/** As many times what it takes to tell as are drawn; what is more stands at the end as an arrow. */
const REACH = 3;
const MARGIN = 5;

const along = scaleLinear([-REACH, REACH], [MARGIN, WIDTH - MARGIN]).clamp(true);

/** `said` is read aloud, and shown to whoever points at it. */
export function toldScale(times: number, said: string): TemplateResult {
  return html`<span class="spoken">${said}</span>${scale(times, said)}`;
}

export function scale(times: number, title = ''): TemplateResult {
  return html`<svg class="told" width=${WIDTH} height=${HEIGHT} viewBox="0 0 ${WIDTH} ${HEIGHT}" aria-hidden="true">
    ${svg`<title>${title}</title>
      <line class="reach" x1=${MARGIN} x2=${WIDTH - MARGIN} y1=${HEIGHT / 2} y2=${HEIGHT / 2} />
      <rect class="band" x=${along(-1)} width=${along(1) - along(-1)} y="2" height=${HEIGHT - 4} />
      <line class="axis" x1=${along(0)} x2=${along(0)} y1="1" y2=${HEIGHT - 1} />
      ${mark(times)}`}
  </svg>`;
}

/** Filled where it can be told apart, hollow where it cannot: the shape says it too. */
function mark(times: number) {
  const x = along(times);
  const middle = HEIGHT / 2;
  if (Math.abs(times) > REACH) {
    const tip = times < 0 ? x - 4 : x + 4;
    const foot = times < 0 ? x + 3 : x - 3;
    return svg`<path class="dot" d="M${tip} ${middle} L${foot} ${middle - 4} V${middle + 4} Z" />`;
  }
  return svg`<circle class=${Math.abs(times) > 1 ? 'dot' : 'dot hollow'} cx=${x} cy=${middle} r="3.5" />`;
}
