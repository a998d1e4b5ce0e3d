import { type TemplateResult, html, nothing } from 'lit';
import { fill } from '../page.js';
import type { Board } from './board.js';

/** What is missing, with the paths that would make it known. */
export function notDrawn({ drawing, words }: Board): TemplateResult | typeof nothing {
  if (drawing.missing.length === 0) return nothing;
  return html`<section>
    <h2>${words.missing}</h2>
    <ul>
      ${drawing.missing.map(({ part, paths, trouble }) => {
        const name = part === 'body' ? words.outline : part;
        return html`<li>
          ${trouble ? fill(words.troublePart, name, trouble) : fill(words.missingPart, name, paths.join(', '))}
        </li>`;
      })}
    </ul>
  </section>`;
}
