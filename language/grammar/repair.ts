/**
 * Reads a definition with unreadable lines in it. A definition's body is a run of pieces between line ends and braces,
 * and each piece is right or wrong by itself; so each is tried alone, and only the words at fault are replaced by one
 * `BROKEN` token, which the grammar takes for a statement. Costs one extra pass over a broken definition, and nothing
 * for a sound one.
 */
import type { ParseResult } from 'langium';
import { STATEMENT_WORDS } from '../facts/statement-words.js';
import { explain } from './explain.js';
import { type TextProblem, placeOf } from './problem.js';
import {
  type Token,
  type TokenTypes,
  isText,
  isWord,
  itemAt,
  kindOf,
  lineOf,
  mergedToken,
  virtualToken,
} from './token.js';
import { type Wording } from '../wording/wording.js';

export type Attempt = (tokens: readonly Token[], rule: 'Definition' | 'Body') => ParseResult['parserErrors'];

export interface Repaired {
  readonly tokens: Token[];
  readonly problems: TextProblem[];
}

/** What repairing needs: the words of the grammar, the text of the file, the language, and somebody who reads. */
export interface RepairShop {
  readonly types: TokenTypes;
  readonly text: string;
  readonly wording: Wording;
  readonly attempt: Attempt;
}

/** `failedAt` is the token at which the parser gave up; what stands before it is sound. */
export function repair(
  tokens: readonly Token[],
  failedAt: Token | undefined,
  { types, text, wording, attempt }: RepairShop,
): Repaired {
  return new Repair(types, text, wording, attempt).run(tokens, failedAt);
}

/** The definition with its head alone, and one problem that says why its body is not read. */
export function headAlone(tokens: readonly Token[], types: TokenTypes, text: string, why: string): Repaired {
  const from = tokens.findIndex((token) => kindOf(token) === '{');
  const [first, last, broken] = [tokens[from + 1], tokens[tokens.length - 2], types['BROKEN']];
  const place = placeOf(itemAt(tokens, 0), itemAt(tokens, Math.max(from - 1, 0)));
  const problems: TextProblem[] = [{ code: 'unreadable-line', message: why, place, suggestions: [] }];
  if (from < 0 || !first || !last || !broken) return { tokens: [...tokens], problems };
  const words = tokens.slice(1, from).filter((token) => isWord(token) || kindOf(token) === 'NUMBER');
  const body = [itemAt(tokens, from), mergedToken(broken, first, last, text), itemAt(tokens, tokens.length - 1)];
  return { tokens: [itemAt(tokens, 0), ...words, ...body], problems };
}

class Repair {
  private readonly problems: TextProblem[] = [];
  private readonly reported = new Set<number>();
  private readonly broken: Token['tokenType'];
  private readonly open: Token['tokenType'];
  private readonly close: Token['tokenType'];

  constructor(
    types: TokenTypes,
    private readonly text: string,
    private readonly wording: Wording,
    private readonly attempt: Attempt,
  ) {
    const [broken, open, close] = [types['BROKEN'], types['{'], types['}']];
    if (!broken || !open || !close) throw new Error('The grammar lacks a token that repairing needs.');
    this.broken = broken;
    this.open = open;
    this.close = close;
  }

  run(tokens: readonly Token[], failedAt: Token | undefined): Repaired {
    const sound = failedAt ? tokens.indexOf(failedAt) : tokens.length - 1;
    const bodyStart = tokens.findIndex((token) => kindOf(token) === '{');
    const headEnd = bodyStart < 0 ? tokens.length : bodyStart;
    const mended: Token[] = [itemAt(tokens, 0), ...this.head(tokens.slice(1, headEnd), tokens[bodyStart])];
    let piece: Token[] = [];
    for (let i = headEnd; i < tokens.length; i++) {
      const token = itemAt(tokens, i);
      const kind = kindOf(token);
      if (kind !== '{' && kind !== '}' && kind !== 'EOL') {
        piece.push(token);
        continue;
      }
      mended.push(...(i === headEnd || i < sound ? piece : this.piece(piece, token)), token);
      piece = [];
    }
    mended.push(...piece);
    return { tokens: mended, problems: this.problems };
  }

  private head(words: readonly Token[], brace: Token | undefined): Token[] {
    const bad = words.find((token) => !isWord(token) && kindOf(token) !== 'NUMBER');
    if (bad === undefined) return [...words];
    this.report(words, brace, true);
    return words.map((token) =>
      isWord(token) || kindOf(token) === 'NUMBER' ? token : mergedToken(this.broken, token, token, this.text),
    );
  }

