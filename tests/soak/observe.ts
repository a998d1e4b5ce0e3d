/** Everything a server has published, and what it answers to the questions an editor asks, as plain data to compare. */
import { SemanticTokensDeltaRequest, SemanticTokensRequest } from 'vscode-languageserver/node';
import type { Player } from './player.js';
import type { Question } from './questions.js';

export type Observed = Readonly<Record<string, unknown>>;

/** What the solver has not delivered yet is no answer to compare. */
const UNFINISHED = /being worked out|"(?:pending|waiting|working)"|takes the solver a moment/;

/** Tokens as last received for each file, for asking for what has changed in them since. */
export type Tokens = Map<string, { readonly resultId: string; readonly data: readonly number[] }>;

export async function observe(player: Player, questions: readonly Question[], tokens: Tokens): Promise<Observed> {
  const observed: Record<string, unknown> = {};
  for (const question of questions) {
    const isTokens = question.method === SemanticTokensRequest.method;
    const answer = isTokens ? await tokensOf(player, question, tokens) : await player.ask(question);
    observed[`${question.method} ${JSON.stringify(question.params)}`] = answer;
  }
  // Last, so that what the questions waited for is in.
  for (const [uri, { diagnostics }] of player.server.published) {
    if (diagnostics.length > 0) observed[`published ${uri}`] = diagnostics;
  }
  return observed;
}

/** Whole tokens at the first time, and afterwards by what changed, as editors ask. */
async function tokensOf(player: Player, question: Question, tokens: Tokens): Promise<unknown> {
  const { textDocument } = question.params as { readonly textDocument: { readonly uri: string } };
  const before = tokens.get(textDocument.uri);
  const answer = (await player.ask(
    before
      ? { method: SemanticTokensDeltaRequest.method, params: { textDocument, previousResultId: before.resultId } }
      : question,
  )) as
    | { resultId?: string; data?: number[]; edits?: { start: number; deleteCount: number; data?: number[] }[] }
    | undefined;
  if (!answer) return undefined;
  let data = answer.data ?? [...(before?.data ?? [])];
  // By the protocol all edits are to what was there before; they are worked in from the last to the first.
  for (const { start, deleteCount, data: inserted = [] } of [...(answer.edits ?? [])].sort(
    (a, b) => b.start - a.start,
  )) {
    data = [...data.slice(0, start), ...inserted, ...data.slice(start + deleteCount)];
  }
  if (answer.resultId !== undefined) tokens.set(textDocument.uri, { resultId: answer.resultId, data });
  return data;
}

/**
 * The first thing on which two differ, or that is not finished, in words; undefined when there is none. `skips`: what is
 * not finished is no difference.
 */
export function differenceOf(worn: Observed, fresh: Observed, skips: boolean): string | undefined {
  for (const key of new Set([...Object.keys(worn), ...Object.keys(fresh)])) {
    const [a, b] = [worn[key], fresh[key]].map((answer) => JSON.stringify(answer) as string | undefined);
    const isUnfinished = UNFINISHED.test(a ?? '') || UNFINISHED.test(b ?? '');
    if (isUnfinished ? skips : a === b) continue;
    const at = firstDifference(a ?? '', b ?? '');
    const about = (text: string | undefined) =>
      text === undefined ? 'nothing' : text.slice(Math.max(0, at - 60), at + 200);
    return `${key}\n  after the edits: ${about(a)}\n  a fresh server:  ${about(b)}`;
  }
  return undefined;
}

function firstDifference(a: string, b: string): number {
  let at = 0;
  while (at < a.length && a[at] === b[at]) at++;
  return at;
}
