/** A text as lines of words, each line with what may be done to it: laid out, only indented, or kept as it is. */
import type { Definition, FileFacts, Problem, Statement } from '../../facts/facts.js';
import type { Lexeme } from '../../recipes/shelf/reader.js';

export interface Line {
  readonly text: string;
  /** The line end as written; empty for the last line. */
  readonly ending: string;
  readonly words: readonly LineWord[];
  /** Blocks open where the line starts; of a line that starts by closing some, those left. */
  readonly depth: number;
  /** The line goes on with a statement of the line before. */
  readonly goesOn: boolean;
  readonly treatment: 'lay out' | 'indent' | 'keep';
  /** The line starts within a comment. */
  readonly inComment: boolean;
}

export interface LineWord {
  readonly kind: Lexeme['kind'];
  readonly text: string;
  /** Columns as written. */
  readonly start: number;
  readonly end: number;
  readonly opensStatement: boolean;
}

/** Problems of single words: the line around them still reads. */
const ONE_WORD: ReadonlySet<Problem['code']> = new Set(['unknown-unit', 'bad-number', 'bad-date', 'missing-name']);
const OF_BRACES: ReadonlySet<Problem['code']> = new Set(['unclosed-block', 'stray-brace']);

/** `delicate`: lines whose words are to stay as they are. */
export function linesOf(
  text: string,
  words: readonly Lexeme[],
  facts: FileFacts,
  delicate: ReadonlySet<number>,
): readonly Line[] {
  const parts = text.split(/(\r\n|\n|\r)/);
  const texts = parts.filter((_, i) => i % 2 === 0);
  const starts = statementStarts(facts);
  const troubled = troubledLines(facts);
  const within = definitionLines(facts);
  const lineWords: LineWord[][] = texts.map(() => []);
  const inComment = texts.map(() => false);
  for (const { kind, text: word, span } of words) {
    const { start, end } = span;
    const oneLine = start.line === end.line;
    lineWords[start.line]!.push({
      kind,
      text: oneLine ? word : texts[start.line]!.slice(start.character),
      start: start.character,
      end: oneLine ? end.character : texts[start.line]!.length,
      opensStatement: starts.has(`${start.line}:${start.character}`),
    });
    for (let line = start.line + 1; line <= end.line; line++) inComment[line] = true;
  }

  let depth = 0;
  return texts.map((line, i) => {
    const own = lineWords[i]!;
    const first = own[0];
    const standing = within[i] ?? 'outside';
    if (standing === 'outside') depth = 0;
    let closing = 0;
    while (own[closing]?.text === '}' && own[closing]!.kind === 'sign') closing++;
    const at = Math.max(0, depth - closing);
    for (const { kind, text: sign } of own) {
      if (kind === 'sign' && sign === '{') depth++;
      if (kind === 'sign' && sign === '}') depth = Math.max(0, depth - 1);
    }
    const hasOnlyComments = own.every(({ kind }) => kind === 'comment');
    const kept =
      inComment[i] ||
      (i === 0 && line.startsWith('\uFEFF')) ||
      standing === 'broken' ||
      (standing === 'outside' && !hasOnlyComments);
    const unread = troubled.has(i) || delicate.has(i);
    return {
      text: line,
      ending: parts[2 * i + 1] ?? '',
      words: withModesWhole(own),
      depth: at,
      goesOn:
        first !== undefined &&
        !unread &&
        !first.opensStatement &&
        first.kind !== 'comment' &&
        !(first.kind === 'sign' && (first.text === '{' || first.text === '}')),
      treatment: kept ? 'keep' : unread ? 'indent' : 'lay out',
      inComment: inComment[i]!,
    };
  });
}

/** `mode (2,1)` as one word: it stands before a colon like the name of any property. */
function withModesWhole(words: readonly LineWord[]): readonly LineWord[] {
  const whole: LineWord[] = [];
  for (let i = 0; i < words.length; i++) {
    const first = words[i]!;
    const [open, along, comma, across, close] = words.slice(i + 1, i + 6);
    const isMode =
      first.opensStatement && first.text === 'mode' && open?.text === '(' && comma?.text === ',' && close?.text === ')';
    if (isMode && along?.kind === 'number' && across?.kind === 'number') {
      whole.push({ ...first, text: `mode (${along.text},${across.text})`, end: close.end });
      i += 5;
    } else whole.push(first);
  }
  return whole;
}

function statementStarts({ definitions }: FileFacts): ReadonlySet<string> {
  const starts = new Set<string>();
  const add = (all: readonly Statement[], line: number) => {
    for (const statement of all) {
      const { start } = statement.span;
      starts.add(`${start.line + line}:${start.character}`);
      if ('statements' in statement) add(statement.statements, line);
    }
  };
  for (const { definition, line } of definitions) {
    starts.add(`${line + definition.span.start.line}:${definition.span.start.character}`);
    add(definition.statements, line);
  }
  return starts;
}

/** Lines with words nobody could read. */
function troubledLines({ definitions, problems }: FileFacts): ReadonlySet<number> {
  const lines = new Set<number>();
  const add = ({ code, span }: Problem, from: number) => {
    if (ONE_WORD.has(code)) return;
    for (let line = span.start.line; line <= span.end.line; line++) lines.add(line + from);
  };
  for (const { definition, line } of definitions) for (const problem of definition.problems) add(problem, line);
  for (const problem of problems) add(problem, 0);
  return lines;
}

/** For each line of a definition whether its braces are in order. A line that two share is as bad as the worse. */
function definitionLines({ definitions }: FileFacts): readonly ('sound' | 'broken' | undefined)[] {
  const lines: ('sound' | 'broken' | undefined)[] = [];
  for (const { definition, line } of definitions) {
    const standing = hasSoundBraces(definition) ? 'sound' : 'broken';
    for (let i = definition.span.start.line; i <= definition.span.end.line; i++) {
      if (lines[i + line] !== 'broken') lines[i + line] = standing;
    }
  }
  return lines;
}

function hasSoundBraces({ problems }: Definition): boolean {
  return !problems.some(({ code }) => OF_BRACES.has(code));
}
