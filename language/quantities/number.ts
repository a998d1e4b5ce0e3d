/** Numbers as builders write them: `2.85`, `.110`, `7/64`, `1 3/4`, `1-3/4`, `1¾`. */
import { ENGLISH, type Wording } from '../wording/wording.js';

export type NumberReading =
  | { readonly ok: true; readonly number: number }
  | {
      readonly ok: false;
      readonly code: 'bad-number';
      readonly message: string;
      /** Texts that would be read, best first. */
      readonly suggestions: readonly string[];
    };

/** Longer texts are no number a person wrote. */
const LONGEST = 40;

/**
 * Reads one number. The decimal sign is a point; a comma is asked about, because `1,500` means one and a half to some
 * and fifteen hundred to others. Never throws; the number is always finite.
 */
export function readNumber(written: string, { say }: Pick<Wording, 'say'> = ENGLISH): NumberReading {
  const text = plain(written);
  if (text === '') return bad(say`A number is missing here.`);
  if (text.length > LONGEST) return bad(say`This number is too long to be meant.`);
  if (/^[+-]?\d{1,3}(?:(?:\.\d{3})+,\d+|(?:['’]\d{3})+(?:\.\d+)?)$/.test(text)) return thousands(written, text, say);
  if (text.includes(',')) return comma(written.trim(), text, say);

  const decimal = /^([+-]?)((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)$/.exec(text);
  if (decimal) return finite(written, signed(decimal[1], Number(decimal[2])), say);

  const fraction = /^([+-]?)(?:(\d+)[ -])?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (fraction) return readFraction(written, fraction, say);

  if (/^[+-]?\d{1,3}( \d{3})+(\.\d+)?$/.test(text)) {
    return bad(say`"${written.trim()}" reads as several numbers: write it without the spaces.`, [
      text.replace(/ /g, ''),
    ]);
  }
  return bad(say`"${short(written)}" is not a number I can read: write it like 2.85, .110, 7/64 or 1 3/4.`);
}

function readFraction(
  written: string,
  [, sign, whole, top, bottom]: RegExpExecArray,
  say: Wording['say'],
): NumberReading {
  const [w, n, d] = [Number(whole ?? 0), Number(top), Number(bottom)];
  if (d === 0) return bad(say`"${short(written)}" divides by zero.`);
  if (whole !== undefined && n >= d) {
    const carried = w + Math.floor(n / d);
    const rest = n % d === 0 ? '' : ` ${n % d}/${d}`;
    return bad(say`"${short(written)}": the fraction after ${whole} should be less than one.`, [
      `${sign ?? ''}${carried}${rest}`,
    ]);
  }
  return finite(written, signed(sign, (w * d + n) / d), say);
}

/** `1.234,5` and `1'234.5`, as thousands are parted in some countries. */
function thousands(written: string, text: string, say: Wording['say']): NumberReading {
  const bare = text.includes(',') ? text.replace(/\./g, '').replace(',', '.') : text.replace(/['’]/g, '');
  return bad(say`"${short(written)}": write a number without a sign between its thousands, decimals with a point.`, [
    bare,
  ]);
}

function comma(written: string, text: string, say: Wording['say']): NumberReading {
  const asPoint = text.replace(',', '.');
  const without = text.replace(/,/g, '');
  const thousands = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/.test(text);
  const single = /^[+-]?\d*,\d+$/.test(text);
  if (thousands && single && !/^[+-]?0/.test(text)) {
    return bad(say`"${short(written)}": does the comma mark thousands or decimals? Write decimals with a point.`, [
      asPoint,
      without,
    ]);
  }
  if (thousands && !single) return bad(say`"${short(written)}": write a number without commas.`, [without]);
  if (single) return bad(say`"${short(written)}": decimals are written with a point.`, [asPoint]);
  return bad(say`"${short(written)}" is not a number I can read: decimals are written with a point, as in 2.85.`);
}

const VULGAR: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    '¼': '1/4',
    '½': '1/2',
    '¾': '3/4',
    '⅓': '1/3',
    '⅔': '2/3',
    '⅛': '1/8',
    '⅜': '3/8',
    '⅝': '5/8',
    '⅞': '7/8',
  }),
);

/** The same text with typographic signs, single-character fractions and wide spaces in their plain form. */
function plain(written: string): string {
  return written
    .replace(/[¼½¾⅓⅔⅛⅜⅝⅞]/g, (character) => ` ${VULGAR.get(character) ?? character}`)
    .replace(/⁄/g, '/')
    .replace(/[−–]/g, '-')
    .replace(/\s+/g, ' ')
    .replace(/^([+-]) /, '$1')
    .trim();
}

function signed(sign: string | undefined, size: number): number {
  return sign === '-' && size !== 0 ? -size : size;
}

function finite(written: string, number: number, say: Wording['say']): NumberReading {
  if (Number.isFinite(number)) return { ok: true, number };
  return bad(say`"${short(written)}" is too large to be meant.`);
}

function bad(message: string, suggestions: readonly string[] = []): NumberReading {
  return { ok: false, code: 'bad-number', message, suggestions };
}

function short(written: string): string {
  const text = written.trim();
  return text.length > LONGEST ? `${text.slice(0, LONGEST)}…` : text;
}
