/** Values of another sort that are plain to read all the same: a count in words, a day as it is spoken, a tuning in one text. */
import type { Property } from '../../catalogue/property.js';
import type { Value } from '../../facts/facts.js';
import { notesIn } from '../../quantities/note-runs.js';
import { dateIn } from '../../recipes/shelf/mending/spoken-dates.js';
import { COUNTS } from '../../recipes/shelf/mending/words.js';

/** What to write instead of the value; undefined where that is for its maker to say. `written`: the value as it stands. */
export function asItsSort(value: Value, written: string, property: Property): string | undefined {
  const word = value.kind === 'text' ? value.text.trim() : written.trim();
  if (NOT_KNOWN.test(word) && property.kind !== 'text') return 'unknown';
  switch (property.kind) {
    case 'count':
    case 'ratio': {
      const count = COUNTS.get(word.toLowerCase());
      return count === undefined ? undefined : String(count);
    }
    case 'date':
      return dateIn(word);
    case 'point':
      return parted(value, written, 2) && `(${parted(value, written, 2)?.join(', ')})`;
    case 'size':
      return parted(value, written, 3)?.join(' x ');
    case 'quantity':
      // `2..8 mm`: the point struck twice.
      return value.kind === 'range' && /^\d+\.\.\d+\s*\D+$/.test(written) ? written.replace('..', '.') : undefined;
    case 'list':
      return property.dimension ? numbersOf(value) : notesIn(word)?.join(', ');
    default:
      return undefined;
  }
}

const NOT_KNOWN = /^(?:tbd|tba|n\/?a|none|unbekannt|offen|open|\?+)$/i;

/** The parts of a list or a size, where there are so many. */
function parted(value: Value, written: string, count: number): readonly string[] | undefined {
  if (value.kind !== 'list' && value.kind !== 'size') return undefined;
  const parts = written.split(value.kind === 'list' ? ',' : /\s+[x×]\s*|\s*[x×]\s+/).map((part) => part.trim());
  return parts.length === count ? parts : undefined;
}

/** `"12, 16, 24"`: in thousandths, as strings are spoken of, unless they are written as parts of an inch. */
function numbersOf(value: Value): string | undefined {
  if (value.kind !== 'text') return undefined;
  const numbers = value.text.split(/[\s,;/]+/).filter((one) => one !== '');
  if (numbers.length < 2 || !numbers.every((one) => /^\d*\.?\d+$/.test(one))) return undefined;
  const unit = numbers.every((one) => Number(one) < 1) ? 'in' : 'thou';
  return `${numbers.join(', ')} ${unit}`;
}
