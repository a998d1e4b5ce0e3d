/** What is wrong with a line, in the words of the bench and with an example of how it is written. */
import { didYouMean } from '../quantities/suggest.js';
import { KIND_WORDS } from '../facts/kind-words.js';
import { EXAMPLES } from './statement-examples.js';
import { DEFINITION_WORDS, JOINING_WORDS, type Token, isText, isWord, itemAt, kindOf } from './token.js';
import type { Wording } from '../wording/wording.js';

export interface Explanation {
  readonly message: string;
  /** Replacements for the words of `of`, best first. */
  readonly suggestions: readonly string[];
  /** The first and last word the suggestions replace; the whole line when absent. */
  readonly of?: readonly [Token, Token];
}

/** Explains a run of words that does not read. `end` is the brace or line end after it. */
export function explain(
  words: readonly Token[],
  end: Token | undefined,
  inHead: boolean,
  wording: Wording,
): Explanation {
  if (inHead) return explainHead(words, wording);
  if (words.length === 0) return told(wording.say`A block needs a name before its {, as in \`top { … }\`.`);
  for (const rule of RULES) {
    const found = rule(words, end, wording);
    if (found !== undefined) return found;
  }
  return told(
    wording.say`This line does not read. A line says what it is about, then a colon and a value: \`thickness: 2.85 mm\`.`,
  );
}

/** Explains a line outside any definition. */
export function didYouMeanKind(words: readonly Token[], { say, text }: Wording): Explanation {
  const first = words[0]?.image ?? '';
  const opensBlock = words.some((token) => kindOf(token) === '{');
  // `recipe: tarn-2 …`: the right word with a colon.
  const [, colon, name] = words;
  if (opensBlock && DEFINITION_WORDS.has(first) && kindOf(colon) === ':' && isWord(name) && colon && words[0])
    return {
      message: say`A definition starts like \`recipe tarn-2 from tarn-1 {\`.`,
      suggestions: [first],
      of: [words[0], colon],
    };
  const other = opensBlock ? KIND_WORDS.get(first.toLowerCase()) : undefined;
  const near =
    other !== undefined ? [other] : opensBlock || isWord(words[1]) ? didYouMean(first, [...DEFINITION_WORDS]) : [];
  if (near.length > 0) {
    return {
      message: say`\`${short(first)}\` starts no definition: did you mean ${near.join(` ${text('or')} `)}?`,
      suggestions: near,
    };
  }
  return told(
    say`This line belongs to no definition. A file is made of definitions such as \`recipe tarn-2 from tarn-1 { … }\`.`,
  );
}

type Rule = (words: readonly Token[], end: Token | undefined, wording: Wording) => Explanation | undefined;

