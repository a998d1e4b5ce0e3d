import { type Disposable, type QuickPickItem, l10n, window } from 'vscode';
import {
  inMessage,
  COMMANDS,
  GetRecordedReading,
  ListPrintables,
  ListReadable,
} from '../../language/server/protocol.js';
import { entryAt } from '../folder-instruments.js';
import type { LanguageClient } from '../language-client.js';
import { pickInstrument } from '../pick-instrument.js';
import { writeEdit } from '../write-edit.js';
import { makerCommand } from './maker-command.js';

/** "Record a Reading": asks build, stage, what and how much, and writes the line into the build. */
export function registerRecordReading(client: LanguageClient): Disposable {
  return makerCommand(COMMANDS.recordReading, async (name?: unknown) => {
    const build = typeof name === 'string' ? name : await chosenBuild(client);
    if (build === undefined) return;
    const stages = await client.sendRequest(ListReadable, { build });
    if (!stages) {
      void window.showInformationMessage(inMessage(l10n.t('There is no build {0} in the open folders.', build)));
      return;
    }
    const stage = await window.showQuickPick(
      stages.map((each) => ({ label: each.title, each })),
      { placeHolder: l10n.t('What was {0} when it was read?', build) },
    );
    if (!stage) return;
    const what = await window.showQuickPick(
      stage.each.values.map(
        ({ path, title, unit }): QuickPickItem & { readonly path: string; readonly unit: string } => ({
          ...{ label: title, path, unit },
        }),
      ),
      { canPickMany: true, placeHolder: l10n.t('What was read?') },
    );
    if (!what || what.length === 0) return;
    const values: { path: string; value: string }[] = [];
    for (const { label, path, unit } of what) {
      const value = await window.showInputBox({
        prompt: label,
        placeHolder: unit,
        ignoreFocusOut: true,
        validateInput: (text) => problem(text, unit),
      });
      if (value === undefined) return;
      values.push({ path, value: withUnit(value, unit) });
    }
    const humidity = await window.showInputBox({
      prompt: l10n.t('Humidity on the hygrometer'),
      placeHolder: '%RH',
      ignoreFocusOut: true,
    });
    if (humidity === undefined) return;
    const taken = { build, stage: stage.each.stage, date: today(), humidity: withUnit(humidity, '%RH'), values };
    const recorded = await client.sendRequest(GetRecordedReading, taken);
    if (recorded && 'reason' in recorded) {
      void window.showWarningMessage(inMessage(recorded.reason));
      return;
    }
    await writeEdit(client, recorded?.edit, l10n.t('The reading could not be written into {0}.', build));
  });
}

/** The build at the cursor, else whichever the maker picks. */
async function chosenBuild(client: LanguageClient): Promise<string | undefined> {
  const builds = (await client.sendRequest(ListPrintables)).filter(({ kind }) => kind === 'build');
  const editor = window.activeTextEditor;
  const uri = editor && client.code2ProtocolConverter.asUri(editor.document.uri);
  const here = uri === undefined ? undefined : entryAt(builds, uri, editor!.selection.active);
  return (here ?? (await pickInstrument(builds, l10n.t('Of which build?'))))?.name;
}

/** A number alone is in the unit asked for. */
function withUnit(text: string, unit: string): string {
  return /^[+-]?[\d.]+$/.test(text.trim()) && unit !== '' ? `${text.trim()} ${unit}` : text.trim();
}

function problem(text: string, unit: string): string | undefined {
  return text.trim() === '' || /\d/.test(text) ? undefined : l10n.t('A number, in {0} or with its own unit.', unit);
}

/** The day here, not in Greenwich. */
function today(): string {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
