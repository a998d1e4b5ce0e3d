import { l10n } from 'vscode';
import type { Words } from './messages.js';

/** For a page that has its texts in English with it: the editor's translations of them, none where it speaks English. */
export function translations(): Words {
  return l10n.bundle ?? {};
}