const RULES: readonly Rule[] = [
  function straySign(words, _, { say }) {
    const at = words.findIndex((token) => kindOf(token) === 'STRAY');
    const stray = words[at];
    if (stray === undefined) return undefined;
    const sign = stray.image;
    const next = words[at + 1];
    if (next?.image === '>' && /^[=\u2013\u2014]$/.test(sign))
      return { message: say`The arrow of a change is written \`->\`.`, suggestions: ['->'], of: [stray, next] };
    if (at === 0 && (sign === '#' || (sign === '-' && next?.image === '-')))
      return {
        message: say`A remark that is not read begins with \`//\`.`,
        suggestions: ['//'],
        of: [stray, sign === '#' || next === undefined ? stray : next],
      };
    if (/^[~\u2248]$/.test(sign))
      return {
        message: say`A number is written with its doubt behind it, \`2.85 mm ± 0.05 mm\`, or alone.`,
        suggestions: [''],
        of: [stray, stray],
      };
    if (sign === '=')
      return {
        message: say`Write a colon instead of \`=\`: \`thickness: 2.85 mm\`.`,
        suggestions: [':'],
        of: [stray, stray],
      };
    if (sign === ';') return { message: say`A line ends without a \`;\`.`, suggestions: [''], of: [stray, stray] };
    if (sign === '\u2013' || sign === '\u2014') {
      return {
        message: say`The dash \`${sign}\` means nothing here: names are joined by a hyphen, tarn-7.`,
        suggestions: ['-'],
        of: [stray, stray],
      };
    }
    if (sign === "'" || sign === '\u2018' || sign === '\u2019')
      return told(say`Texts are written in double quotes: "like this".`);
    return told(say`The sign \`${printable(sign)}\` means nothing here.`);
  },

  function commaBetweenEntries(words, _, { say }) {
    const at = words.findIndex(
      (token, i) => kindOf(token) === ',' && isWord(words[i + 1]) && kindOf(words[i + 2]) === ':',
    );
    const comma = words[at];
    return comma === undefined
      ? undefined
      : {
          message: say`What stands on one line is parted by blanks, without a comma: \`width: 8 mm   height: 16 mm\`.`,
          suggestions: [''],
          of: [comma, comma],
        };
  },

  function colonBeforeBrace(words, end, { say }) {
    const last = words[words.length - 1];
    if (kindOf(last) !== ':' || kindOf(end) !== '{' || last === undefined) return undefined;
    const name = words[words.length - 2]?.image ?? 'top';
    return { message: say`A block has no colon: \`${short(name)} { … }\`.`, suggestions: [''], of: [last, last] };
  },

  function valueMissing(words, _, { say }) {
    const at = words.findIndex((token, i) => kindOf(token) === ':' && nothingFollows(words, i));
    const name = words[at - 1];
    if (at < 1 || name === undefined) return undefined;
    if (words[at - 2]?.image === 'change') {
      return told(say`After \`${short(name.image)}:\` the old and the new value are expected: \`15 mm -> 14 mm\`.`);
    }
    return told(say`After \`${short(name.image)}:\` a value such as 15 mm is expected.`);
  },

  function change(words, _, { say }) {
    const [first, path, colon] = words;
    if (first?.image !== 'change' || kindOf(path) === ':') return undefined;
    if (!isWord(path)) return told(say`A change is written \`${CHANGE}\`.`);
    if (kindOf(colon) !== ':') {
      return told(say`After \`change ${short(path?.image ?? '')}\` a colon is expected: \`${CHANGE}\`.`);
    }
    const arrow = words.find((token) => kindOf(token) === 'ARROW');
    if (arrow === undefined) {
      return told(say`A change gives the old and the new value, \`15 mm -> 14 mm\`, or a step, \`by -1 mm\`.`);
    }
    return arrow === words[words.length - 1] ? told(say`After \`->\` the new value is expected.`) : undefined;
  },

  function statementWord(words, _, { text }) {
    for (let i = 0; i < words.length; i++) {
      const example = EXAMPLES.get(itemAt(words, i).image);
      const next = words[i + 1];
      if (example === undefined || kindOf(next) === ':' || (i > 0 && kindOf(words[i - 1]) === ':')) continue;
      if (example.takes(next)) {
        if (i === 0 && itemAt(words, 0).image !== 'change' && example.whole) return told(text(example.message));
        continue;
      }
      return told(text(example.message));
    }
    return undefined;
  },

  function rangeWithHyphen(words, _, { say }) {
    for (let i = 0; i + 1 < words.length; i++) {
      const [low, high] = [itemAt(words, i), itemAt(words, i + 1)];
      if (kindOf(low) !== 'NUMBER' || kindOf(high) !== 'NUMBER' || !high.image.startsWith('-')) continue;
      const range = `${low.image}..${high.image.slice(1)}`;
      return { message: say`A range is written with two dots: ${range}.`, suggestions: [range], of: [low, high] };
    }
    return undefined;
  },

  function point(words, _, { say }) {
    return words.some((token) => kindOf(token) === '(' || kindOf(token) === ')')
      ? told(
          say`A point is written (78 mm, -150 mm): the station from the tail, a comma, then the offset from the centre line.`,
        )
      : undefined;
  },

  function colonMissing(words, _, { say }) {
    for (let i = 0; i + 1 < words.length; i++) {
      const [name, value] = [itemAt(words, i), itemAt(words, i + 1)];
      const starts = i === 0 || (!isWord(words[i - 1]) && kindOf(words[i - 1]) !== ':');
      if (!starts || !isWord(name) || !(kindOf(value) === 'NUMBER' || isText(value) || kindOf(value) === 'DATE'))
        continue;
      const mended = `${name.image}:`;
      return {
        message: say`After \`${short(name.image)}\` a colon is expected: \`${short(mended)} ${short(value.image)}\`.`,
        suggestions: [mended],
        of: [name, name],
      };
    }
    return undefined;
  },

  function wordAndNumber(words, _, { say }) {
    const at = words.findIndex(
      (token, i) => kindOf(token) === ':' && isWord(words[i + 1]) && kindOf(words[i + 2]) === 'NUMBER',
    );
    const [word, number] = [words[at + 1], words[at + 2]];
    if (at < 0 || word === undefined || number === undefined || JOINING_WORDS.has(word.image)) return undefined;
    if (/^(?:about|approx|approximately|around|roughly|ca|circa|c|etwa|rund)$/i.test(word.image))
      return {
        message: say`A number is written with its doubt behind it, \`2.85 mm ± 0.05 mm\`, or alone.`,
        suggestions: [number.image],
        of: [word, number],
      };
    const text = `"${word.image} ${number.image}"`;
    return {
      message: say`A word and a number together are a text, in double quotes: \`${short(text)}\`.`,
      suggestions: [text],
      of: [word, number],
    };
  },

  function wordBehind(words, end, { say }) {
    const at = words.findIndex((token, i) => isWord(token) && kindOf(words[i - 1]) === 'UNIT');
    const rest = words.slice(at);
    const [first, last] = [rest[0], rest[rest.length - 1]];
    if (at < 0 || first === undefined || last === undefined || kindOf(end) === '{' || kindOf(end) === '}')
      return undefined;
    if (JOINING_WORDS.has(first.image) || !rest.every((token) => isWord(token))) return undefined;
    const remark = `// ${rest.map(({ image }) => image).join(' ')}`;
    return {
      message: say`What is said beside a value is a remark: \`${short(remark)}\`.`,
      suggestions: [remark],
      of: [first, last],
    };
  },

  function severalWords(words, end, { say }) {
    for (let i = 0; i + 1 < words.length; i++) {
      const [first, second] = [itemAt(words, i), itemAt(words, i + 1)];
      if (!isWord(first) || !isWord(second) || /[.]/.test(first.image)) continue;
      // `kind: steel  tuning: …`: the second word begins the next entry.
      if (kindOf(words[i - 1]) === ':' && kindOf(words[i + 2]) === ':') continue;
      const notes = runOfNotes(words, i);
      if (notes.length > 1) {
        const list = notes.map(({ image }) => image).join(', ');
        return {
          message: say`Several values are parted by commas: \`${list}\`.`,
          suggestions: [list],
          of: [first, itemAt(words, i + notes.length - 1)],
        };
      }
      const joined = `${first.image}-${second.image}`;
      const after = words[i + 2] ?? end;
      if (kindOf(words[i - 1]) === ':') {
        return {
          message: say`A name of several words is joined by hyphens: \`${short(joined)}\`. Texts go in double quotes.`,
          suggestions: [joined, `"${first.image} ${second.image}"`],
          of: [first, second],
        };
      }
      if (kindOf(after) === ':' || kindOf(after) === '{') {
        return {
          message: say`A name of several words is joined by hyphens: \`${short(joined)}\`.`,
          suggestions: [joined],
          of: [first, second],
        };
      }
      return told(say`After \`${short(first.image)}\` a colon or a { is expected.`);
    }
    return undefined;
  },

  function unfinished(words, end, { say }) {
    const [only] = words;
    if (words.length === 1 && isWord(only) && kindOf(end) !== '{') {
      return told(say`After \`${short(only?.image ?? '')}\` a colon and a value, or a block in { }, is expected.`);
    }
    const last = words[words.length - 1];
    if (kindOf(last) === 'DOTS') return told(say`After \`..\` the upper end of the range is expected: 170..185 Hz.`);
    if (kindOf(last) === 'PLUS_MINUS') return told(say`After \`±\` the tolerance is expected: 2.85 mm ± 0.05 mm.`);
    if (kindOf(last) === ',') return told(say`After the comma another value is expected.`);
    return undefined;
  },

  function startsWithValue(words, _, { say }) {
    const [first] = words;
    return kindOf(first) === 'NUMBER' || isText(first) || kindOf(first) === 'DATE'
      ? told(say`A line starts with what it is about: \`thickness: 2.85 mm\`.`)
      : undefined;
  },
];

