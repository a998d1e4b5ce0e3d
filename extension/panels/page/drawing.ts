import { html } from 'lit';
import type { DrawingAction, DrawingContent, DrawingSubject, DrawingWords } from '../drawing-messages.js';
import { fill, openPage } from './page.js';

openPage<DrawingSubject, DrawingContent, DrawingWords, object, DrawingAction>({}, ({ subject, content, words }) =>
  content
    ? html`<h1>${content.name}</h1>
        <p>${content.parts.length}</p>`
    : html`<p>${fill(words.gone, subject.name)}</p>`,
);
