import { Disposable, StatusBarAlignment, ThemeColor, l10n, window } from 'vscode';
import type { LanguageClient } from './language-client.js';
import { type ChangeCount, COMMANDS, GetChangeCount } from '../language/server/protocol.js';
import type { RecipeInHand } from './recipe-in-hand.js';
import { Answered } from './trees/answered.js';

/** In the status bar: the changes counted in the recipe at the cursor. A click lays it beside its parent. */
export function showChangeCount(client: LanguageClient, inHand: RecipeInHand): Disposable {
  const item = window.createStatusBarItem('bookmatch.changes', StatusBarAlignment.Left, 10);
  item.name = l10n.t('Changes of the recipe at the cursor');
  const count = new Answered<(ChangeCount & { readonly recipe: string }) | null>(client, null, async () => {
    const { current } = inHand;
    if (current?.kind !== 'recipe') return null;
    const found = await client.sendRequest(GetChangeCount, { recipe: current.name });
    return found && { ...found, recipe: current.name };
  });
  const show = () => {
    const isText = window.activeTextEditor?.document.languageId === 'bookmatch';
    if (!count.value || !isText) {
      item.hide();
      return;
    }
    const { parent, recipe, changes, limit } = count.value;
    const counted = changes === 1 ? l10n.t('1 change') : l10n.t('{0} changes', changes);
    item.text = `$(git-compare) ${l10n.t('{0} of {1} allowed', counted, limit)}`;
    item.tooltip = l10n.t('{0} against {1}: show them side by side', recipe, parent);
    item.accessibilityInformation = { label: `${recipe}: ${l10n.t('{0} of {1} allowed', counted, limit)}` };
    item.backgroundColor = changes > limit ? new ThemeColor('statusBarItem.warningBackground') : undefined;
    item.command = { command: COMMANDS.showSideBySide, title: item.tooltip, arguments: [parent, recipe] };
    item.show();
  };
  return Disposable.from(
    item,
    count,
    count.onDidChange(show),
    window.onDidChangeActiveTextEditor(show),
    inHand.onDidChange(() => void count.look()),
  );
}
