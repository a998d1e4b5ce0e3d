import { type ExtensionContext, Disposable, commands, l10n } from 'vscode';
import type { LanguageClient } from '../language-client.js';
import { COMMANDS, GetDrawing, GetModeShapes, GetPlan, type ModeShapes } from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import { makerCommand } from '../commands/maker-command.js';
import type { Instruments } from '../folder-instruments.js';
import type { RecipeInHand } from '../recipe-in-hand.js';
import type { DrawingAction, DrawingContent, DrawingSubject, DrawingWords } from './drawing-messages.js';
import { drawingWords } from './drawing-words.js';
import { goTo } from './go-to.js';
import { LastKnown } from './last-known.js';
import { openPrintable, opensPages } from './open-printable.js';
import { Panel } from './panel.js';
import { Visit } from './visit.js';

/** "Drawing": the plan of the instrument at the cursor, which follows the text as it is typed. */
export function registerDrawing(
  context: ExtensionContext,
  client: LanguageClient,
  instruments: Instruments,
  inHand: RecipeInHand,
): Disposable {
  const last = new LastKnown<ModeShapes>();
  const visit = new Visit();
  const panel = new Panel<DrawingSubject, DrawingContent, DrawingWords, DrawingAction>(
    context.extensionUri,
    {
      name: 'drawing',
      title: ({ name }) => l10n.t('Drawing of {0}', name),
      words: drawingWords,
      content: async (subject) => {
        const drawing = await client.sendRequest(GetDrawing, { name: subject.name });
        const plan = drawing && (await client.sendRequest(GetPlan, { name: subject.name }));
        const { name, plate } = subject;
        const modes = drawing && subject.modes ? await client.sendRequest(GetModeShapes, { name, plate }) : null;
        return { drawing, plan, modes: last.of([name, plate], modes), opensPages: opensPages() };
      },
      act: async (action, subject, { drawing }) => {
        if (action.kind === 'choose') return { ...subject, ...action.choice };
        if (action.kind === 'save') {
          await commands.executeCommand(COMMANDS.savePlan, subject.name);
          return subject;
        }
        if (action.kind === 'print') {
          await openPrintable(context, `${subject.name}-${subject.plate}`, action.html);
          return subject;
        }
        const source = drawing?.parts.find((part) => part.path === action.path)?.source;
        if (!source) return subject;
        visit.begin((await instruments.at(source.uri, source.range.start))?.name);
        await goTo(client, source);
        return subject;
      },
      isSubject,
    },
    instruments,
  );
  const turnTo = (name: string): DrawingSubject => ({ plate: 'top', modes: false, ...panel.subject, name });
  return Disposable.from(
    panel,
    inHand.onDidChange((entry) => {
      if (entry && visit.leadsOn(entry.name, panel.subject?.name)) panel.follow(turnTo(entry.name));
    }),
    commands.registerCommand('bookmatch.drawing.savePlan', () => panel.act({ kind: 'save' })),
    commands.registerCommand('bookmatch.drawing.printSheet', () =>
      commands.executeCommand(COMMANDS.printSheet, panel.subject?.name),
    ),
    makerCommand(COMMANDS.showDrawing, async (name?: unknown) => {
      const entry = await chosenInstrument(instruments, typeof name === 'string' ? name : undefined);
      if (entry) panel.show(turnTo(entry.name));
    }),
  );
}

function isSubject(kept: unknown): kept is DrawingSubject {
  const { name, plate, modes } = (kept ?? {}) as Partial<DrawingSubject>;
  return typeof name === 'string' && (plate === 'top' || plate === 'back') && typeof modes === 'boolean';
}
