/**
 * A unit is a matter of place: a word or sign on the same line straight after a number is its unit, whatever it says, so
 * that `2.85 mmm` is a wrong unit and not a wrong line. Not a unit: a joining word (`x`, `by`, `because` …), and a word
 * followed by a colon or an opening brace, which starts the next statement.
 */
import { JOINING_WORDS } from './token.js';

/** The length of the unit that starts at `offset`, straight after a number that ended at `numberEnd`; 0 for none. */
export function unitLength(text: string, offset: number, numberEnd: number): number {
  if (!onlyBlanks(text, numberEnd, offset)) return 0;
  if (offset === numberEnd) {
    const mark = matchAt(MARK, text, offset);
    if (mark > 0) return mark;
  }
  const spaced = matchAt(SPACED, text, offset);
  if (spaced > 0) return spaced;
  const length = matchAt(UNIT, text, offset);
  if (length === 0) return 0;
  const word = text.slice(offset, offset + length);
  if (JOINING_WORDS.has(word)) return 0;
  if (matchAt(STARTS_STATEMENT, text, offset + length) > 0) return 0;
  // `5 in.` keeps its full stop; a sentence does not end inside `5 in..6 in`.
  return text[offset + length] === '.' && text[offset + length + 1] !== '.' ? length + 1 : length;
}

/** The sign between two sizes: `x` or `×` after a number or unit and before another number. */
export function timesLength(text: string, offset: number, previousEnd: number): number {
  return onlyBlanks(text, previousEnd, offset) ? matchAt(TIMES, text, offset) : 0;
}

/** Feet and inches, touching the number. */
const MARK = /''|["'\u2032\u2033\u2019\u201D]/y;

/** Units that builders write in two words. */
const SPACED =
  /(?:%[ \t]*(?:RH|MC|EMC)|(?:deg|\u00B0)[ \t]*[CF]|(?:lb\/)?(?:sq|cu)[ \t]+(?:in|ft)|per[ \t]+cent|N[ \t]+m)(?![\w.:/-])/y;

const LETTER =
  'A-Za-z_\\u00AA\\u00B5\\u00BA\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u1FFF\\u212A\\u212B\\u2126\\u00B0%\\u2030\\u2032\\u2033\\u2103\\u2109\\u00A2';
const FIGURE = '0-9\\u00B2\\u00B3\\u00B9\\u2070-\\u2079\\u207B';
/** A number stands next, perhaps after a blank. */
const NUMBER_NEXT = '(?=[ \\t]*[-+\\u2212\\u2013]?(?:\\.?\\d|[\\u00BC-\\u00BE\\u2153\\u2154\\u215B-\\u215E]))';
/** `560mmx212mm` is two sizes: no unit has an x before a figure. */
const UNIT = new RegExp(
  `[${LETTER}](?:(?!x${NUMBER_NEXT})[${LETTER}${FIGURE}]|[/\\u00B7\\u22C5*.-](?=[${LETTER}0-9])|/\\([${LETTER}${FIGURE}\u00B7\u22C5*.^]+\\)|\\^-?(?=\\d))*`,
  'y',
);
const STARTS_STATEMENT = /[ \t]*[:{]/y;
const TIMES = new RegExp(`[x\u00D7]${NUMBER_NEXT}`, 'y');

function matchAt(pattern: RegExp, text: string, offset: number): number {
  pattern.lastIndex = offset;
  return pattern.exec(text)?.[0].length ?? 0;
}

function onlyBlanks(text: string, from: number, to: number): boolean {
  for (let i = from; i < to; i++) {
    const c = text.charCodeAt(i);
    if (c !== 32 && c !== 9 && c !== 0xa0 && c !== 0x202f && c !== 0x2009) return false;
  }
  return true;
}
