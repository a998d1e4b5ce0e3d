/**
 * Cuts a file into definitions with balanced braces, before anything is parsed. A forgotten or surplus brace is settled
 * here, once, with one problem, so that every definition after it keeps its meaning.
 */
import { didYouMeanKind } from './explain.js';
import { closeByIndentation } from './indentation.js';
import { type Place, type TextProblem, placeOf } from './problem.js';
import { RELATION_WORDS } from './relation.js';
import { DEFINITION_WORDS, type Token, type TokenTypes, endOffset, isWord, itemAt, kindOf, lineOf } from './token.js';
import { type Wording } from '../wording/wording.js';

export interface CutDefinition {
  /** From its first word to its closing brace, which may stand for nothing written. */
  readonly tokens: readonly Token[];
  /** Its own text. */
  readonly source: string;
  readonly place: Place;
  /** From the first word to the last before the opening brace. */
  readonly head: Place;
  /** How many blocks stand within one another. */
  readonly depth: number;
  /** What is wrong with its braces and quotes. */
  readonly problems: readonly TextProblem[];
}

export interface Segments {
  readonly definitions: readonly CutDefinition[];
  /** Problems with braces, and with lines outside any definition. */
  readonly problems: readonly TextProblem[];
}

/** More findings than this about lines outside definitions help nobody. */
const MOST_STRAY_LINES = 100;

export function cutIntoDefinitions(
  text: string,
  tokens: readonly Token[],
  types: TokenTypes,
  wording: Wording,
): Segments {
  const cutter = new Cutter(text, tokens, types, wording);
  cutter.run();
  return cutter;
}

class Cutter implements Segments {
  readonly definitions: CutDefinition[] = [];
  readonly problems: TextProblem[] = [];
  private strayLines = 0;

  constructor(
    private readonly text: string,
    private readonly tokens: readonly Token[],
    private readonly types: TokenTypes,
    private readonly wording: Wording,
  ) {}

  run(): void {
    let at = 0;
    while (at < this.tokens.length) {
      const token = itemAt(this.tokens, at);
      if (kindOf(token) === 'EOL') at++;
      else if (kindOf(token) === '}') {
        this.strayBrace(token);
        at++;
      } else if (this.looksLikeDefinition(at)) at = this.definition(at);
      else at = this.outside(at);
    }
  }

  /** Takes the definition that starts at a token; answers the index after it. */
  private definition(start: number): number {
    const taken: Token[] = [];
    const open: Token[] = [];
    let at = start;
    for (; at < this.tokens.length; at++) {
      const token = itemAt(this.tokens, at);
      const kind = kindOf(token);
      if (open.length === 0 && (kind === 'EOL' || kind === '}')) break; // no body yet
      if (at > start && this.startsDefinition(at)) break;
      if (kind === '{') open.push(token);
      if (kind === '}') {
        if (open.length === 1 && this.closesTooEarly(at)) {
          this.strayBrace(token);
          continue;
        }
        open.pop();
      }
      taken.push(token);
      if (kind === '}' && open.length === 0) {
        this.keep(taken);
        return at + 1;
      }
    }
    this.keep(open.length === 0 ? taken : this.closeUnclosed(taken, open));
    return at;
  }

  private keep(tokens: readonly Token[]): void {
    const [first, last] = [itemAt(tokens, 0), itemAt(tokens, tokens.length - 1)];
    const brace = tokens.findIndex((token) => kindOf(token) === '{');
    this.definitions.push({
      tokens,
      source: this.text.slice(first.startOffset, endOffset(last)),
      place: placeOf(first, last),
      head: placeOf(first, (brace < 0 ? last : tokens[brace - 1]) ?? first),
      depth: depthOf(tokens),
      problems: [],
    });
  }

