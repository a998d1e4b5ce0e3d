import { commands, l10n } from 'vscode';
import { resolvedUri } from './resolved-texts.js';

/** Lay `a` and `b`, both written out in full, side by side in VS Code's own diff editor. */
export async function openComparison(a: string, b: string): Promise<void> {
  const title = l10n.t('{0} beside {1}', a, b);
  await commands.executeCommand('vscode.diff', resolvedUri(a), resolvedUri(b), title, { preview: false });
}