  /** The piece as it is when it reads, otherwise with what is at fault replaced. `end` is what follows it. */
  private piece(piece: readonly Token[], end: Token): Token[] {
    if (piece.length === 0 && kindOf(end) !== '{') return [];
    let fault = this.faultIn(piece, end);
    if (fault === undefined) return [...piece];
    this.report(piece, end, false);
    // A block without a name: the brace itself stands for the missing word, because a tree needs a place.
    if (piece.length === 0) return [mergedToken(this.broken, end, end, this.text)];
    let mended = [...piece];
    for (let round = 0; round < MOST_FAULTS_IN_A_PIECE; round++) {
      const [from, to] = aroundFault(mended, fault.at, fault.startsStatement);
      mended = [...mended.slice(0, from), this.merge(mended, from, to), ...mended.slice(to + 1)];
      fault = this.faultIn(mended, end);
      if (fault === undefined) return mended;
    }
    return [this.merge(piece, 0, piece.length - 1)];
  }

  private merge(piece: readonly Token[], from: number, to: number): Token {
    return mergedToken(this.broken, itemAt(piece, from), itemAt(piece, to), this.text);
  }

  private faultIn(piece: readonly Token[], end: Token): { at: number; startsStatement: boolean } | undefined {
    const first = piece[0] ?? end;
    const hung = kindOf(end) === '{' ? [end, virtualToken(this.close, end)] : [];
    const last = hung[0] ?? piece[piece.length - 1] ?? end;
    const tried = [virtualToken(this.open, first, true), ...piece, ...hung, virtualToken(this.close, last)];
    const error = this.attempt(tried, 'Body')[0];
    if (error === undefined) return undefined;
    const at = tried.indexOf(error.token) - 1;
    const stack = error.context.ruleStack;
    const rule = stack[stack.length - 1] ?? '';
    return {
      at: at < 0 || at >= piece.length ? piece.length : at,
      startsStatement: /^(Body|Statement)/.test(rule),
    };
  }

  /** One problem a line, however many of its pieces are at fault. */
  private report(piece: readonly Token[], end: Token | undefined, inHead: boolean): void {
    const first = piece[0] ?? end;
    if (first === undefined || this.reported.has(lineOf(first))) return;
    this.reported.add(lineOf(first));
    const { message, suggestions, of } = explain(piece, end, inHead, this.wording);
    const last = piece[piece.length - 1] ?? first;
    this.problems.push({
      code: 'unreadable-line',
      message,
      place: of ? placeOf(of[0], of[1]) : placeOf(first, last),
      suggestions,
    });
  }
}

/** A piece with more faults than this is given up whole. */
const MOST_FAULTS_IN_A_PIECE = 4;

/** The first and last token of the statement at fault: from where it starts to before the next one starts. */
function aroundFault(piece: readonly Token[], at: number, startsStatement: boolean): [number, number] {
  const fault = Math.min(at, piece.length - 1);
  const starts = statementStarts(piece);
  const from =
    startsStatement && at < piece.length && isWord(piece[fault])
      ? fault
      : Math.max(0, ...starts.filter((start) => start <= fault));
  const next = starts.find((start) => start > fault && start > from);
  return [from, (next ?? piece.length) - 1];
}

/** Where statements may start: a word before a colon, or a statement word before what it takes. */
function statementStarts(piece: readonly Token[]): number[] {
  const starts: number[] = [];
  for (let i = 0; i < piece.length; i++) {
    const token = itemAt(piece, i);
    const next = piece[i + 1];
    const opened = starts[starts.length - 1];
    const belongsToOpened = opened === i - 1 && TAKES_PATH.has(piece[opened]?.image ?? '');
    if (belongsToOpened || !isWord(token)) continue;
    const opensStatement =
      STATEMENT_WORDS.has(token.image) && (isWord(next) || isText(next) || STARTS_OF_REST.has(kindOf(next)));
    if (kindOf(next) === ':' || opensStatement) starts.push(i);
  }
  return starts;
}

const STARTS_OF_REST: ReadonlySet<string> = new Set(['NUMBER', 'DATE', '(']);
const TAKES_PATH: ReadonlySet<string> = new Set(['change', 'expect', 'add', 'drop', 'hold', 'with', 'accept']);
