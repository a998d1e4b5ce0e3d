import { type TemplateResult, html, nothing } from 'lit';
import type { EffectsAction, EffectsContent, EffectsSubject } from '../effects-messages.js';
import type { Words } from '../messages.js';
import { choice } from './choice.js';
import type { Chosen } from './effects/chosen.js';
import { changesSection } from './effects/changes.js';
import { detailSection } from './effects/detail.js';
import { matrixSection } from './effects/matrix.js';
import { type EffectsWords, effectsWords } from './effects/words.js';
import { type Shown, fill, openPage, translator } from './page.js';
import pageStyles from './page.css?raw';
import { handOver, printedPage } from './printed.js';
import './actions.css';
import './effects.css';
import ownStyles from './effects.css?raw';

interface View {
  readonly chosen?: Chosen;
  readonly shownAs: 'pictures' | 'tables';
}

type All = Shown<EffectsSubject, EffectsContent, Words, View, EffectsAction>;

openPage<EffectsSubject, EffectsContent, Words, View, EffectsAction>({ shownAs: 'pictures' }, page);

function page({ subject, content, words: translations, view, look, act }: All): TemplateResult {
  const words = effectsWords(translator(translations));
  const { table } = content;
  const title = fill(words.title, subject.model);
  if (!table) {
    return html`<h1>${title}</h1>
      <p>${fill(words.gone, subject.model)}</p>`;
  }
  const inWords = view.shownAs === 'tables';
  const shownAs = [
    { value: 'pictures', label: words.pictures },
    { value: 'tables', label: words.tables },
  ] as const;
  const isFitted = table.responses.some(({ effects }) => effects.length > 0);
  return html`<header>
      <h1>${title}</h1>
      <p>${table.summary}</p>
      ${told(words.disagree, table.disagreements)} ${told(words.asked, table.asked)}
      <p class="screen-only actions">
        <button @click=${() => print(subject, content, words, act)}>${words.print}</button>
      </p>
      ${choice('shown-as', words.shownAs, shownAs, view.shownAs, (as) => look({ shownAs: as }))}
    </header>
    ${
      isFitted
        ? html`${matrixSection(table, view.chosen, (chosen) => look({ chosen }), inWords, words)}
          ${nextLine(table.closing.at(-1))} ${detailSection(table, view.chosen, inWords, words)}`
        : nothing
    }
    ${changesSection(table, words)}
    ${
      table.heard.length === 0
        ? nothing
        : html`<section aria-labelledby="heard">
            <h2 id="heard">${words.heard}</h2>
            ${table.heard.map((sentence) => html`<p>${sentence}</p>`)}
          </section>`
    }
    ${
      table.closing.length === 0
        ? nothing
        : html`<section aria-labelledby="meaning">
            <h2 id="meaning">${words.meaning}</h2>
            ${table.closing.map((sentence) => html`<p>${sentence}</p>`)}
          </section>`
    }`;
}

/** What is told before anything else. */
function told(title: string, sentences: readonly string[]): TemplateResult | typeof nothing {
  if (sentences.length === 0) return nothing;
  return html`<div class="first" role="note">
    <strong>${title}</strong>
    ${sentences.map((sentence) => html`<p>${sentence}</p>`)}
  </div>`;
}

function nextLine(sentence: string | undefined): TemplateResult | typeof nothing {
  return sentence === undefined ? nothing : html`<p class="next">${sentence}</p>`;
}

function print({ model }: EffectsSubject, { opensPages }: EffectsContent, words: EffectsWords, act: All['act']): void {
  const html = printedPage(fill(words.title, model), words.printHint, `${pageStyles}\n${ownStyles}`);
  if (opensPages) act({ kind: 'print', html });
  else handOver(fill(words.fileName, model), html);
}
