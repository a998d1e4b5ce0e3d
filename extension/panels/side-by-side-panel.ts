import { type ExtensionContext, Disposable, commands, l10n } from 'vscode';
import type { LanguageClient } from '../language-client.js';
import {
  COMMANDS,
  type ComparedModes,
  GetComparedModes,
  GetComparison,
  GetDrawing,
  type LineageEntry,
} from '../../language/server/protocol.js';
import { makerCommand } from '../commands/maker-command.js';
import type { Instruments } from '../folder-instruments.js';
import { openComparison } from '../open-comparison.js';
import { pickPair } from '../pick-pair.js';
import type { Words } from './messages.js';
import { LastKnown } from './last-known.js';
import { openPrintable, opensPages } from './open-printable.js';
import { Panel } from './panel.js';
import type { SideBySideAction, SideBySideContent, SideBySideSubject } from './side-by-side-messages.js';
import { translations } from './translations.js';

/** "Side by Side": two instruments, what differs, what that does, and what the builds say of it. */
export function registerSideBySide(
  context: ExtensionContext,
  client: LanguageClient,
  instruments: Instruments,
): Disposable {
  const last = new LastKnown<ComparedModes>();
  const panel = new Panel<SideBySideSubject, SideBySideContent, Words, SideBySideAction>(
    context.extensionUri,
    {
      name: 'side-by-side',
      title: ({ a, b }) => l10n.t('{0} and {1} side by side', a, b),
      words: translations,
      content: async ({ a, b, plate, modes: wanted }) => {
        const [table, one, other, modes] = await Promise.all([
          client.sendRequest(GetComparison, { a, b }),
          client.sendRequest(GetDrawing, { name: a }),
          client.sendRequest(GetDrawing, { name: b }),
          wanted ? client.sendRequest(GetComparedModes, { a, b, plate }) : null,
        ]);
        return {
          table,
          drawings: { a: one, b: other },
          modes: last.of([a, b, plate], modes),
          opensPages: opensPages(),
        };
      },
      act: async (action, subject) => {
        const { a, b } = subject;
        if (action.kind === 'swap') return { ...subject, a: b, b: a };
        if (action.kind === 'choose') return { ...subject, ...action.choice };
        if (action.kind === 'texts') await openComparison(a, b);
        else await openPrintable(context, `${a}-beside-${b}`, action.html);
        return subject;
      },
      isSubject,
    },
    instruments,
  );
  return Disposable.from(
    panel,
    makerCommand(COMMANDS.showSideBySide, async (a?: unknown, b?: unknown) => {
      const pair = typeof a === 'string' && typeof b === 'string' ? { a, b } : await pickPair(instruments);
      if (pair) panel.show({ plate: 'top', modes: false, ...panel.subject, ...pair });
    }),
    commands.registerCommand('bookmatch.sideBySide.swap', () => panel.act({ kind: 'swap' })),
    commands.registerCommand('bookmatch.sideBySide.texts', () => panel.act({ kind: 'texts' })),
    commands.registerCommand('bookmatch.lineage.sideBySide', (entry?: LineageEntry) =>
      commands.executeCommand(COMMANDS.showSideBySide, entry?.parent, entry?.name),
    ),
  );
}

function isSubject(kept: unknown): kept is SideBySideSubject {
  const { a, b, plate, modes } = (kept ?? {}) as Partial<SideBySideSubject>;
  return (
    typeof a === 'string' &&
    typeof b === 'string' &&
    (plate === 'top' || plate === 'back') &&
    typeof modes === 'boolean'
  );
}
