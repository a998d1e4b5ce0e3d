import { type TemplateResult, html, nothing, svg } from 'lit';
import { line } from 'd3-shape';
import type { Drawing, DrawnPart } from '../../../../language/server/protocol.js';
import type { SideBySideWords } from './words.js';
import { fill } from '../page.js';
import type { Plate } from './overlay-parts.js';

/** Heights are drawn so many times as large as lengths: half a millimetre off a brace must be seen. */
const LIFT = 3;

type Heights = NonNullable<DrawnPart['heights']>;

/** Braces whose height differs, each from end to end, the two over each other. */
export function profiles(
  a: Drawing,
  b: Drawing,
  plate: Plate,
  words: SideBySideWords,
): TemplateResult | typeof nothing {
  const pairs = a.parts.flatMap(({ path, plate: on, heights }) => {
    const other = b.parts.find((part) => part.path === path)?.heights;
    return on === plate && heights && other && JSON.stringify(heights) !== JSON.stringify(other)
      ? [{ path, one: heights, other }]
      : [];
  });
  if (pairs.length === 0) return nothing;
  return html`<h3>${words.profiles}</h3>
    <div class="profiles">
      ${pairs.map(
        ({ path, one, other }) =>
          html`<figure>
            ${profile(one, other, fill(words.profileLabel, path, a.name, b.name))}
            <figcaption>${path}</figcaption>
          </figure>`,
      )}
    </div>`;
}

function profile(one: Heights, other: Heights, label: string): TemplateResult {
  const all = [...one, ...other];
  const length = Math.max(...all.map(({ at }) => at));
  const height = Math.max(...all.map((point) => point.height)) * LIFT;
  const path = line<Heights[number]>(
    ({ at }) => at,
    (point) => -point.height * LIFT,
  );
  return html`<svg
    class="profile"
    role="img"
    aria-label=${label}
    viewBox="-2 ${-height - 3} ${length + 4} ${height + 5}"
  >
    ${svg`<line class="same" x1="0" x2=${length} y1="0" y2="0" />
      <path class="of-a" d=${path(one) ?? ''} />
      <path class="of-b" d=${path(other) ?? ''} />`}
  </svg>`;
}
