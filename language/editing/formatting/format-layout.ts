/** One line laid out by itself: its indentation, and the space between each word and the next. */
import { canonicalSpelling } from '../../quantities/units.js';
import type { Line, LineWord } from './format-lines.js';

export interface LaidOut {
  readonly line: Line;
  /** Undefined for a line kept as it is. */
  readonly pieces?: Piece[];
}

export interface Piece {
  /** Spaces before it. */
  gap: number;
  readonly text: string;
  readonly word: LineWord;
}

/** Between statements on one line. */
const BETWEEN_STATEMENTS = 3;

export function layOut(line: Line): LaidOut {
  const { words, treatment } = line;
  const [first] = words;
  if (treatment === 'keep' || first === undefined) {
    return treatment === 'keep' ? { line } : { line, pieces: [] };
  }
  const indent = 2 * (line.depth + (line.goesOn ? 1 : 0));
  if (treatment === 'indent') {
    const whole = { ...first, text: line.text.slice(first.start).trimEnd() };
    return { line, pieces: [{ gap: indent, text: whole.text, word: whole }] };
  }
  return {
    line,
    pieces: words.map((word, i) => ({
      gap: i === 0 ? indent : gapBetween(words[i - 1]!, word),
      text: word.kind === 'unit' ? usualSpelling(word.text) : word.text,
      word,
    })),
  };
}

function usualSpelling(unit: string): string {
  return isMark(unit) ? unit : (canonicalSpelling(unit.replace(/\.$/, '')) ?? unit);
}

/** The marks of feet and inches, which touch their number. */
function isMark(unit: string): boolean {
  return /^[^\p{L}\p{N}%°]/u.test(unit);
}

function gapBetween(before: LineWord, word: LineWord): number {
  const asWritten = Math.min(word.start - before.end, 1);
  if (before.kind === 'comment' || word.kind === 'comment') return asWritten;
  if (word.opensStatement) return isSign(before, '{') ? 1 : BETWEEN_STATEMENTS;
  if (word.kind === 'unit') return isMark(word.text) ? asWritten : 1;
  if (isSign(word, ':') || isSign(word, ',') || isSign(word, ')') || isSign(before, '(')) return 0;
  return [before, word].some(isSetOff) || isSign(before, ':') || isSign(before, ',') ? 1 : asWritten;
}

/** Signs with a space on either side. */
function isSetOff(word: LineWord): boolean {
  return word.kind === 'sign' && /^(->|→|[{}x×±]|\+\/?-)$/.test(word.text);
}

function isSign(word: LineWord, sign: string): boolean {
  return word.kind === 'sign' && word.text === sign;
}
