/// <reference lib="dom" />
import { type TemplateResult, html } from 'lit';
import type { Words } from '../messages.js';
import { type SheetAction, type SheetContent, type SheetSubject, sheetChoices } from '../sheet-messages.js';
import { choice } from './choice.js';
import { type Shown, fill, openPage, translator } from './page.js';
import { handOver } from './printed.js';
import './actions.css';
import './sheet.css';

type All = Shown<SheetSubject, SheetContent, Words, object, SheetAction>;

openPage<SheetSubject, SheetContent, Words, object, SheetAction>({}, page);

function page({ subject, content: { printed, opensPages }, words, act }: All): TemplateResult {
  const l10n = translator(words);
  if (!printed) return html`<p>${fill(l10n.t('There is no {0} that a sheet could be made of.'), subject.name)}</p>`;
  const paper = new DOMParser().parseFromString(printed.html, 'text/html');
  // The sheet brings its own style; a page of ours may take it up as a stylesheet, but not as text in the page.
  const style = new CSSStyleSheet();
  style.replaceSync(paper.querySelector('style')?.textContent ?? '');
  document.adoptedStyleSheets = [style];
  const sheet = document.createElement('article');
  sheet.className = 'sheet';
  sheet.append(...(paper.querySelector('main')?.childNodes ?? []));
  const print = () => (opensPages ? act({ kind: 'print' }) : handOver(`${printed.title}.html`, printed.html));
  const kinds = sheetChoices(l10n).map(({ sheet: value, label }) => ({ value, label }));
  return html`<div class="actions screen-only">
      <button @click=${print}>${l10n.t('Print')}</button>
      ${choice('kind', l10n.t('Sheet'), kinds, subject.sheet, (kind) => act({ kind: 'choose', sheet: kind }))}
    </div>
    ${sheet}`;
}
