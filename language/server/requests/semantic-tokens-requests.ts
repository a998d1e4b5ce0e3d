/**
 * Requests for semantic tokens: of a whole file, of what changed in it since, of a part of it. Every answer is worked out
 * from the text as it stands and encoded on its own, so that no two requests can get into each other's way; kept is only
 * what was last sent for each file, for telling the difference.
 */
import type {
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensLegend,
  SemanticTokensParams,
  SemanticTokensRangeParams,
} from 'vscode-languageserver';
import type { TokenKind, TokenModifier } from '../../editing/tokens/meaning.js';
import { type SemanticToken, semanticTokens } from '../../editing/tokens/semantic-tokens.js';
import type { Serving } from '../serving.js';

/** The protocol's own types of tokens, so that every theme and editor has a colour for them. */
const TYPES: Readonly<Record<TokenKind, string>> = {
  shop: 'namespace',
  species: 'type',
  wood: 'struct',
  model: 'interface',
  recipe: 'class',
  build: 'event',
  rig: 'method',
  strings: 'enum',
  appointments: 'macro',
  order: 'decorator',
  part: 'parameter',
  property: 'property',
  derived: 'function',
  unknown: 'variable',
  choice: 'enumMember',
  label: 'label',
  keyword: 'keyword',
  joining: 'modifier',
  number: 'number',
  unit: 'typeParameter',
  text: 'string',
  date: 'number',
  comment: 'comment',
  operator: 'operator',
};

const MODIFIERS: readonly TokenModifier[] = [
  'declaration',
  'modification',
  'readonly',
  'defaultLibrary',
  'documentation',
];

const TYPE_NAMES: readonly string[] = [...new Set(Object.values(TYPES))];

export const LEGEND: SemanticTokensLegend = { tokenTypes: [...TYPE_NAMES], tokenModifiers: [...MODIFIERS] };

export function serveSemanticTokens({ connection, session, answer, closed }: Serving): void {
  const { desk, parser } = session;
  const sent = new Map<string, SemanticTokens>();
  let answers = 0;
  closed((uri) => void sent.delete(uri));

  const tokensOf = (uri: string): SemanticTokens & { resultId: string } => {
    const tokens = { resultId: String(++answers), data: encoded(semanticTokens(desk, parser, uri)) };
    sent.set(uri, tokens);
    return tokens;
  };

  const { semanticTokens: on } = connection.languages;
  on.on(answer<SemanticTokensParams, SemanticTokens>({ data: [] }, ({ textDocument }) => tokensOf(textDocument.uri)));
  on.onDelta(
    answer<SemanticTokensDeltaParams, SemanticTokens | SemanticTokensDelta>(
      { data: [] },
      ({ textDocument: { uri }, previousResultId }) => {
        const before = sent.get(uri);
        const after = tokensOf(uri);
        // What the editor has is not what was last sent: it gets everything.
        if (before?.resultId !== previousResultId) return after;
        return { resultId: after.resultId, edits: difference(before.data, after.data) };
      },
    ),
  );
  on.onRange(
    answer<SemanticTokensRangeParams, SemanticTokens>({ data: [] }, ({ textDocument, range }) => ({
      data: encoded(semanticTokens(desk, parser, textDocument.uri, range)),
    })),
  );
}

/** Five numbers a token, each place counted from the one before (Language Server Protocol 3.17, Semantic Tokens). */
export function encoded(tokens: readonly SemanticToken[]): number[] {
  const data: number[] = [];
  let [line, character] = [0, 0];
  for (const token of tokens) {
    if (token.line !== line) character = 0;
    const bits = token.modifiers.reduce((sum, modifier) => sum | (1 << MODIFIERS.indexOf(modifier)), 0);
    const type = TYPE_NAMES.indexOf(TYPES[token.kind]);
    data.push(token.line - line, token.character - character, token.length, type, bits);
    [line, character] = [token.line, token.character];
  }
  return data;
}

/** One edit: what lies between the beginning and the end that two lists of numbers share. */
export function difference(before: readonly number[], after: readonly number[]): SemanticTokensDelta['edits'] {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  let end = 0;
  while (end < shorter - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  const deleteCount = before.length - start - end;
  if (deleteCount === 0 && after.length === before.length) return [];
  return [{ start, deleteCount, data: after.slice(start, after.length - end) }];
}
