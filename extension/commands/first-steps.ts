import { type ExtensionContext, Disposable, commands, window, workspace } from 'vscode';
import { COMMANDS } from '../../language/server/protocol.js';
import type { Instruments } from '../folder-instruments.js';
import { makerCommand } from './maker-command.js';

/**
 * "First Steps": the walkthrough from an empty folder to a printed sheet. Its first two steps tick when there is a folder
 * and when there is a recipe. The editor overlooks a key that is true before it knows the walkthrough, so the keys are
 * not told before a page such as that has been opened.
 */
export function registerFirstSteps({ extension }: ExtensionContext, instruments: Instruments): Disposable {
  let isOpened = false;
  const tick = async () => {
    isOpened = true;
    const hasFolder = (workspace.workspaceFolders ?? []).length > 0;
    await commands.executeCommand('setContext', 'bookmatch.firstSteps.folder', hasFolder);
    const hasRecipe = hasFolder && (await instruments.all()).length > 0;
    await commands.executeCommand('setContext', 'bookmatch.firstSteps.shop', hasRecipe);
  };
  const tickQuietly = () => void tick().catch(console.error);
  return Disposable.from(
    makerCommand(COMMANDS.firstSteps, async () => {
      await commands.executeCommand('workbench.action.openWalkthrough', `${extension.id}#firstRecipe`, false);
      await tick();
    }),
    // A page of the editor's own, such as a walkthrough, is a tab of no kind that extensions know.
    window.tabGroups.onDidChangeTabs(({ opened }) => {
      if (opened.some(({ input }) => input === undefined)) tickQuietly();
    }),
    instruments.onDidChange(() => {
      if (isOpened) tickQuietly();
    }),
  );
}
