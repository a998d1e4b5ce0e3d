import { type TemplateResult, html, nothing } from 'lit';
import type { EffectsAction, EffectsContent, EffectsSubject } from '../effects-messages.js';
import type { Words } from '../messages.js';
import { designSection } from './effects/design.js';
import { responseSection } from './effects/response.js';
import { type EffectsWords, effectsWords } from './effects/words.js';
import { type Shown, fill, openPage, translator } from './page.js';
import pageStyles from './page.css?raw';
import { handOver, printedPage } from './printed.js';
import './actions.css';
import './effects.css';
import ownStyles from './effects.css?raw';

type All = Shown<EffectsSubject, EffectsContent, Words, object, EffectsAction>;

openPage<EffectsSubject, EffectsContent, Words, object, EffectsAction>({}, page);

function page({ subject, content, words: translations, act }: All): TemplateResult {
  const words = effectsWords(translator(translations));
  const { table } = content;
  const title = fill(words.title, subject.model);
  if (!table) {
    return html`<h1>${title}</h1>
      <p>${fill(words.gone, subject.model)}</p>`;
  }
  return html`<header>
      <h1>${title}</h1>
      <p class="screen-only actions">
        <button @click=${() => print(subject, content, words, act)}>${words.print}</button>
      </p>
    </header>
    ${designSection(table, words)} ${table.responses.map((each, i) => responseSection(each, i, words))}
    ${
      table.closing.length === 0
        ? nothing
        : html`<section aria-labelledby="meaning">
            <h2 id="meaning">${words.meaning}</h2>
            ${table.closing.map((sentence) => html`<p>${sentence}</p>`)}
          </section>`
    }`;
}

function print({ model }: EffectsSubject, { opensPages }: EffectsContent, words: EffectsWords, act: All['act']): void {
  const html = printedPage(fill(words.title, model), words.printHint, `${pageStyles}\n${ownStyles}`);
  if (opensPages) act({ kind: 'print', html });
  else handOver(fill(words.fileName, model), html);
}
