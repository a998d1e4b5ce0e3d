import { Disposable, StatusBarAlignment, ThemeColor, Uri, l10n, window } from 'vscode';
import type { LanguageClient } from './language-client.js';
import { type ChangeCount, COMMANDS, GetChangeCount, inLabel } from '../language/server/protocol.js';
import type { RecipeInHand } from './recipe-in-hand.js';
import { Answered } from './trees/answered.js';

/** In the status bar: the changes counted in the recipe at the cursor. A click lays it beside its parent. */
export function showChangeCount(client: LanguageClient, inHand: RecipeInHand): Disposable {
  const item = window.createStatusBarItem('bookmatch.changes', StatusBarAlignment.Left, 10);
  item.name = l10n.t('Changes of the recipe at the cursor');
  const count = new Answered<Counted | null>(client, null, async () => {
    const { current } = inHand;
    if (current?.kind !== 'recipe') return null;
    const found = await client.sendRequest(GetChangeCount, { recipe: current.name });
    return found && { ...found, recipe: current.name, file: Uri.parse(current.uri).toString() };
  });
  const show = () => {
    const shown = window.activeTextEditor?.document;
    // The recipe last worked on says nothing about another file.
    const isItsFile = shown?.languageId === 'bookmatch' && shown.uri.toString() === count.value?.file;
    if (!count.value || !isItsFile) {
      item.hide();
      return;
    }
    const { parent, recipe } = count.value;
    const told = inWords(count.value);
    item.text = `$(git-compare) ${inLabel(`${recipe}: ${told}`)}`;
    item.tooltip = l10n.t('{0} against {1}: show them side by side', recipe, parent);
    item.accessibilityInformation = { label: `${recipe}: ${told}` };
    item.backgroundColor = isTooMany(count.value) ? new ThemeColor('statusBarItem.warningBackground') : undefined;
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

interface Counted extends ChangeCount {
  readonly recipe: string;
  /** The file it stands in. */
  readonly file: string;
}

/** More than the shop allows, and nobody has said why. */
function isTooMany({ changes, limit, accepted }: ChangeCount): boolean {
  return changes > limit && accepted !== true;
}

function inWords({ changes, limit, substitution }: ChangeCount): string {
  if (substitution) return l10n.t('another set of the same wood');
  if (changes === 0) return l10n.t('no change counted');
  const counted = changes === 1 ? l10n.t('1 change') : l10n.t('{0} changes', changes);
  return changes > limit ? l10n.t('{0}, {1} allowed', counted, limit) : counted;
}