  private closeUnclosed(taken: readonly Token[], open: readonly Token[]): Token[] {
    const closed = closeByIndentation(taken, open.length, this.types);
    for (const brace of closed.unclosed) {
      this.problems.push({
        code: 'unclosed-block',
        message: this.wording.say`This { is never closed: a } is missing.`,
        place: placeOf(brace, brace),
        suggestions: [],
      });
    }
    return closed.tokens;
  }

  private looksLikeDefinition(at: number): boolean {
    return DEFINITION_WORDS.has(this.tokens[at]?.image ?? '') && kindOf(this.tokens[at + 1]) !== ':';
  }

  /** A definition word that starts a line while braces are open: the braces were forgotten. */
  private startsDefinition(at: number): boolean {
    const token = itemAt(this.tokens, at);
    if (!this.looksLikeDefinition(at)) return false;
    const before = this.tokens[at - 1];
    if (before !== undefined && lineOf(before) === lineOf(token) && kindOf(before) !== 'EOL') return false;
    const name = this.tokens[at + 1];
    if (name === undefined || lineOf(name) !== lineOf(token)) return false;
    if (!isWord(name) && kindOf(name) !== 'NUMBER') return false;
    if (token.startColumn === 1) return true;
    return this.headReachesBrace(at + 2);
  }

  /** `NAME {` or `NAME from NAME {`, which no statement looks like. */
  private headReachesBrace(at: number): boolean {
    if (kindOf(this.tokens[at]) === '{') return true;
    const relation = this.tokens[at]?.image ?? '';
    return RELATION_WORDS.has(relation) && isWord(this.tokens[at + 1]) && kindOf(this.tokens[at + 2]) === '{';
  }

  /** True for a `}` that would end the definition although its body plainly goes on to another `}`. */
  private closesTooEarly(at: number): boolean {
    let depth = 0;
    let next = at + 1;
    while (kindOf(this.tokens[next]) === 'EOL') next++;
    const after = this.tokens[next];
    if (after === undefined || kindOf(after) === '}' || this.looksLikeDefinition(next)) return false;
    for (let i = next; i < this.tokens.length; i++) {
      if (this.startsDefinition(i)) return false;
      const kind = kindOf(this.tokens[i]);
      if (kind === '{') depth++;
      if (kind === '}' && --depth < 0) return true;
    }
    return false;
  }

  private strayBrace(token: Token): void {
    this.problems.push({
      code: 'stray-brace',
      message: this.wording.say`This } closes nothing.`,
      place: placeOf(token, token),
      suggestions: [''],
    });
  }

  /** One line that belongs to no definition, with the block that hangs on it. */
  private outside(start: number): number {
    const first = itemAt(this.tokens, start);
    let last = first;
    let depth = 0;
    let at = start;
    for (; at < this.tokens.length; at++) {
      const token = itemAt(this.tokens, at);
      const kind = kindOf(token);
      if (depth === 0 && (kind === 'EOL' || kind === '}')) break;
      if (at > start && this.startsDefinition(at)) break;
      if (kind === '{') depth++;
      if (kind === '}') depth--;
      if (kind !== 'EOL' && lineOf(token) === lineOf(first)) last = token;
      if (kind === '}' && depth === 0) {
        at++;
        break;
      }
    }
    if (this.strayLines++ < MOST_STRAY_LINES) {
      const kind = didYouMeanKind(this.tokens.slice(start, at), this.wording);
      this.problems.push({
        code: 'unreadable-line',
        message: kind.message,
        place: kind.of
          ? placeOf(...kind.of)
          : kind.suggestions.length > 0
            ? placeOf(first, first)
            : placeOf(first, last),
        suggestions: kind.suggestions,
      });
    }
    return at;
  }
}

function depthOf(tokens: readonly Token[]): number {
  let depth = 0;
  let deepest = 0;
  for (const token of tokens) {
    if (kindOf(token) === '{') deepest = Math.max(deepest, ++depth);
    if (kindOf(token) === '}') depth--;
  }
  return deepest;
}
