/** Hover on a word of the language itself: one plain sentence and an example. */
import type { Definition, Position, Span, Statement } from '../../facts/facts.js';
import { contains } from '../../checks/desk.js';
import { KEYWORDS } from '../keywords.js';
import { example, paragraphs } from '../markdown.js';
import { type Wording } from '../../wording/wording.js';

export interface KeywordHover {
  readonly markdown: string;
  /** Lines counted from the definition's first. */
  readonly span: Span;
}

/** The keyword at a place that is on no name, path or value. */
export function keywordHover(
  definition: Definition,
  statement: Statement | undefined,
  at: Position,
  { text }: Wording,
): KeywordHover | undefined {
  const word = wordAt(definition, at);
  if (!word || isInText(statement, at)) return undefined;
  const around = statement ? statement.kind : contains(definition.head, at) ? 'head' : undefined;
  if (around === undefined) return undefined;
  // Inside a block of statements only its first word is a keyword; anything else there is a remark.
  const opens = statement && 'statements' in statement;
  if (
    opens &&
    (at.line !== statement.span.start.line || word.span.start.character !== statement.span.start.character)
  ) {
    return undefined;
  }
  const found = KEYWORDS.find((each) => each.word === word.text && each.around.includes(around));
  return (
    found && {
      markdown: paragraphs(`**${found.word}**: ${text(found.sentence)}`, example(found.example)),
      span: word.span,
    }
  );
}

function wordAt(definition: Definition, { line, character }: Position): { text: string; span: Span } | undefined {
  const text = definition.source.split(/\r\n|\n|\r/)[line];
  if (text === undefined) return undefined;
  // The definition's own text begins at its first word, which need not stand at the start of the line.
  const shift = line === 0 ? definition.span.start.character : 0;
  for (const match of text.matchAll(/[a-z]+/g)) {
    const start = match.index + shift;
    const end = start + match[0].length;
    if (character >= start && character <= end) {
      return { text: match[0], span: { start: { line, character: start }, end: { line, character: end } } };
    }
  }
  return undefined;
}

function isInText(statement: Statement | undefined, at: Position): boolean {
  if (!statement) return false;
  const texts = [
    'reason' in statement ? statement.reason : undefined,
    'text' in statement ? statement.text : undefined,
    'source' in statement ? statement.source : undefined,
  ];
  return texts.some((text) => text !== undefined && contains(text.span, at));
}
