import { type Disposable, type QuickPickItem, QuickPickItemKind, l10n, window } from 'vscode';
import {
  COMMANDS,
  inLabel,
  inMessage,
  GetRebase,
  ListParents,
  type PossibleParent,
} from '../../language/server/protocol.js';
import { chosenInstrument } from '../chosen-instrument.js';
import type { Instruments } from '../folder-instruments.js';
import type { LanguageClient } from '../language-client.js';
import { writeEdit } from '../write-edit.js';
import { makerCommand } from './maker-command.js';

/** "Set on Another Parent": any recipe that does not descend from this one; the same differences, from its own values. */
export function registerSetOnAnotherParent(client: LanguageClient, instruments: Instruments): Disposable {
  return makerCommand(COMMANDS.setOnAnotherParent, async (name?: unknown) => {
    const entry = await chosenInstrument(instruments, name);
    if (!entry) return;
    const parents = await client.sendRequest(ListParents, { recipe: entry.name });
    if (!parents) {
      tell(l10n.t('{0} is no recipe with a parent, so it cannot be set on another.', entry.name));
      return;
    }
    if (parents.length === 0) {
      tell(l10n.t('There is no other recipe that {0} could be set on.', entry.name));
      return;
    }
    const question = l10n.t('Which parent for {0}? Now it is {1}.', entry.name, entry.parent ?? '');
    const chosen = await window.showQuickPick(choices(parents), { placeHolder: question, matchOnDescription: true });
    if (chosen?.parent) await setOn(client, entry.name, chosen.parent);
  });
}

async function setOn(client: LanguageClient, recipe: string, parent: string): Promise<void> {
  const rebased = await client.sendRequest(GetRebase, { recipe, parent });
  if (rebased && 'reason' in rebased) {
    tell(rebased.reason);
    return;
  }
  await writeEdit(client, rebased?.edit, l10n.t('{0} could not be set on {1}.', recipe, parent));
}

interface Choice extends QuickPickItem {
  readonly parent?: string;
}

/** Those that can be had, then those of other models, then those that cannot be and why. */
function choices(parents: readonly PossibleParent[]): readonly Choice[] {
  const groups: readonly (readonly [title: string, parents: readonly PossibleParent[]])[] = [
    [l10n.t('of the same model'), parents.filter(({ isOfModel, reason }) => isOfModel && reason === undefined)],
    [l10n.t('of other models'), parents.filter(({ isOfModel }) => !isOfModel)],
    [l10n.t('not possible'), parents.filter(({ reason }) => reason !== undefined)],
  ];
  return groups.flatMap(([title, those]): readonly Choice[] =>
    those.length === 0 ? [] : [{ label: title, kind: QuickPickItemKind.Separator }, ...those.map(choice)],
  );
}

function choice({ name, model, isOfModel, reason }: PossibleParent): Choice {
  return {
    label: inLabel(name),
    parent: name,
    ...(isOfModel ? {} : { description: inLabel(model) }),
    ...(reason ? { detail: inLabel(reason) } : {}),
  };
}

function tell(sentence: string): void {
  void window.showInformationMessage(inMessage(sentence));
}
