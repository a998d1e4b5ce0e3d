import { type Disposable, commands, workspace } from 'vscode';
import type { Instruments } from './folder-instruments.js';

/** Keys that menus ask: commands about an instrument are offered where there is one, and nowhere else. */
export function tellMenus(instruments: Instruments): Disposable {
  let isKnown = false;
  const tell = (has: boolean) => commands.executeCommand('setContext', 'bookmatch.hasInstruments', has);
  const look = async () => {
    const all = await instruments.all();
    isKnown = true;
    await tell(all.length > 0);
  };
  // Until the recipes are read, that there are files of them is reason enough.
  const lookForFiles = async () => {
    const files = await workspace.findFiles('**/*.bookmatch', '**/node_modules/**', 1);
    if (!isKnown && files.length > 0) await tell(true);
  };
  void lookForFiles().catch(console.error);
  return instruments.onDidChange(() => void look().catch(console.error));
}
