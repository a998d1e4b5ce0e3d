import { type Uri, TabInputText, ViewColumn, window, workspace } from 'vscode';
import type { LanguageClient } from '../language-client.js';
import type { DrawnPart } from '../../language/server/protocol.js';

/** Show a place in the text beside the panel, where its file is open already if it is, and put the cursor there. */
export async function goTo(client: LanguageClient, { uri, range }: NonNullable<DrawnPart['source']>): Promise<void> {
  const place = client.protocol2CodeConverter;
  const target = place.asUri(uri);
  const document = await workspace.openTextDocument(target);
  await window.showTextDocument(document, { selection: place.asRange(range), viewColumn: columnFor(target) });
}

function columnFor(file: Uri): ViewColumn {
  const { all, activeTabGroup } = window.tabGroups;
  const open = all.find(({ tabs }) =>
    tabs.some(({ input }) => input instanceof TabInputText && input.uri.toString() === file.toString()),
  );
  const texts = open ?? all.find(({ activeTab }) => activeTab?.input instanceof TabInputText);
  // With nothing but panels open, the text goes beside them rather than over them.
  return texts?.viewColumn ?? (activeTabGroup.activeTab ? ViewColumn.Beside : ViewColumn.Active);
}
