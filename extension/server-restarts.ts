import { type Disposable, commands, l10n, window } from 'vscode';
import {
  type BaseLanguageClient,
  CloseAction,
  type CloseHandlerResult,
  ErrorAction,
  type ErrorHandler,
  State,
} from 'vscode-languageclient';
import { COMMANDS } from '../language/server/protocol.js';

/** A server that ends is started again so often within so long (ms); what ends oftener ends at once each time. */
const TRIES = 4;
const WITHIN = 3 * 60 * 1000;

/** Starts a server that ended, until that is of no use: then the person is told, and offered to try once more. */
export class ServerRestarts implements ErrorHandler {
  private ends: readonly number[] = [];

  error(): { readonly action: ErrorAction } {
    return { action: ErrorAction.Continue };
  }

  closed(): CloseHandlerResult {
    const now = Date.now();
    this.ends = [...this.ends.filter((end) => now - end < WITHIN), now];
    if (this.ends.length <= TRIES) return { action: CloseAction.Restart };
    void this.offer();
    return { action: CloseAction.DoNotRestart, handled: true };
  }

  private async offer(): Promise<void> {
    const restart = l10n.t('Restart');
    const words = l10n.t(
      'The server of Bookmatch has ended {0} times within minutes: recipes are not checked, and panels show what was known last. Your files are as they are.',
      this.ends.length,
    );
    if ((await window.showErrorMessage(words, restart)) === restart) await commands.executeCommand(COMMANDS.restart);
  }
}

/** `Bookmatch: Restart`: ends the server if it runs, and starts it anew. */
export function registerRestart(client: BaseLanguageClient): Disposable {
  return commands.registerCommand(COMMANDS.restart, async () => {
    try {
      if (client.state === State.Running) await client.stop();
      await client.start();
    } catch (error) {
      console.error(error);
      void window.showErrorMessage(l10n.t('The server of Bookmatch does not start; the Bookmatch output says more.'));
    }
  });
}
