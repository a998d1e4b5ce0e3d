/** Which layers of the plan are shown, and what this recipe changed in it. */
import { type TemplateResult, html, nothing } from 'lit';
import type { Board } from './board.js';

export function layerChoice({ content, view, look, words }: Board): TemplateResult | typeof nothing {
  const layers = content.plan?.layers ?? [];
  if (layers.length === 0) return nothing;
  const toggled = (key: string) =>
    view.hidden.includes(key) ? view.hidden.filter((each) => each !== key) : [...view.hidden, key];
  return html`<details
    class="layers screen-only"
    ?open=${view.layers}
    @toggle=${(event: Event) => look({ layers: (event.target as HTMLDetailsElement).open })}
  >
    <summary>${words.layers}</summary>
    <div class="layer-list">
      ${layers.map(
        ({ key, title }) =>
          html`<label
            ><input
              type="checkbox"
              .checked=${!view.hidden.includes(key)}
              @change=${() => look({ hidden: toggled(key) })}
            />${title}</label
          >`,
      )}
    </div>
  </details>`;
}

/** What is tinted in the plan, named. */
export function changedHere({ content, words }: Board): TemplateResult | typeof nothing {
  const changed = content.plan?.changed ?? [];
  if (changed.length === 0) return nothing;
  return html`<section>
    <h2>${words.changedHere}</h2>
    <ul>
      ${changed.map(({ title, changes }) => html`<li><span class="tint" aria-hidden="true"></span>${title}: ${changes.join('; ')}</li>`)}
    </ul>
  </section>`;
}
