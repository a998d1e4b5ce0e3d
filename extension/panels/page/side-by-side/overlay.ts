import { type TemplateResult, html, nothing } from 'lit';
import type { SideBySideAction, SideBySideContent, SideBySideSubject } from '../../side-by-side-messages.js';
import type { SideBySideWords } from './words.js';
import { choice } from '../choice.js';
import { modeChoice, modesFigure, modesTable } from './overlay-modes.js';
import { partsFigure } from './overlay-parts.js';
import { profiles } from './profiles.js';

export interface Overlay {
  readonly subject: SideBySideSubject;
  readonly content: SideBySideContent;
  readonly words: SideBySideWords;
  /** Which pair of modes is drawn, from 0. */
  readonly mode: number;
  readonly lookAt: (mode: number) => void;
  readonly act: (action: SideBySideAction) => void;
}

/** Both plates over each other: their parts, or on demand how they move. */
export function overlaySection(overlay: Overlay): TemplateResult | typeof nothing {
  const { subject, content, words, act } = overlay;
  const { plate } = subject;
  const { a, b } = content.drawings;
  if (!a || !b || (a.outline.length === 0 && b.outline.length === 0)) return nothing;
  return html`<section aria-labelledby="drawn" class="drawn">
    <h2 id="drawn">${words.drawn}</h2>
    ${choice(
      'plate',
      words.plate,
      [
        { value: 'top', label: words.top },
        { value: 'back', label: words.back },
      ],
      plate,
      (value) => act({ kind: 'choose', choice: { plate: value } }),
    )}
    ${choice(
      'shown',
      words.show,
      [
        { value: 'parts', label: words.drawnParts },
        { value: 'modes', label: words.drawnModes },
      ],
      subject.modes ? 'modes' : 'parts',
      (value) => act({ kind: 'choose', choice: { modes: value === 'modes' } }),
    )}
    ${
      subject.modes
        ? html`${modeChoice(overlay)} ${modesFigure(overlay, a, b)} ${modesTable(overlay)}`
        : html`${partsFigure(a, b, plate, words)} ${profiles(a, b, plate, words)}`
    }
  </section>`;
}
