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

function table(rows: readonly DerivedRow[], words: SideBySideWords): TemplateResult {
  return html`<table class="contributions">
    <caption class="quiet">
      ${words.contributionsCaption}
    </caption>
    <thead>
      <tr>
        <th scope="col">${words.what}</th>
        <th scope="col">${words.change}</th>
        <th scope="col" class="figure">${words.amount}</th>
        <th scope="col">${words.asBar}</th>
      </tr>
    </thead>
    ${rows.map(quantity)}
  </table>`;
}

function quantity({ path, contributions }: DerivedRow): TemplateResult {
  const largest = Math.max(...contributions.map(({ size }) => Math.abs(size)));
  const along = scaleLinear([-largest, largest], [0, WIDTH]);
  return html`<tbody>
    ${contributions.map(
      ({ label, amount, size }, i) =>
        html`<tr>
          ${i === 0 ? html`<th scope="rowgroup" rowspan=${contributions.length}>${path}</th>` : nothing}
          <td>${label}</td>
          ${figureCell(amount)}
          <td class="bar">${bar(along(0), along(size))}</td>
        </tr>`,
    )}
  </tbody>`;
}

/** The number beside it says the same, so the bar itself is left out when read aloud. */
function bar(zero: number, end: number): TemplateResult {
  return html`<svg
    class="bars"
    height=${HEIGHT}
    preserveAspectRatio="none"
    viewBox="0 0 ${WIDTH} ${HEIGHT}"
    aria-hidden="true"
  >
    ${svg`<rect class="bar" x=${Math.min(zero, end)} y="2" width=${Math.max(Math.abs(end - zero), 1)} height=${HEIGHT - 4} />
      <line class="axis" x1=${zero} x2=${zero} y1="0" y2=${HEIGHT} />`}
  </svg>`;
}
