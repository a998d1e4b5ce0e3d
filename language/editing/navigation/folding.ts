/** What can be folded away: definitions and blocks of more than one line, comments, regions somebody marked. */
import type { Span, Statement } from '../../facts/facts.js';
import { type BookmatchParser, type Lexeme, readLexemes } from '../../recipes/shelf/reader.js';
import { type Desk, shifted } from '../../checks/desk.js';

export interface Fold {
  readonly startLine: number;
  /** The last line that is hidden: a closing brace stays to be seen. */
  readonly endLine: number;
  readonly kind?: 'comment' | 'region';
}

export function foldingRanges(desk: Desk, parser: BookmatchParser, uri: string): readonly Fold[] {
  const text = desk.text(uri);
  if (text === undefined) return [];
  const blocks = (desk.shelf.file(uri)?.definitions ?? []).flatMap(({ definition, line }) =>
    [definition.span, ...blocksIn(definition.statements)].map((span) => shifted(span, line)),
  );
  const { words } = readLexemes(text, parser);
  const comments = words.filter(({ kind }) => kind === 'comment');
  const code = new Set(words.filter(({ kind }) => kind !== 'comment').map(({ span }) => span.start.line));
  return [
    ...blocks.map(({ start, end }) => ({ startLine: start.line, endLine: end.line - 1 })),
    ...comments.flatMap(({ span }): Fold[] => [
      { startLine: span.start.line, endLine: span.end.line, kind: 'comment' },
    ]),
    ...remarksIn(comments, code),
    ...regionsIn(comments),
  ].filter(({ startLine, endLine }) => endLine > startLine);
}

function blocksIn(statements: readonly Statement[]): readonly Span[] {
  return statements.flatMap((statement) =>
    'statements' in statement ? [statement.span, ...blocksIn(statement.statements)] : [],
  );
}

const REGION = /^\/\/\s*#(end)?region\b/;

/** `//` on line after line, with nothing else on them. */
function remarksIn(comments: readonly Lexeme[], code: ReadonlySet<number>): readonly Fold[] {
  const runs: { startLine: number; endLine: number; kind: 'comment' }[] = [];
  for (const { text, span } of comments) {
    const { line } = span.start;
    if (!text.startsWith('//') || REGION.test(text) || code.has(line)) continue;
    const last = runs.at(-1);
    if (last?.endLine === line - 1) last.endLine = line;
    else runs.push({ startLine: line, endLine: line, kind: 'comment' });
  }
  return runs;
}

/** From `// #region` to its `// #endregion`. */
function regionsIn(comments: readonly Lexeme[]): readonly Fold[] {
  const open: number[] = [];
  return comments.flatMap(({ text, span }): Fold[] => {
    const region = REGION.exec(text);
    if (!region) return [];
    if (region[1] === undefined) {
      open.push(span.start.line);
      return [];
    }
    const startLine = open.pop();
    return startLine === undefined ? [] : [{ startLine, endLine: span.start.line, kind: 'region' }];
  });
}
