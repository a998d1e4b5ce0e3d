import { type TemplateResult, html, nothing } from 'lit';
import { choice } from '../choice.js';
import { modeChoice, modesFigure, modesTable } from './overlay-modes.js';
import type { Overlay } from './overlaid.js';
import { partsFigure } from './overlay-parts.js';
import { profiles } from './profiles.js';

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
