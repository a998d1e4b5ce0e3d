import { type Disposable, window, workspace } from 'vscode';
import { COMMANDS } from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import type { Instruments } from '../folder-instruments.js';
import { makerCommand } from './maker-command.js';
import { resolvedUri } from '../resolved-texts.js';

/** "Show the Whole Recipe": every value of its line, and what it computes to, as read-only text. */
export function registerShowResolved(instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.showResolved, async (name?: unknown) => {
    const entry = await chosenInstrument(instruments, name);
    if (!entry) return;
    const document = await workspace.openTextDocument(resolvedUri(entry.name));
    await window.showTextDocument(document, { preview: false });
  });
}
