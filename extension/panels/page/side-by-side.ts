import { type TemplateResult, html } from 'lit';
import type { SideBySideAction, SideBySideContent, SideBySideSubject } from '../side-by-side-messages.js';
import type { Words } from '../messages.js';
import { type Shown, fill, openPage, translator } from './page.js';
import pageStyles from './page.css?raw';
import { handOver, printedPage } from './printed.js';
import { changesSection } from './side-by-side/changes.js';
import { contributionsSection } from './side-by-side/contributions.js';
import { evidenceSection } from './side-by-side/evidence.js';
import { fingerboardSection } from './side-by-side/fingerboard.js';
import { overlaySection } from './side-by-side/overlay.js';
import { type Wanted, quantitiesSection, shownRows } from './side-by-side/quantities.js';
import { readingsSection } from './side-by-side/readings.js';
import { type SideBySideWords, sideBySideWords } from './side-by-side/words.js';
import './actions.css';
import './side-by-side.css';
import ownStyles from './side-by-side.css?raw';

interface View {
  readonly wanted: Wanted;
  /** Which pair of modes is drawn, from 0. */
  readonly mode: number;
}

type All = Shown<SideBySideSubject, SideBySideContent, Words, View, SideBySideAction>;

openPage<SideBySideSubject, SideBySideContent, Words, View, SideBySideAction>({ wanted: 'distinct', mode: 0 }, page);

function page({ subject, content, words: translations, view, look, act }: All): TemplateResult {
  const words = sideBySideWords(translator(translations));
  const { table } = content;
  if (!table) return html`<p>${fill(words.gone, subject.a, subject.b)}</p>`;
  return html`<header>
      <h1>${fill(words.title, subject.a, subject.b)}</h1>
      <p>${table.relation} ${table.counted}.</p>
      <p class="screen-only actions">
        <button @click=${() => print(subject, content, words, act)}>${words.print}</button>
        <button class="secondary" @click=${() => act({ kind: 'texts' })}>${words.texts}</button>
        <button class="secondary" @click=${() => act({ kind: 'swap' })}>${words.swap}</button>
      </p>
    </header>
    ${changesSection(table, words)} ${quantitiesSection(table, words, view.wanted, (wanted) => look({ wanted }))}
    ${contributionsSection(shownRows(table, view.wanted), words)} ${fingerboardSection(table, words)}
    ${overlaySection({ subject, content, words, mode: view.mode, lookAt: (mode) => look({ mode }), act })}
    ${readingsSection(table, words)} ${evidenceSection(table.evidence, words)}`;
}

function print(
  { a, b }: SideBySideSubject,
  { opensPages }: SideBySideContent,
  words: SideBySideWords,
  act: All['act'],
): void {
  const html = printedPage(fill(words.title, a, b), words.printHint, `${pageStyles}\n${ownStyles}`);
  if (opensPages) act({ kind: 'print', html });
  else handOver(fill(words.fileName, a, b), html);
}
