import { type Range, window, workspace } from 'vscode';
import type { LanguageClient } from '../language-client.js';

type Place = {
  readonly uri: string;
  readonly range: Parameters<LanguageClient['protocol2CodeConverter']['asRange']>[0];
};

/** Show a place in the text, in the group where its file is open already, and put the cursor there. */
export async function goTo(client: LanguageClient, { uri, range }: Place): Promise<void> {
  const target = client.protocol2CodeConverter.asUri(uri);
  const selection = client.protocol2CodeConverter.asRange(range) as Range;
  const tabs = window.tabGroups.all.find((group) =>
    group.tabs.some(
      ({ input }) => (input as { uri?: { toString(): string } } | undefined)?.uri?.toString() === target.toString(),
    ),
  );
  const document = await workspace.openTextDocument(target);
  await window.showTextDocument(document, { selection, viewColumn: tabs?.viewColumn });
}
