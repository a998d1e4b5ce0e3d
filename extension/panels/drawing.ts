import { type ExtensionContext, Disposable, l10n } from 'vscode';
import type { LanguageClient } from '../language-client.js';
import { COMMANDS, GetDrawing } from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import { makerCommand } from '../commands/maker-command.js';
import type { Instruments } from '../instruments.js';
import type { RecipeInHand } from '../recipe-in-hand.js';
import type { DrawingAction, DrawingContent, DrawingSubject, DrawingWords } from './drawing-messages.js';
import { goTo } from './go-to.js';
import { Panel } from './panel.js';

/** "Drawing": the plan of the instrument at the cursor, which follows the text as it is typed. */
export function registerDrawing(
  { extensionUri }: ExtensionContext,
  client: LanguageClient,
  instruments: Instruments,
  inHand: RecipeInHand,
): Disposable {
  const panel = new Panel<DrawingSubject, DrawingContent, DrawingWords, DrawingAction>(
    extensionUri,
    {
      name: 'drawing',
      title: ({ name }) => l10n.t('Drawing of {0}', name),
      words,
      content: ({ name }) => client.sendRequest(GetDrawing, { name }),
      act: async ({ path }, _, drawing) => {
        const source = drawing?.parts.find((part) => part.path === path)?.source;
        if (source) await goTo(client, source);
      },
      isSubject: (kept): kept is DrawingSubject =>
        typeof (kept as Partial<DrawingSubject> | undefined)?.name === 'string',
    },
    instruments,
  );
  return Disposable.from(
    panel,
    inHand.onDidChange((entry) => {
      if (entry && entry.name !== panel.subject?.name) panel.follow({ name: entry.name });
    }),
    makerCommand(COMMANDS.showDrawing, async (name?: unknown) => {
      const entry = await chosenInstrument(instruments, typeof name === 'string' ? name : undefined);
      if (entry) panel.show({ name: entry.name });
    }),
  );
}

function words(): DrawingWords {
  return { gone: l10n.t('There is no {0} in the open folders.') };
}
