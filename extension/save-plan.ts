import { type Disposable, env, l10n, type QuickPickItem, UIKind, window } from 'vscode';
import { inMessage, COMMANDS, GetPlanFile, ListPlanParts, type PlanFileAsked } from '../language/server/protocol.js';
import { chosenInstrument } from './chosen-instrument.js';
import { makerCommand } from './commands/maker-command.js';
import type { Instruments } from './folder-instruments.js';
import type { LanguageClient } from './language-client.js';
import { saveWhereChosen } from './save-where-chosen.js';

/** "Save Plan or Templates": asks what to draw and how, and writes the file where the maker says. */
export function registerSavePlan(client: LanguageClient, instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.savePlan, async (name?: unknown) => {
    const entry = await chosenInstrument(instruments, typeof name === 'string' ? name : undefined);
    if (!entry) return;
    const all = await client.sendRequest(ListPlanParts);
    const chosen = await window.showQuickPick(
      all.map(({ key, title }): QuickPickItem & { readonly key: string } => ({
        label: title,
        key,
        picked: key === 'plan',
      })),
      { canPickMany: true, placeHolder: l10n.t('What to draw, at full size?') },
    );
    if (!chosen || chosen.length === 0) return;
    const how = await window.showQuickPick(formats(), { placeHolder: l10n.t('For what?') });
    if (!how) return;
    const parts = chosen.map(({ key }) => key);
    const made = await client.sendRequest(GetPlanFile, {
      name: entry.name,
      parts,
      format: how.format,
      paper: how.paper,
    });
    if ('trouble' in made) {
      void window.showWarningMessage(inMessage(made.trouble));
      return;
    }
    const bytes = Uint8Array.from(atob(made.base64), (sign) => sign.charCodeAt(0));
    const saved = await saveWhereChosen(made.fileName, { [how.format.toUpperCase()]: [how.format] }, bytes);
    if (saved) void window.showInformationMessage(l10n.t('The drawing is saved.'));
  });
}

interface Format extends QuickPickItem, Pick<PlanFileAsked, 'format' | 'paper'> {}

/** In the browser alone only what takes no large library. */
function formats(): readonly Format[] {
  const svg: Format = {
    label: 'SVG',
    detail: l10n.t('For the screen, and for programs that draw'),
    format: 'svg',
    paper: 'a4',
  };
  if (env.uiKind === UIKind.Web && env.remoteName === undefined) return [svg];
  return [
    {
      label: l10n.t('PDF on A4'),
      detail: l10n.t('Sheets to trim and join, with a bar to check the size by'),
      format: 'pdf',
      paper: 'a4',
    },
    {
      label: l10n.t('PDF on US Letter'),
      detail: l10n.t('Sheets to trim and join, with a bar to check the size by'),
      format: 'pdf',
      paper: 'letter',
    },
    {
      label: 'DXF',
      detail: l10n.t('For laser and router: millimetres, a layer for each part'),
      format: 'dxf',
      paper: 'a4',
    },
    svg,
  ];
}
