import { type Disposable, commands } from 'vscode';
import type { Instruments } from './folder-instruments.js';

/** Keys that menus ask: commands about an instrument are offered where there is one, and nowhere else. */
export function tellMenus(instruments: Instruments): Disposable {
  const look = async () => {
    const all = await instruments.all();
    await commands.executeCommand('setContext', 'bookmatch.hasInstruments', all.length > 0);
  };
  return instruments.onDidChange(() => void look().catch(console.error));
}
