import type { ExtensionContext } from 'vscode';
import { showChangeCount } from './change-count-status.js';
import { registerCompareRecipes } from './commands/compare-recipes.js';
import { registerCompareWithParent } from './commands/compare-with-parent.js';
import { registerFirstSteps } from './commands/first-steps.js';
import { registerRecordReading } from './commands/record-reading.js';
import { registerSetOnAnotherParent } from './commands/set-on-another-parent.js';
import { registerShowResolved } from './commands/show-resolved.js';
import { registerWaysToAWish } from './commands/ways-to-a-wish.js';
import { registerExpectationTests } from './expectation-controller.js';
import { Instruments } from './folder-instruments.js';
import { serveEditorFiles } from './editor-files.js';
import type { LanguageClient } from './language-client.js';
import { LibraryTexts } from './library-texts.js';
import { registerDrawing } from './panels/drawing-panel.js';
import { removeOldPrintables } from './panels/open-printable.js';
import { registerEffects } from './panels/effects-panel.js';
import { registerSheets } from './panels/sheet-panel.js';
import { registerSideBySide } from './panels/side-by-side-panel.js';
import { RecipeInHand } from './recipe-in-hand.js';
import { ResolvedTexts } from './resolved-texts.js';
import { registerSavePlan } from './save-plan.js';
import { registerRestart } from './server-restarts.js';
import { showServerState } from './server-state.js';
import { registerStartAShop } from './start-a-shop.js';
import { registerLineage } from './trees/lineage-view.js';
import { registerValues } from './trees/values-view.js';
import { tellMenus } from './when-there-are-recipes.js';
import { registerWoods } from './trees/woods-view.js';

/**
 * Called when a folder holds recipes or one is opened, with a client not yet started. The server starts beside; nothing
 * here waits for it.
 */
export function start(context: ExtensionContext, client: LanguageClient): void {
  const instruments = new Instruments(client);
  const inHand = new RecipeInHand(instruments);
  context.subscriptions.push(
    client,
    serveEditorFiles(client),
    showServerState(client),
    registerRestart(client),
    new ResolvedTexts(client, instruments),
    new LibraryTexts(client),
    registerCompareRecipes(instruments),
    registerCompareWithParent(instruments),
    registerShowResolved(instruments),
    registerSetOnAnotherParent(client, instruments),
    registerWaysToAWish(client, instruments),
    instruments,
    inHand,
    registerLineage(client, instruments, inHand),
    registerWoods(client, inHand),
    registerExpectationTests(client, instruments),
    registerStartAShop(context, client, instruments),
    registerFirstSteps(context, instruments),
    tellMenus(instruments),
    registerDrawing(context, client, instruments, inHand),
    registerValues(client, inHand),
    registerSideBySide(context, client, instruments),
    registerSheets(context, client, instruments),
    registerSavePlan(client, instruments),
    registerRecordReading(client),
    registerEffects(context, client, instruments),
    showChangeCount(client, inHand),
  );
  void removeOldPrintables(context);
  // A failed start is shown by the state item and in the output channel.
  client.start().catch(() => undefined);
}
