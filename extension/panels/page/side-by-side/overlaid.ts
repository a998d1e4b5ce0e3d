/** What the two plans over each other are drawn from. */
import type { SideBySideAction, SideBySideContent, SideBySideSubject } from '../../side-by-side-messages.js';
import type { SideBySideWords } from './words.js';

export interface Overlay {
  readonly subject: SideBySideSubject;
  readonly content: SideBySideContent;
  readonly words: SideBySideWords;
  /** Which pair of modes is drawn, from 0. */
  readonly mode: number;
  readonly lookAt: (mode: number) => void;
  readonly act: (action: SideBySideAction) => void;
}
