import { type ExtensionContext, Disposable, commands, l10n, window } from 'vscode';
import {
  inMessage,
  COMMANDS,
  GetSheet,
  type LineageEntry,
  ListPrintables,
  type PrintableEntry,
} from '../../language/server/protocol.js';
import { makerCommand } from '../commands/maker-command.js';
import { type Instruments, entryAt } from '../folder-instruments.js';
import type { LanguageClient } from '../language-client.js';
import { pickInstrument } from '../pick-instrument.js';
import type { Words } from './messages.js';
import { openPrintable, opensPages } from './open-printable.js';
import { Panel } from './panel.js';
import { type SheetAction, type SheetContent, type SheetSubject, sheetChoices } from './sheet-messages.js';
import { translations } from './translations.js';

/** "Print a Sheet", of a recipe, a build or an order: asks which, and shows it as it comes out on paper. */
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
      act: async (action, subject, { printed }) => {
        if (action.kind === 'choose') return { ...subject, sheet: action.sheet };
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
      const entry = await chosenPrintable(client, name);
      const placeHolder = l10n.t('Which sheet?');
      const choice = entry && (await window.showQuickPick(inOrder(entry), { placeHolder }));
      if (entry && choice) panel.show({ name: entry.name, sheet: choice.sheet });
    }),
    commands.registerCommand('bookmatch.lineage.printSheet', (entry?: LineageEntry) =>
      commands.executeCommand(COMMANDS.printSheet, entry?.name),
    ),
  );
}

/** What the sheet is to be of: the one named, else the one at the cursor, else whichever the maker picks. */
async function chosenPrintable(client: LanguageClient, name: unknown): Promise<PrintableEntry | undefined> {
  const all = await client.sendRequest(ListPrintables);
  if (typeof name === 'string') {
    const named = all.find((entry) => entry.name === name);
    if (!named) void window.showInformationMessage(inMessage(l10n.t('There is no {0} in the open folders.', name)));
    return named;
  }
  const editor = window.activeTextEditor;
  const uri = editor && client.code2ProtocolConverter.asUri(editor.document.uri);
  const here = uri === undefined ? undefined : entryAt(all, uri, editor!.selection.active);
  return here ?? pickInstrument(all, l10n.t('Which instrument?'));
}

/** The likeliest first: at the bench a recipe, in a client's hands what was ordered; what is of the whole shop last. */
function inOrder({ kind }: PrintableEntry) {
  const all = sheetChoices(l10n);
  if (kind !== 'order') return all;
  const ofIt = all.filter(({ sheet }) => sheet !== 'bench' && sheet !== 'orders');
  return [...ofIt, ...all.filter((each) => !ofIt.includes(each))];
}
