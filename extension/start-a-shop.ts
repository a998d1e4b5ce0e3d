import {
  type ExtensionContext,
  type QuickPickItem,
  type WorkspaceFolder,
  Disposable,
  Uri,
  WorkspaceEdit,
  commands,
  l10n,
  window,
  workspace,
} from 'vscode';
import { COMMANDS, GetStarterShop, type StarterAnswers, type StarterFile } from '../language/server/protocol.js';
import { makerCommand } from './commands/maker-command.js';
import { recipesIn } from './editor-files.js';
import type { Instruments } from './folder-instruments.js';
import type { LanguageClient } from './language-client.js';

/** "Start a Shop": a few questions, then a few files in which every line is valid. Nothing that is there is touched. */
export function registerStartAShop(
  context: ExtensionContext,
  client: LanguageClient,
  instruments: Instruments,
): Disposable {
  return Disposable.from(
    makerCommand(COMMANDS.startShop, () => startAShop(client)),
    offerOnce(context, instruments),
  );
}

async function startAShop(client: LanguageClient): Promise<void> {
  const folder = await folderToStartIn();
  const answers = folder && (await ask());
  if (!answers) return;
  const files = await client.sendRequest(GetStarterShop, answers);
  const taken = await filesThere(folder.uri, files);
  if (taken.length > 0) {
    void window.showInformationMessage(l10n.t('Nothing was written: {0} is in this folder already.', taken.join(', ')));
    return;
  }
  const edit = new WorkspaceEdit();
  for (const { name, text } of files) {
    edit.createFile(Uri.joinPath(folder.uri, name), { contents: new TextEncoder().encode(text), overwrite: false });
  }
  const last = files.at(-1);
  if (!last || !(await workspace.applyEdit(edit))) {
    void window.showErrorMessage(l10n.t('The files could not be written into {0}.', folder.name));
    return;
  }
  await window.showTextDocument(Uri.joinPath(folder.uri, last.name), { preview: false });
}

async function folderToStartIn(): Promise<WorkspaceFolder | undefined> {
  const { workspaceFolders: [folder, ...others] = [] } = workspace;
  if (others.length > 0) return window.showWorkspaceFolderPick({ placeHolder: l10n.t('In which folder?') });
  if (!folder) {
    const open = l10n.t('Open Folder');
    const said = l10n.t('A shop is a folder of text files. Open the folder it is to be in, then start it there.');
    if ((await window.showInformationMessage(said, open)) === open) void commands.executeCommand('vscode.openFolder');
  }
  return folder;
}

/** `undefined` as soon as one question is closed without an answer. */
async function ask(): Promise<StarterAnswers | undefined> {
  const shop = await askFor(l10n.t('1 of 4: What is the shop called?'), l10n.t('My Shop'));
  if (shop === undefined) return undefined;
  const units = await choose<StarterAnswers['units']>(l10n.t('2 of 4: In which units shall numbers be shown?'), [
    { label: l10n.t('Millimetres and grams'), value: 'metric' },
    { label: l10n.t('Inches and ounces'), value: 'inch' },
  ]);
  if (units === undefined) return undefined;
  const kind = await choose<StarterAnswers['kind']>(l10n.t('3 of 4: What is the first model?'), [
    { label: l10n.t('A steel-string guitar'), value: 'steel-string' },
    { label: l10n.t('A classical guitar'), value: 'classical' },
  ]);
  if (kind === undefined) return undefined;
  const model = await askFor(l10n.t('4 of 4: What is that model called?'), l10n.t('First Model'));
  return model === undefined ? undefined : { shop, units, kind, model };
}

async function askFor(prompt: string, value: string): Promise<string | undefined> {
  return window.showInputBox({ prompt, value, ignoreFocusOut: true });
}

async function choose<T>(
  placeHolder: string,
  choices: readonly (QuickPickItem & { readonly value: T })[],
): Promise<T | undefined> {
  return (await window.showQuickPick(choices, { placeHolder, ignoreFocusOut: true }))?.value;
}

async function filesThere(folder: Uri, files: readonly StarterFile[]): Promise<readonly string[]> {
  const found = await Promise.all(
    files.map(({ name }) =>
      workspace.fs.stat(Uri.joinPath(folder, name)).then(
        () => [name],
        () => [],
      ),
    ),
  );
  return found.flat();
}

/** When there is nothing in the open folder yet. Once asked, never again in this folder. */
function offerOnce({ workspaceState }: ExtensionContext, instruments: Instruments): Disposable {
  const listening = instruments.onDidChange(() => {
    listening.dispose();
    offer().catch(console.error);
  });
  const offer = async () => {
    const { workspaceFolders } = workspace;
    if (!workspaceFolders || workspaceState.get(OFFERED)) return;
    // The server may have heard of an open file and not yet of the others.
    if ((await instruments.all()).length > 0 || (await isAnythingWritten(workspaceFolders))) return;
    await workspaceState.update(OFFERED, true);
    const start = l10n.t('Start a Shop');
    const said = l10n.t('There is no recipe in this folder yet. Shall a small shop be written to start from?');
    if ((await window.showInformationMessage(said, start, l10n.t('Not Now'))) === start) {
      void commands.executeCommand(COMMANDS.startShop);
    }
  };
  return listening;
}

async function isAnythingWritten(folders: readonly WorkspaceFolder[]): Promise<boolean> {
  const files = (await Promise.all(folders.map(({ uri }) => recipesIn(uri)))).flat();
  const sizes = await Promise.all(files.map(async (file) => (await workspace.fs.stat(file)).size));
  return sizes.some((size) => size > 0);
}

const OFFERED = 'offeredToStartAShop';
