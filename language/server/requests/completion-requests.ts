/** Requests that help with the text being typed: completion. */
import type { CompletionParams } from 'vscode-languageserver';
import { CompletionItemKind, InsertTextFormat, MarkupKind } from 'vscode-languageserver-types';
import type { CompletionItem, CompletionList } from 'vscode-languageserver-types';
import { completionsAt } from '../../editing/completion/completion.js';
import type { Completion, CompletionKind } from '../../editing/completion/offer.js';
import { filledIn } from '../../editing/completion/snippet.js';
import type { Serving } from '../serving.js';

const KINDS: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  keyword: CompletionItemKind.Keyword,
  part: CompletionItemKind.Module,
  property: CompletionItemKind.Property,
  derived: CompletionItemKind.Function,
  unit: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
  choice: CompletionItemKind.EnumMember,
  wood: CompletionItemKind.Constant,
  definition: CompletionItemKind.Class,
  change: CompletionItemKind.Event,
  code: CompletionItemKind.Reference,
};

const NONE: CompletionList = { isIncomplete: false, items: [] };

export function serveCompletion({ connection, session, answer, client }: Serving): void {
  const snippets = client.textDocument?.completion?.completionItem?.snippetSupport === true;
  const { desk } = session;

  connection.onCompletion(
    answer<CompletionParams, CompletionList>(NONE, ({ textDocument, position }) => {
      const { items, incomplete } = completionsAt(desk, textDocument.uri, position);
      return { isIncomplete: incomplete, items: items.map((item) => toCompletionItem(item, snippets)) };
    }),
  );
}

/** An editor that knows no snippets gets their text, the blanks filled in as suggested. */
function toCompletionItem(completion: Completion, snippets: boolean): CompletionItem {
  const isSnippet = snippets && completion.snippet === true;
  const newText = completion.snippet && !snippets ? filledIn(completion.insert).text : completion.insert;
  return {
    label: completion.label,
    kind: KINDS[completion.kind],
    ...(completion.detail === undefined ? {} : { labelDetails: { description: completion.detail } }),
    ...(completion.sentence === undefined
      ? {}
      : { documentation: { kind: MarkupKind.Markdown, value: completion.sentence } }),
    insertTextFormat: isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    textEdit: { range: completion.range, newText },
    sortText: sortText(completion),
    ...(completion.synonyms ? { filterText: [completion.label, ...completion.synonyms].join(' ') } : {}),
  };
}

/** Ranks are small numbers, perhaps negative or with a fraction; editors sort by text. */
function sortText({ rank, label }: Completion): string {
  return `${String(Math.round((rank + 1000) * 1000)).padStart(8, '0')} ${label}`;
}
