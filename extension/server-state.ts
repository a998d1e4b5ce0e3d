import { Disposable, LanguageStatusSeverity, l10n, languages } from 'vscode';
import { State } from 'vscode-languageclient';
import { COMMANDS } from '../language/server/protocol.js';
import { documents, type LanguageClient } from './language-client.js';

/** Says beside the language mode whether the recipes are being checked. */
export function showServerState(client: LanguageClient): Disposable {
  const item = languages.createLanguageStatusItem('bookmatch.server', documents());
  item.name = 'Bookmatch';
  const show = (state: State) => {
    item.busy = state === State.Starting;
    item.severity = state === State.Stopped ? LanguageStatusSeverity.Error : LanguageStatusSeverity.Information;
    item.text = describe(state);
    item.command = state === State.Stopped ? { command: COMMANDS.restart, title: l10n.t('Restart') } : undefined;
  };
  show(client.state);
  return Disposable.from(
    item,
    client.onDidChangeState(({ newState }) => show(newState)),
  );
}

function describe(state: State): string {
  if (state === State.Running) return l10n.t('Recipes are checked as you type');
  if (state === State.Starting) return l10n.t('Getting ready to check recipes');
  return l10n.t('Recipes are not checked; the Bookmatch output says more');
}