const CHANGE = 'change top.thickness: 2.85 mm -> 2.7 mm';

function explainHead(words: readonly Token[], { say }: Wording): Explanation {
  const text = words.find((token) => isText(token));
  if (text !== undefined) {
    const name = text.image
      .replace(/^["\u201C]|["\u201D]$/g, '')
      .trim()
      .replace(/\s+/g, '-');
    return {
      message: 'A name is written without quotes, its words joined by hyphens.',
      suggestions: name === '' ? [] : [name],
      of: [text, text],
    };
  }
  return told(say`A definition starts like \`recipe tarn-2 from tarn-1 {\`.`);
}

/** Names of notes one after another, as a tuning is spoken. */
function runOfNotes(words: readonly Token[], from: number): readonly Token[] {
  const rest = words.slice(from);
  const end = rest.findIndex(({ image }) => !/^[A-Ga-g][#b\u266D\u266F]?\d?$/.test(image));
  return end < 0 ? rest : rest.slice(0, end);
}

/** True when no value can start after the colon at `at`: the line ends, or the next statement begins. */
function nothingFollows(words: readonly Token[], at: number): boolean {
  const next = words[at + 1];
  return next === undefined || (isWord(next) && kindOf(words[at + 2]) === ':');
}

function told(message: string): Explanation {
  return { message, suggestions: [] };
}

function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

function printable(sign: string): string {
  const code = sign.codePointAt(0) ?? 0;
  return code < 32 || (code >= 0x7f && code < 0xa0) || (code >= 0xd800 && code < 0xe000)
    ? `U+${code.toString(16).toUpperCase().padStart(4, '0')}`
    : sign;
}
