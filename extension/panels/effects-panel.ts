import { type ExtensionContext, Disposable, l10n, window, commands } from 'vscode';
import { COMMANDS, GetModelEffects, type InstrumentEntry } from '../../language/server/protocol.js';
import { makerCommand } from '../commands/maker-command.js';
import type { Instruments } from '../folder-instruments.js';
import type { LanguageClient } from '../language-client.js';
import { pickInstrument } from '../pick-instrument.js';
import type { EffectsAction, EffectsContent, EffectsSubject } from './effects-messages.js';
import type { Words } from './messages.js';
import { openPrintable, opensPages } from './open-printable.js';
import { Panel } from './panel.js';
import { translations } from './translations.js';

/** "What Each Change Did": all builds of a model together, what was changed in which, and what that did, if anything. */
export function registerEffects(
  context: ExtensionContext,
  client: LanguageClient,
  instruments: Instruments,
): Disposable {
  const panel = new Panel<EffectsSubject, EffectsContent, Words, EffectsAction>(
    context.extensionUri,
    {
      name: 'effects',
      title: ({ model }) => l10n.t('What each change did: {0}', model),
      words: translations,
      content: async ({ model }) => ({
        table: await client.sendRequest(GetModelEffects, { model }),
        opensPages: opensPages(),
      }),
      act: async ({ html }, subject) => {
        await openPrintable(context, `${subject.model}-effects`, html);
        return subject;
      },
      isSubject: (kept): kept is EffectsSubject => typeof ((kept ?? {}) as Partial<EffectsSubject>).model === 'string',
    },
    instruments,
  );
  return Disposable.from(
    panel,
    commands.registerCommand('bookmatch.effects.recordReading', () => commands.executeCommand(COMMANDS.recordReading)),
    makerCommand(COMMANDS.showEffects, async (name?: unknown) => {
      const all = await instruments.all();
      const here =
        typeof name === 'string'
          ? all.find((entry) => entry.name === name)
          : await instruments.atCursor(window.activeTextEditor);
      const models = all.filter(({ kind }) => kind === 'model');
      const model = modelOf(here, all) ?? (await pickInstrument(models, l10n.t('Which model?')));
      if (model) panel.show({ model: model.name });
    }),
  );
}

/** The model at the upper end of a line; undefined where the line has none. */
function modelOf(entry: InstrumentEntry | undefined, all: readonly InstrumentEntry[]): InstrumentEntry | undefined {
  // Parents may lead round in a ring.
  const seen = new Set<InstrumentEntry>();
  let at = entry;
  while (at && at.kind !== 'model' && !seen.has(at)) {
    seen.add(at);
    const { parent } = at;
    at = all.find(({ name }) => name === parent);
  }
  return at?.kind === 'model' ? at : undefined;
}
