/**
 * The tokens of the language. The grammar names them; here they get what a plain pattern cannot say:
 * - every keyword is also a `PATH`, so that no word is reserved;
 * - what counts as a unit, a size sign or a number depends on the word before;
 * - text no rule knows (`STRAY`, an unclosed text or comment) is still a token, so that it costs a line and not the file.
 */
import { DefaultTokenBuilder } from 'langium';
import type { GrammarAST } from 'langium';
import { type Token, type TokenType, endOffset } from './token.js';
import { timesLength, unitLength } from './unit-word.js';

export class BookmatchTokenBuilder extends DefaultTokenBuilder {
  override buildTokens(grammar: GrammarAST.Grammar): TokenType[] {
    const built = super.buildTokens(grammar);
    if (!Array.isArray(built)) throw new Error('The tokens of the grammar are expected as one list.');
    const byName = new Map(built.map((type) => [type.name, type]));
    const named = (name: string): TokenType => {
      const type = byName.get(name);
      if (type === undefined) throw new Error(`The grammar has no token ${name}.`);
      return type;
    };
    const path = Object.assign(named('PATH'), { PATTERN: PATH });
    const string = named('STRING');
    const words = built.filter((type) => /^[a-z]+$/.test(type.name));
    for (const word of words) Object.assign(word, { CATEGORIES: [path], LONGER_ALT: [path] });
    const signs = built.filter((type) => /^\W$/.test(type.name));

    const openText: TokenType = { name: 'OPEN_TEXT', PATTERN: /["\u201C][^\n\r]*/, CATEGORIES: [string] };
    const openComment: TokenType = { name: 'OPEN_COMMENT', PATTERN: /\/\*[^\n\r]*/, GROUP: 'hidden' };
    const stray = contextual({ name: 'STRAY' }, matchAnything, EVERY_START);
    // Each pattern is tried in this order.
    return [
      contextual(named('TIMES'), matchTimes, [0x78, 0xd7]),
      contextual(named('UNIT'), matchUnit, UNIT_STARTS),
      named('SPACE'),
      named('EOL'),
      Object.assign(named('LINE_COMMENT'), { GROUP: 'hidden' }),
      Object.assign(named('BLOCK_COMMENT'), { GROUP: 'hidden' }),
      openComment,
      string,
      openText,
      named('DATE'),
      named('PLUS_MINUS'),
      named('ARROW'),
      ...words,
      path,
      named('DOTS'),
      contextual(named('NUMBER'), matchNumber, NUMBER_STARTS),
      ...signs,
      Object.assign(named('BROKEN'), { PATTERN: NEVER, START_CHARS_HINT: [] }),
      stray,
    ];
  }
}

/** Letters as in the names of XML 1.0 (W3C, 5th edition, production 4), without the superscripts and signs. */
const LETTER =
  'A-Za-z_\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u1FFF\\u2C00-\\u2FEF\\u3001-\\uD7FF\\uF900-\\uFDCF\\uFDF0-\\uFFFD';
const WORD_CHARACTER = `${LETTER}0-9\\u00B7#\\u266D\\u266F`;
const WORD = `(?:[${LETTER}]|\\d+-(?=[${LETTER}]))[${WORD_CHARACTER}]*(?:-[${WORD_CHARACTER}]+)*`;
/** Words joined by dots; a member may be numbered (`strings.6`). */
const PATH = new RegExp(`${WORD}(?:\\.(?:${WORD}|\\d+(?![${WORD_CHARACTER}])))*`);

/** Pattern of a token that only `repair.ts` makes. */
const NEVER = /(?!)/;

type Matched = [string] | null;
type Match = (text: string, offset: number, before: Token[]) => Matched;

/** `starts`: what the match may start with, so that the lexer asks only there. */
function contextual(type: TokenType, match: Match, starts: readonly number[]): TokenType {
  return Object.assign(type, { PATTERN: match, LINE_BREAKS: false, START_CHARS_HINT: starts });
}

/** Beyond Latin-1 the lexer looks at blocks of 255 characters, so one of each stands for all. */
const BEYOND_LATIN = Array.from({ length: 257 }, (_, i) => 256 + 255 * i).filter((code) => code <= 0xffff);
const EVERY_START: readonly number[] = [...Array.from({ length: 256 }, (_, i) => i), ...BEYOND_LATIN, 0xffff];
/** Letters, and the signs of feet, inches and per cent. */
const UNIT_STARTS = EVERY_START.filter((code) => code >= 0x80 || /[A-Za-z_%"']/.test(String.fromCharCode(code)));

const matchUnit: Match = (text, offset, before) => {
  const last = before[before.length - 1];
  if (last === undefined || last.tokenType.name !== 'NUMBER') return null;
  return taken(text, offset, unitLength(text, offset, endOffset(last)));
};

const matchTimes: Match = (text, offset, before) => {
  const last = before[before.length - 1];
  if (last === undefined || (last.tokenType.name !== 'NUMBER' && last.tokenType.name !== 'UNIT')) return null;
  return taken(text, offset, timesLength(text, offset, endOffset(last)));
};

const NUMBER_STARTS = EVERY_START.filter((code) => code >= 0x80 || /[0-9.+-]/.test(String.fromCharCode(code)));
/** `1 3/4`, `1-3/4`, `7/64`, `1½`, `2,85`, `1,200.5`, `1.200,5` and `1'200.5` (to be told off), `2.85`, `.110`, `1e-3`. */
const NUMBER =
  /[+\-\u2212\u2013]?(?:\d{1,3}(?:\.\d{3})+,\d+(?![.,/]?\d)|\d{1,3}(?:['\u2019]\d{3})+(?:\.\d+)?(?!\d)|\d+[ -]\d+\/\d+|\d+\/\d+|\d*[ ]?[\u00BC-\u00BE\u2153\u2154\u215B-\u215E]|\d+,\d+(?:\.\d+)?(?![,/]?\d)|\d*\.?\d+(?:[eE][+-]?\d+)?)/y;
/** Behind the comma of a list: `1 mm,7/64 in`, `1,2,3`. */
const NO_COMMA =
  /[+\-\u2212\u2013]?(?:\d+[ -]\d+\/\d+|\d+\/\d+|\d*[ ]?[\u00BC-\u00BE\u2153\u2154\u215B-\u215E]|\d*\.?\d+(?:[eE][+-]?\d+)?)/y;

const matchNumber: Match = (text, offset, before) => {
  const last = before[before.length - 1];
  // `sitka–118` is a name with the wrong dash, not a name and a negative number.
  if (text[offset] === '\u2013' && last?.tokenType.name === 'PATH' && endOffset(last) === offset) return null;
  // In `1,2,3` the commas part a list; only a lone comma between figures is taken for a decimal comma.
  const parts = text[offset - 1] === ',' || (last?.image === '(' && matchesAt(TWO_NUMBERS, text, endOffset(last)));
  const pattern = parts ? NO_COMMA : NUMBER;
  pattern.lastIndex = offset;
  const found = pattern.exec(text);
  return found ? [found[0]] : null;
};

/** A point of two bare numbers, `(78,150 mm)`: its one comma parts them. */
const TWO_NUMBERS = /[^,()\n]*,[^,()\n]*\)/y;

function matchesAt(pattern: RegExp, text: string, offset: number): boolean {
  pattern.lastIndex = offset;
  return pattern.test(text);
}

/** What no other pattern knows: one sign, however many code units it takes. */
const matchAnything: Match = (text, offset) => [String.fromCodePoint(text.codePointAt(offset) ?? 0)];

function taken(text: string, offset: number, length: number): Matched {
  return length > 0 ? [text.slice(offset, offset + length)] : null;
}
