import { type TemplateResult, html, nothing, svg } from 'lit';
import { scaleLinear } from 'd3-scale';
import type { DerivedRow } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';
import { figureCell } from '../figure.js';
import { fill } from '../page.js';

const WIDTH = 220;
const HEIGHT = 12;

/** How much each change is answerable for: a table whose last column is the plot. */
export function contributionsSection(
  rows: readonly DerivedRow[],
  words: SideBySideWords,
): TemplateResult | typeof nothing {
  const shared = rows.filter(({ contributions }) => contributions.length > 1);
  const alone = new Map<string, string[]>();
  for (const { path, contributions } of rows) {
    const [only, second] = contributions;
    if (only && !second) alone.set(only.label, [...(alone.get(only.label) ?? []), path]);
  }
  if (shared.length + alone.size === 0) return nothing;
  return html`<section aria-labelledby="contributions">
    <h2 id="contributions">${words.contributions}</h2>
    ${[...alone].map(([label, of]) => html`<p>${fill(words.allBy, label, of.join(', '))}.</p>`)}
    ${shared.length === 0 ? nothing : table(shared, words)}
  </section>`;
}

/** The scale reaches as far as any part does, within reason: a bar that goes further ends at its edge. */
const [NEAREST, FARTHEST] = [1.5, 6];

function table(rows: readonly DerivedRow[], words: SideBySideWords): TemplateResult {
  const all = rows.flatMap(({ contributions }) => contributions.map(({ times = 0 }) => Math.abs(times)));
  const reach = Math.min(Math.max(NEAREST, ...all), FARTHEST);
  return html`<table class="contributions">
    <caption class="quiet">
      ${words.contributionsCaption}
    </caption>
    <thead>
      <tr>
        <th scope="col">${words.change}</th>
        <th scope="col" class="figure">${words.amount}</th>
        <th scope="col">${words.asBar}</th>
      </tr>
    </thead>
    ${rows.map((row) => quantity(row, reach))}
  </table>`;
}

function quantity({ path, contributions }: DerivedRow, reach: number): TemplateResult {
  const along = scaleLinear([-reach, reach], [0, WIDTH]).clamp(true);
  return html`<tbody>
    <tr class="part">
      <th scope="rowgroup" colspan="3">${path}</th>
    </tr>
    ${contributions.map(
      ({ label, amount, times }) =>
        html`<tr>
          <th scope="row">${label}</th>
          ${figureCell(amount)}
          <td class="bar">${times === undefined ? nothing : bar(along, times)}</td>
        </tr>`,
    )}
  </tbody>`;
}

/** The number beside it says the same, so the bar itself is left out when read aloud. */
function bar(along: (times: number) => number, times: number): TemplateResult {
  const [zero, end] = [along(0), along(times)];
  return html`<svg
    class="bars"
    height=${HEIGHT}
    preserveAspectRatio="none"
    viewBox="0 0 ${WIDTH} ${HEIGHT}"
    aria-hidden="true"
  >
    ${svg`<rect class="band" x=${along(-1)} y="0" width=${along(1) - along(-1)} height=${HEIGHT} />
      <rect class="bar" x=${Math.min(zero, end)} y="3" width=${Math.max(Math.abs(end - zero), 1)} height=${HEIGHT - 6} />
      <line class="axis" x1=${zero} x2=${zero} y1="0" y2=${HEIGHT} />`}
  </svg>`;
}
