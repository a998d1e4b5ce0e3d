import { type Disposable, commands, l10n, window } from 'vscode';
import { inMessage, COMMANDS } from '../../language/server/protocol.js';
import { isRefusal } from '../refusal.js';

/** What the server says of a fault of its own is a sentence; without a server there is one to start. */
async function tellTrouble(error: unknown): Promise<void> {
  if (isRefusal(error)) {
    void window.showErrorMessage(inMessage(error.message));
    return;
  }
  const restart = l10n.t('Restart');
  const words = l10n.t('The recipes cannot be read just now; the Bookmatch output says more.');
  if ((await window.showErrorMessage(words, restart)) === restart) await commands.executeCommand(COMMANDS.restart);
}

/** A command as the maker meets it: whatever goes wrong is said in a sentence, and the details go to the console. */
export function makerCommand(id: string, carryOut: (...args: unknown[]) => Promise<void>): Disposable {
  return commands.registerCommand(id, async (...args: unknown[]) => {
    try {
      await carryOut(...args);
    } catch (error) {
      console.error(error);
      void tellTrouble(error);
    }
  });
}
