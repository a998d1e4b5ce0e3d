import { type Disposable, l10n, window } from 'vscode';
import { inMessage, COMMANDS } from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import type { Instruments } from '../folder-instruments.js';
import { makerCommand } from './maker-command.js';
import { openComparison } from '../open-comparison.js';

/** "Compare with Parent", for the recipe named or the one at the cursor. */
export function registerCompareWithParent(instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.compareWithParent, async (name?: unknown) => {
    const entry = await chosenInstrument(instruments, name);
    if (!entry) return;
    if (entry.parent !== undefined && (await instruments.named(entry.parent))) {
      await openComparison(entry.parent, entry.name);
    } else {
      void window.showInformationMessage(inMessage(noParent(entry.name, entry.parent)));
    }
  });
}

function noParent(name: string, parent: string | undefined): string {
  return parent === undefined
    ? l10n.t('{0} has no parent: it is the first of its line.', name)
    : l10n.t('The parent of {0}, {1}, is not in the open folders.', name, parent);
}
