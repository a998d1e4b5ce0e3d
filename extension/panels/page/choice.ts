import { type TemplateResult, html } from 'lit';

/** One among a few, as radio buttons: reached by Tab, changed by the arrow keys. */
export function choice<T extends string | number>(
  name: string,
  legend: string,
  options: readonly { readonly value: T; readonly label: string }[],
  chosen: T,
  choose: (value: T) => void,
): TemplateResult {
  return html`<fieldset class="choice screen-only">
    <legend>${legend}</legend>
    ${options.map(
      ({ value, label }) =>
        html`<label
          ><input
            type="radio"
            name=${name}
            .checked=${value === chosen}
            @change=${() => choose(value)}
          />${label}</label
        >`,
    )}
  </fieldset>`;
}
