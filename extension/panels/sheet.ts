import { type ExtensionContext, type QuickPickItem, Disposable, l10n, window } from 'vscode';
import { COMMANDS, GetSheet, type SheetKind } from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import { makerCommand } from '../commands/maker-command.js';
import type { Instruments } from '../instruments.js';
import type { LanguageClient } from '../language-client.js';
import type { Words } from './messages.js';
import { openPrintable, opensPages } from './open-printable.js';
import { Panel } from './panel.js';
import type { SheetAction, SheetContent, SheetSubject } from './sheet-messages.js';
import { translations } from './translations.js';

/** "Print a Sheet": asks which, and shows it as it comes out on paper. */
export function registerSheets(
  context: ExtensionContext,
  client: LanguageClient,
  instruments: Instruments,
): Disposable {
  const panel = new Panel<SheetSubject, SheetContent, Words, SheetAction>(
    context.extensionUri,
    {
      name: 'sheet',
      title: ({ name }) => l10n.t('Sheet of {0}', name),
      words: translations,
      content: async ({ name, sheet }) => ({
        printed: await client.sendRequest(GetSheet, { name, kind: sheet }),
        opensPages: opensPages(),
      }),
      act: async (_, subject, { printed }) => {
        if (printed) await openPrintable(context, `${subject.name}-${subject.sheet}`, printed.html);
        return subject;
      },
      isSubject: (kept): kept is SheetSubject => {
        const { name, sheet } = (kept ?? {}) as Partial<SheetSubject>;
        return typeof name === 'string' && typeof sheet === 'string';
      },
    },
    instruments,
  );
  return Disposable.from(
    panel,
    makerCommand(COMMANDS.printSheet, async (name?: unknown) => {
      const entry = await chosenInstrument(instruments, name);
      const choice = entry && (await window.showQuickPick(sheets(), { placeHolder: l10n.t('Which sheet?') }));
      if (entry && choice) panel.show({ name: entry.name, sheet: choice.sheet });
    }),
  );
}

function sheets(): readonly (QuickPickItem & { readonly sheet: SheetKind })[] {
  return [
    { sheet: 'bench', label: l10n.t('Bench sheet'), detail: l10n.t('Targets and what to read, stage by stage') },
    { sheet: 'client', label: l10n.t('Client sheet'), detail: l10n.t('Woods, options and setup') },
    { sheet: 'care', label: l10n.t('Setup and care card'), detail: l10n.t('How it left the shop, what to keep it at') },
    { sheet: 'papers', label: l10n.t('Species and papers'), detail: l10n.t('Woods by part, as borders ask for them') },
  ];
}
