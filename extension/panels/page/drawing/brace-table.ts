/** The braces in numbers, each seen from the side: the same as in the plan, for reading aloud and for the bench. */
import { area } from 'd3-shape';
import { type TemplateResult, html, nothing, svg } from 'lit';
import type { DrawnPart } from '../../../../language/server/protocol.js';
import { type Board, bracesOf, figuresIn, nameOf, partLink } from './board.js';

const COLUMNS = ['width', 'height', 'length', 'mass'] as const;

export function braceTable(board: Board): TemplateResult {
  const { words, plate } = board;
  const braces = bracesOf(board);
  const title = html`<h2>${plate === 'top' ? words.bracesTop : words.bracesBack}</h2>`;
  if (braces.length === 0)
    return html`<section>
      ${title}
      <p class="quiet">${words.noBraces}</p>
    </section>`;
  const longest = Math.max(...braces.map(lengthOf));
  return html`<section>
    ${title}
    <table class="braces">
      <thead>
        <tr>
          <th scope="col" class="number">${words.number}</th>
          <th scope="col">${words.part}</th>
          ${COLUMNS.map((column) => html`<th scope="col" class="number">${words[column]}</th>`)}
        </tr>
      </thead>
      ${braces.map((part, i) => rows(board, part, i + 1, longest))}
    </table>
  </section>`;
}

function rows(board: Board, part: DrawnPart, number: number, longest: number): TemplateResult {
  const { point, go, isPointed, label } = partLink(board, part);
  const figure = (path: string) => part.figures.find((each) => each.path === path)?.value ?? '–';
  const name = nameOf(part, board.words);
  return html`<tbody class=${isPointed ? 'pointed' : ''} @pointerenter=${point}>
    <tr>
      <td class="number">${number}</td>
      <th scope="row">
        <button class="link" aria-label="${name}. ${label}" @click=${go} @focus=${point}>${name}</button>
      </th>
      ${COLUMNS.map((path) => html`<td class="number">${figure(path)}</td>`)}
    </tr>
    <tr>
      <td></td>
      <td colspan=${1 + COLUMNS.length} class="side">
        ${elevation(part, longest)}
        <div class="quiet">${figuresIn(part, COLUMNS)}</div>
      </td>
    </tr>
  </tbody>`;
}

/** The brace from the side, to scale, its glued face below; all of a plate in one scale. */
function elevation({ heights }: DrawnPart, longest: number): TemplateResult | typeof nothing {
  if (!heights || heights.length === 0) return nothing;
  const highest = Math.max(...heights.map(({ height }) => height));
  const side = area<{ at: number; height: number }>()
    .x(({ at }) => at)
    .y0(highest)
    .y1(({ height }) => highest - height);
  return html`<svg class="elevation" viewBox="-1 -1 ${longest + 2} ${highest + 2}" aria-hidden="true">
    ${svg`<path d=${side([...heights]) ?? ''} />`}
  </svg>`;
}

function lengthOf({ heights }: DrawnPart): number {
  return heights?.at(-1)?.at ?? 0;
}
