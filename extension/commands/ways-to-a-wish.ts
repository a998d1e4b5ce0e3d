import { type Disposable, ProgressLocation, l10n, window } from 'vscode';
import { COMMANDS, inLabel, inMessage, GetWays, type WaysFound } from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import type { Instruments } from '../folder-instruments.js';
import type { LanguageClient } from '../language-client.js';
import { writeEdit } from '../write-edit.js';
import { makerCommand } from './maker-command.js';

/** "What Would Get Me There?": every single change that meets a wish; the one chosen is written into the recipe. */
export function registerWaysToAWish(client: LanguageClient, instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.showWays, async (name?: unknown) => {
    const entry = await chosenInstrument(instruments, name);
    if (!entry) return;
    const wish = await window.showInputBox({
      title: l10n.t('What should {0} come to?', entry.name),
      prompt: l10n.t('A computed quantity and what it should be'),
      placeHolder: 'resonance.top: 170 Hz',
    });
    if (wish === undefined || wish.trim() === '') return;
    const found = await asked(client, entry.name, wish);
    if (!found || found.state !== 'found' || found.ways.length === 0) {
      void window.showInformationMessage(inMessage(reasonOf(found, entry.name, wish)));
      return;
    }
    const chosen = await window.showQuickPick(
      found.ways.map((way) => ({
        label: inLabel(way.change),
        description: inLabel(way.result),
        detail: inLabel(`${way.also} ${way.until}`),
        way,
      })),
      { title: l10n.t('Each of these alone would do it; the one chosen is written'), matchOnDetail: true },
    );
    if (chosen)
      await writeEdit(
        client,
        chosen.way.edit,
        l10n.t('{0} could not be written into {1}.', chosen.way.change, entry.name),
      );
  });
}

/** Asks until the solver has been through all of them. */
async function asked(client: LanguageClient, recipe: string, wish: string): Promise<WaysFound | null> {
  return window.withProgress(
    { location: ProgressLocation.Notification, title: l10n.t('Trying every change'), cancellable: true },
    async (_, stopped) => {
      for (;;) {
        const found = await client.sendRequest(GetWays, { recipe, wish });
        if (found?.state !== 'waiting' || stopped.isCancellationRequested) return found;
        await new Promise((resolve) => setTimeout(resolve, 700));
      }
    },
  );
}

function reasonOf(found: WaysFound | null, recipe: string, wish: string): string {
  switch (found?.state) {
    case 'met':
      return l10n.t('That is what {0} comes to already.', recipe);
    case 'found':
      return l10n.t('No single change within what can be built gets {0} there.', recipe);
    case 'waiting':
      return l10n.t('Stopped before every change was tried.');
    case 'unreadable':
      return l10n.t('{0} is no wish that can be read: write `resonance.top: 170 Hz` or `top.sag: by 2 %`.', wish);
    default:
      return l10n.t('{0} is no recipe in the open folders.', recipe);
  }
}
