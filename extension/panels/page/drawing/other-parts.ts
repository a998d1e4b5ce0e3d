import { type TemplateResult, html, nothing } from 'lit';
import { type Board, figuresIn, nameOf, partLink } from './board.js';

/** Everything drawn that is no brace, with its numbers. */
export function otherParts(board: Board): TemplateResult | typeof nothing {
  const { drawing, plate, words } = board;
  const parts = drawing.parts.filter((part) => part.plate === plate && part.kind !== 'brace');
  if (parts.length === 0) return nothing;
  return html`<section>
    <h2>${words.otherParts}</h2>
    <table>
      <thead>
        <tr>
          <th scope="col">${words.part}</th>
          <th scope="col">${words.figures}</th>
        </tr>
      </thead>
      <tbody>
        ${parts.map((part) => {
          const { point, go, isPointed, label } = partLink(board, part);
          const name = nameOf(part, words);
          return html`<tr class=${isPointed ? 'pointed' : ''} @pointerenter=${point}>
            <th scope="row">
              <button class="link" aria-label="${name}. ${label}" @click=${go} @focus=${point}>${name}</button>
            </th>
            <td>${figuresIn(part)}</td>
          </tr>`;
        })}
      </tbody>
    </table>
  </section>`;
}
