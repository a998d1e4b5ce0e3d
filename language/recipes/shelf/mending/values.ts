/** Values written otherwise: letters for figures, words for a name or a text, units by other signs, lists by other commas. */
import { choiceCalled } from '../../../catalogue/choice-words.js';
import { speciesCalled } from '../../../catalogue/wood-words.js';
import { notesIn } from '../../../quantities/note-runs.js';
import { dateIn } from './spoken-dates.js';
import type { Piece, Slip } from './slip.js';
import { NUMBER } from './slip.js';

/** A path and what stands behind its colon. */
function entry({ text, property }: Piece) {
  const [, lead = '', path = '', value = ''] =
    /^((?:change|expect)\s+)?(\p{L}[\p{L}\d.-]*):\s*(\S.*)$/su.exec(text) ?? [];
  return path === '' ? undefined : { lead, path, value, sort: property(path) };
}

export const VALUE_SLIPS: readonly Slip[] = [
  {
    code: 'bad-date',
    why: ({ text }) => text('A date is written year first.'),
    mend(piece) {
      const found = entry(piece);
      const day = found?.sort?.kind === 'date' ? dateIn(found.value) : undefined;
      return day === undefined || day === found?.value ? undefined : `${found?.lead}${found?.path}: ${day}`;
    },
  },
  {
    code: 'bad-number',
    why: ({ text }) => text('A letter stands among the figures.'),
    mend(piece) {
      const pattern =
        /(?<=(?::|->|\.\.|below|above|by|\()\s*[-+]?)(?=[.,\d]*[OolI|])(?=[OolI|.,]*\d)[\dOolI|.,]+(?=\s|$|[a-zµ°%"'])/g;
      const mended = piece.text.replace(pattern, (word) => word.replace(/[Oo]/g, '0').replace(/[lI|]/g, '1'));
      return mended === piece.text ? undefined : mended;
    },
  },
  {
    code: 'bad-number',
    mend({ text }) {
      const mended = text
        .replace(/(\d+)\s+(8|16|32|64|128)(?:ths|nds|tel)\b/, '$1/$2 in')
        .replace(/(\d)\s+\/\s*(\d)/, '$1/$2')
        .replace(/(\d)\/\s+(\d)/, '$1/$2');
      return mended === text ? undefined : mended;
    },
  },
  {
    code: 'unknown-unit',
    mend({ text }) {
      const mended = text
        .replace(
          /(\d)\s*%\s*(?:rel(?:ative)?\.?(?:\s*(?:humidity|feuchte|luftfeuchte))?|r\.?\s*[FH]\.?|RLF)$/i,
          '$1 %RH',
        )
        .replace(/(\d)\s*#$/, '$1 lb');
      return mended === text ? undefined : mended;
    },
  },
  {
    // `twelve string`, `E4 - B3 - G3`, `12-16-24 thou`, `.012 inch .016 inch`
    code: 'unreadable-line',
    why: ({ text }) => text('Several values are parted by commas.'),
    mend(piece) {
      const found = entry(piece);
      if (found?.sort?.kind !== 'list') return undefined;
      const { lead, path, value } = found;
      const notes = notesIn(value);
      if (notes && notes.length > 1) return `${lead}${path}: ${notes.join(', ')}`;
      const numbers = value.split(/\s*[-\u2013/;]\s*(?=[\d.])|(?<=[\d"'a-z])\s+(?=[\d.])/i);
      const all = numbers.every((one) => new RegExp(String.raw`^${NUMBER}\s*[a-z"']*$`, 'i').test(one));
      return numbers.length > 2 && all ? `${lead}${path}: ${numbers.join(', ')}` : undefined;
    },
  },
  {
    code: 'unreadable-line',
    why: ({ say }) => say`A name of several words is joined by hyphens: \`${'tarn-7'}\`. Texts go in double quotes.`,
    mend(piece) {
      const found = entry(piece);
      if (!found?.sort || found.value.includes('"') || found.lead.startsWith('expect')) return undefined;
      const { lead, path, value, sort } = found;
      const words = value.replace(/\u2013/g, '-');
      if (/[{}():]|->/.test(words)) return undefined;
      switch (sort.kind) {
        case 'text':
          return `${lead}${path}: "${value}"`;
        case 'choice': {
          const choice = choiceCalled(words, sort.choices ?? []);
          const known = piece.property(`${path}.kind`) === undefined;
          return choice === undefined && known
            ? joinedWords(words, lead + path)
            : choice && `${lead}${path}: ${choice}`;
        }
        case 'wood':
        case 'species':
          return speciesCalled(words)[0] !== undefined && /\s/.test(words)
            ? `${lead}${path}: ${speciesCalled(words)[0]}`
            : joinedWords(words, lead + path);
        case 'strings':
        case 'rig':
        case 'model':
        case 'part':
          return joinedWords(words, lead + path);
        default:
          return undefined;
      }
    },
  },
  {
    code: 'bad-number',
    why: ({ text }) => text('Decimals are written with a point.'),
    mend({ text }) {
      const mended = text.replace(
        /(?<=(?::|->|below|above|by)\s*[-+]?)(\d+),(\d+)(?=\s*[a-z%°"']|\s*(?:->|$))/gi,
        '$1.$2',
      );
      return mended === text ? undefined : mended;
    },
  },
];

/** `Sitka spruce` and `s 1` as names are written. */
function joinedWords(words: string, head: string): string | undefined {
  const name = words
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
  return /^[\p{L}\d-]+$/u.test(name) && name !== words ? `${head}: ${name}` : undefined;
}
