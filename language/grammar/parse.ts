/**
 * From text to syntax trees, one for each definition. Only Langium's grammar and parser are used, none of its linking or
 * document services: names, values and answers live in `recipes/`.
 */
import { LIMITS } from '../facts/limits.js';
import type { Definition } from './generated/ast.js';
import { significantTokens } from './line-ends.js';
import { type TextProblem, within } from './problem.js';
import { type Attempt, type Repaired, headAlone, repair } from './repair.js';
import { type CutDefinition, cutIntoDefinitions } from './segments.js';
import { type ParserServices, createParserServices } from './services.js';
import { type Token, itemAt } from './token.js';
import { settleOpenTexts } from './unclosed-text.js';
import { lostLetter, unfitText } from './unfit-text.js';
import { ENGLISH, type Wording } from '../wording/wording.js';

export type { CutDefinition } from './segments.js';

export interface BookmatchParser {
  /** The language in which it says what is wrong. */
  readonly wording: Wording;
  /** The definitions of a text and their syntax trees. Never throws, whatever the text. */
  parse(text: string): ParsedFile;
  /** The cheap half: where the definitions are. */
  cut(text: string): CutFile;
  /** The other half: one definition of a cut file. */
  read(file: CutFile, definition: CutDefinition): ParsedDefinition;
}

export interface CutFile {
  readonly text: string;
  readonly definitions: readonly CutDefinition[];
  /** Every word and sign in order, comments included, white space not. */
  readonly tokens: readonly Token[];
  /** What is wrong outside the definitions. */
  readonly problems: readonly TextProblem[];
}

export interface ParsedDefinition {
  readonly cut: CutDefinition;
  readonly ast: Definition;
  /** What is wrong inside the definition; lines count from the file's first. */
  readonly problems: readonly TextProblem[];
}

export interface ParsedFile {
  readonly definitions: readonly ParsedDefinition[];
  readonly tokens: readonly Token[];
  readonly problems: readonly TextProblem[];
}

export interface ParserOptions {
  readonly selfCheck?: boolean;
  readonly wording?: Wording;
}

/**
 * Builds a parser from the grammar. This is the expensive part, so make one and keep it. With `selfCheck` the grammar is
 * checked first, and places where it allows two readings are written to the console; a test does that.
 */
export function createParser(options: ParserOptions = {}): BookmatchParser {
  return new GrammarParser(createParserServices(options.selfCheck ?? false), options.wording ?? ENGLISH);
}

class GrammarParser implements BookmatchParser {
  constructor(
    private readonly services: ParserServices,
    readonly wording: Wording,
  ) {}

  parse(text: string): ParsedFile {
    const file = this.cut(text);
    return {
      definitions: file.definitions.map((definition) => this.read(file, definition)),
      tokens: file.tokens,
      problems: file.problems,
    };
  }

  cut(text: string): CutFile {
    const unfit = unfitText(text, this.wording);
    if (unfit !== undefined) return { text, definitions: [], tokens: [], problems: [unfit] };
    const lexed = this.services.tokenize(text);
    const settled = settleOpenTexts(lexed.tokens, lexed.comments, this.services.types, this.wording);
    const cut = cutIntoDefinitions(text, significantTokens(settled.tokens), this.services.types, this.wording);
    const tokens = inOrder(settled.tokens, lexed.comments);
    const lost = lostLetter(tokens, this.wording);
    const problems = [...settled.problems, ...cut.problems, ...(lost ? [lost] : [])];
    const kept = this.within(cut.definitions);
    return { text, tokens, ...shareOut(kept.definitions, [...problems, ...kept.problems]) };
  }

  /** As many of a file’s definitions as are read, and a problem at the first that is not. */
  private within(all: readonly CutDefinition[]): Pick<CutFile, 'definitions' | 'problems'> {
    let words = 0;
    const most = Math.min(all.length, LIMITS.definitions);
    const end = all.findIndex(
      ({ tokens }, i) => i === most || (words += Math.min(tokens.length, LIMITS.words)) > LIMITS.fileWords,
    );
    const first = end < 0 ? undefined : all[end];
    if (!first) return { definitions: all, problems: [] };
    const message = this.wording
      .say`From here on this file is not read: it holds more than ${LIMITS.definitions} definitions, or more than ${LIMITS.fileWords} words. Put what follows into a file of its own.`;
    return {
      definitions: all.slice(0, end),
      problems: [{ code: 'too-long', message, place: first.head, suggestions: [] }],
    };
  }

  read({ text }: CutFile, cut: CutDefinition): ParsedDefinition {
    const { types } = this.services;
    const { say } = this.wording;
    const attempt = (tokens: readonly Token[], rule: 'Definition' | 'Body') => this.services.parse(text, tokens, rule);
    const mended = ({ tokens, problems }: Repaired): ParsedDefinition | undefined => {
      const { ast, errors } = attempt(tokens, 'Definition');
      return errors.length === 0 ? { cut, ast, problems: [...cut.problems, ...problems] } : undefined;
    };
    const given = (why: string): ParsedDefinition => {
      const { tokens, problems } = headAlone(cut.tokens, types, text, why);
      return { cut, ast: attempt(tokens, 'Definition').ast, problems: [...cut.problems, ...problems] };
    };
    if (cut.depth > LIMITS.blocks) {
      // A parser that follows would run out of room.
      return given(say`Blocks within blocks, more than ${LIMITS.blocks} deep, are not read.`);
    }
    if (cut.tokens.length > LIMITS.words) {
      return given(say`A definition of more than ${LIMITS.words} words and signs is not read.`);
    }
    const { ast, errors } = attempt(cut.tokens, 'Definition');
    if (errors.length === 0) return { cut, ast, problems: cut.problems };
    const failedAt = cut.tokens.find((token) => token === errors[0]?.token);
    const errorsIn: Attempt = (tokens, rule) => attempt(tokens, rule).errors;
    const repaired = repair(cut.tokens, failedAt, { types, text, wording: this.wording, attempt: errorsIn });
    return mended(repaired) ?? given(say`This definition does not read.`);
  }
}

/** Gives each definition the problems that stand within it. */
function shareOut(
  definitions: readonly CutDefinition[],
  problems: readonly TextProblem[],
): { definitions: CutDefinition[]; problems: TextProblem[] } {
  if (problems.length === 0) return { definitions: [...definitions], problems: [] };
  const left = new Set(problems);
  const shared = definitions.map((definition) => {
    const own = problems.filter((problem) => left.has(problem) && within(problem.place, definition.place));
    for (const problem of own) left.delete(problem);
    return own.length === 0 ? definition : { ...definition, problems: own };
  });
  return { definitions: shared, problems: [...left] };
}

function inOrder(tokens: readonly Token[], comments: readonly Token[]): Token[] {
  const merged: Token[] = [];
  let next = 0;
  for (const token of tokens) {
    if (token.tokenType.name === 'EOL') continue;
    while (next < comments.length && itemAt(comments, next).startOffset < token.startOffset)
      merged.push(itemAt(comments, next++));
    merged.push(token);
  }
  for (; next < comments.length; next++) merged.push(itemAt(comments, next));
  return merged;
}
