import { type Disposable, commands, l10n, window } from 'vscode';

/** A command as the maker meets it: whatever goes wrong is said in a sentence, and the details go to the console. */
export function makerCommand(id: string, carryOut: (...args: unknown[]) => Promise<void>): Disposable {
  return commands.registerCommand(id, async (...args: unknown[]) => {
    try {
      await carryOut(...args);
    } catch (error) {
      console.error(error);
      void window.showErrorMessage(
        l10n.t('The recipes cannot be read just now: reload the window, or see what the Bookmatch output says.'),
      );
    }
  });
}
