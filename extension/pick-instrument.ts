import { type QuickPickItem, l10n, window } from 'vscode';
import { inLabel, type InstrumentEntry, type PrintableEntry } from '../language/server/protocol.js';

type Entry = InstrumentEntry | PrintableEntry;

interface Choice<E extends Entry> extends QuickPickItem {
  readonly entry: E;
}

/** Ask for one of `entries`, `first` at the top. `undefined` when the list is closed without a choice or is empty. */
export async function pickInstrument<E extends Entry>(
  entries: readonly E[],
  question: string,
  first?: E,
): Promise<E | undefined> {
  if (entries.length === 0) {
    void window.showInformationMessage(l10n.t('There is no recipe to choose from in the open folders.'));
    return undefined;
  }
  const others = entries.filter((entry) => entry !== first);
  const choices = (first ? [first, ...others] : others).map(choice);
  return (await window.showQuickPick(choices, { placeHolder: question, matchOnDescription: true }))?.entry;
}

function choice<E extends Entry>(entry: E): Choice<E> {
  return { label: inLabel(entry.name), description: inLabel(describe(entry)), entry };
}

function describe({ kind, parent }: Entry): string {
  if (kind === 'order') return l10n.t('order for {0}', parent ?? '');
  if (kind === 'model') return l10n.t('model');
  if (kind === 'build') return parent ? l10n.t('build of {0}', parent) : l10n.t('build');
  return parent ? l10n.t('recipe from {0}', parent) : l10n.t('recipe');
}
