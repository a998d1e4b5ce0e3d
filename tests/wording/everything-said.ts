/** Everything the program says of a shop: what each command prints, and what an editor is told at every place of a text. */
import { readdirSync, readFileSync } from 'node:fs';
import {
  CodeActionRequest,
  CodeLensRequest,
  CompletionRequest,
  DocumentLinkRequest,
  DocumentSymbolRequest,
  HoverRequest,
  InlayHintRequest,
  TypeHierarchyPrepareRequest,
} from 'vscode-languageserver/node';
import { CODES } from '../../language/checks/rules.js';
import {
  GetChangeCount,
  GetComparison,
  GetDrawing,
  GetLibraryText,
  GetModelEffects,
  GetResolvedText,
  GetSheet,
  GetValues,
  GetWoodChoice,
  LIBRARY_SCHEME,
  ListExpectations,
  ListInstruments,
  ListLineage,
  ListParents,
} from '../../language/server/protocol.js';
import { SHEET_KINDS } from '../../language/sheets/sheet.js';
import type { Translations } from '../../language/wording/wording.js';
import { bookmatchIn } from '../cli/terminal.js';
import { openEditor } from '../server/client.js';

export type Texts = Readonly<Record<string, string>>;

/** A text somebody reads, and where it was said. */
export interface Said {
  readonly where: string;
  readonly text: string;
}

export function filesIn(folder: string): Texts {
  const names = readdirSync(folder).filter((name) => name.endsWith('.bookmatch'));
  return Object.fromEntries(names.map((name) => [name, readFileSync(`${folder}/${name}`, 'utf8')]));
}

/** What each of these command lines prints, complaints and all. */
export async function saidInTerminal(
  files: Texts,
  translations: Translations,
  commands: readonly string[],
): Promise<readonly Said[]> {
  const told: Said[] = [];
  for (const command of commands) {
    const speaking = { locale: 'de', translations: () => Promise.resolve(translations) };
    const { out, err } = await bookmatchIn(speaking, files, ...command.split(' '));
    // Lines are broken to fit the terminal; sentences are not.
    for (const text of `${out}\n${err}`.split(/\n\s*\n/)) told.push({ where: command, text: joined(text) });
  }
  return told;
}

function joined(text: string): string {
  return text.replace(/\s+/g, ' ');
}

/** What an editor is told of these files, asked at every `stride`th word of each. */
export async function saidInEditor(files: Texts, translations: Translations, stride = 1): Promise<readonly Said[]> {
  const byUri = Object.fromEntries(Object.entries(files).map(([name, text]) => [`file:///shop/${name}`, text]));
  const { editor } = await openEditor(byUri, { locale: 'de', translations });
  const told: Said[] = [];
  const ask = async (where: string, method: { readonly method: string }, params?: object): Promise<unknown> => {
    const answer: unknown = await editor.connection
      .sendRequest(method.method, params)
      .catch((refusal: unknown) => ({ message: String(refusal) }));
    for (const text of textsIn(answer)) told.push({ where: `${method.method} ${where}`, text });
    return answer;
  };
  for (const [uri, text] of Object.entries(byUri)) {
    await editor.settled(() => editor.open(uri, text));
    told.push(...textsIn(editor.published.get(uri)).map((said) => ({ where: `findings ${uri}`, text: said })));
    const textDocument = { uri };
    const whole = { start: { line: 0, character: 0 }, end: { line: 10_000, character: 0 } };
    await ask(uri, CodeLensRequest, { textDocument });
    await ask(uri, InlayHintRequest, { textDocument, range: whole });
    await ask(uri, DocumentSymbolRequest, { textDocument });
    await ask(uri, DocumentLinkRequest, { textDocument });
    for (const [i, position] of wordsOf(text).entries()) {
      if (i % stride !== 0) continue;
      const where = `${uri}:${position.line + 1}:${position.character + 1}`;
      await ask(where, HoverRequest, { textDocument, position });
      await ask(where, CompletionRequest, { textDocument, position });
      const range = { start: position, end: position };
      await ask(where, CodeActionRequest, { textDocument, range, context: { diagnostics: [] } });
      await ask(where, TypeHierarchyPrepareRequest, { textDocument, position });
    }
  }
  const instruments = (await ask('', ListInstruments)) as readonly {
    readonly name: string;
    readonly parent?: string;
  }[];
  for (const { name, parent } of instruments) {
    await ask(name, GetResolvedText, { name });
    await ask(name, GetValues, { name });
    await ask(name, GetDrawing, { name });
    await ask(name, GetChangeCount, { recipe: name });
    await ask(name, GetWoodChoice, { recipe: name });
    await ask(name, ListParents, { recipe: name });
    await ask(name, GetModelEffects, { model: name });
    if (parent !== undefined) await ask(name, GetComparison, { a: parent, b: name });
    for (const kind of SHEET_KINDS) await ask(`${kind} ${name}`, GetSheet, { name, kind });
  }
  await ask('orders', GetSheet, { name: '', kind: 'orders' });
  await ask('', ListExpectations);
  await ask('', ListLineage);
  for (const code of CODES) await ask(code, GetLibraryText, { uri: `${LIBRARY_SCHEME}:/findings/${code}.md` });
  await editor.quit();
  return told;
}

/** Where each word of a text begins, and where each line ends. */
function wordsOf(text: string) {
  return text.split('\n').flatMap((line, at) =>
    [...line.matchAll(/[\w.%"-]+|$/g)].map(({ index }) => ({
      line: at,
      character: index === line.length ? index : index + 1,
    })),
  );
}

/** Fields that hold what programs read, or a recipe’s own text. */
const FOR_PROGRAMS =
  /^(uri|target|command|arguments|source|code|href|newText|insertText|filterText|sortText|data|kind|key|path|name|names|state|sort|outcome|severity|verdict|id)$/;

function textsIn(value: unknown, field = ''): readonly string[] {
  if (typeof value === 'string') return FOR_PROGRAMS.test(field) ? [] : [field === 'html' ? withoutTags(value) : value];
  if (Array.isArray(value)) return value.flatMap((each) => textsIn(each, field));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([inner, each]) => textsIn(each, inner));
}

function withoutTags(html: string): string {
  return html.replace(/<(style|script)[^]*?<\/\1>/g, '').replace(/<[^>]*>/g, ' · ');
}
