/** Changes, holds and expectations with other signs and words than the language's. */
import type { Slip } from './slip.js';
import { NUMBER, QUANTITY } from './slip.js';

const PATH = String.raw`[\p{L}][\p{L}\d.-]*`;

export const CHANGE_SLIPS: readonly Slip[] = [
  {
    code: 'unreadable-line',
    why: ({ say }) => say`The arrow of a change is written \`->\`.`,
    mend({ text }) {
      if (!/^change\b/.test(text)) return undefined;
      const mended = text.replace(/\s*(?:-\s+>|-<|-->|=>|\u2014|(?<![-=])>|\bto\b|\bauf\b|\bzu\b|,)\s*/, ' -> ');
      return mended === text ? undefined : mended;
    },
  },
  {
    // A dash between two values, or nothing at all.
    code: 'unreadable-line',
    why: ({ say }) => say`The arrow of a change is written \`->\`.`,
    mend({ text }) {
      const pattern = new RegExp(
        String.raw`^(change\s+${PATH}:\s*)(?:from\s+|von\s+)?(${QUANTITY})\s*(?:[\u2013\u2014-]\s+|\s)(${QUANTITY})$`,
        'u',
      );
      const [, head, old, next] = pattern.exec(text) ?? [];
      return head === undefined ? undefined : `${head}${old} -> ${next}`;
    },
  },
  {
    code: 'unreadable-line',
    mend: ({ text }) => {
      const mended = text.replace(/^(change\s+[^:]*:?\s*)(?:from|von)\s+/, '$1');
      return mended === text ? undefined : mended;
    },
  },
  {
    code: 'unreadable-line',
    mend({ text }) {
      const [, path, rest] = new RegExp(String.raw`^change:?\s+(${PATH})\s+([^:]+)$`, 'su').exec(text) ?? [];
      return path === undefined || /^[{=]/.test(rest ?? '') ? undefined : `change ${path}: ${rest}`;
    },
  },
  {
    // A step without its word.
    code: 'unreadable-line',
    why: ({ say }) => say`A change gives the old and the new value, \`15 mm -> 14 mm\`, or a step, \`by -1 mm\`.`,
    mend({ text }) {
      const [, head, step] =
        new RegExp(String.raw`^(change\s+${PATH}:)\s*([-+\u2212]${QUANTITY})$`, 'u').exec(text) ?? [];
      return head === undefined ? undefined : `${head} by ${step}`;
    },
  },
  {
    code: 'unreadable-line',
    why: ({ text }) => text('An old and a new value make a change.'),
    mend: ({ text }) =>
      new RegExp(String.raw`^${PATH}:\s*[^:]+(?:->|\u2192)\s*\S`, 'u').test(text) ? `change ${text}` : undefined,
  },
  {
    code: 'unreadable-line',
    why: ({ say }) => say`An expectation is written \`expect top.mass: below 190 g\`.`,
    mend({ text }) {
      const [, path = '', word = '', rest = ''] =
        new RegExp(String.raw`^expect\s+(${PATH}):?\s*([^\d.+-]*?)\s*(${NUMBER}.*)$`, 'su').exec(text) ?? [];
      const said = word.trim().toLowerCase();
      if (said === '') return undefined;
      const side = LIMITS.find(([pattern]) => pattern.test(said))?.[1];
      return side === undefined ? undefined : `expect ${path}: ${side}${rest}`;
    },
  },
  {
    code: 'unreadable-line',
    mend({ text }) {
      const [, path, rest] =
        new RegExp(String.raw`^expect:?\s+(${PATH})\s*:?\s*(?:=\s*)?(\S.*)$`, 'su').exec(text) ?? [];
      const mended = path === undefined ? text : `expect ${path}: ${rest}`;
      return mended === text ? undefined : mended;
    },
  },
  {
    code: 'unreadable-line',
    why: ({ say }) => say`A range is written with two dots: ${'170..185 Hz'}.`,
    mend({ text }) {
      const between = new RegExp(
        String.raw`:\s*(?:from\s+|von\s+)?(\d[\d.,]*)\s*(?:-|\u2013|\u2014|to|bis)\s*(\d[^:-]*)$`,
      );
      const mended = text.replace(between, ': $1..$2');
      return mended === text ? undefined : mended;
    },
  },
  {
    code: 'unreadable-line',
    mend({ text }) {
      const pattern = new RegExp(
        String.raw`^hold:?\s+(${PATH}),?\s+(?:by|with|on|using|via|through|durch|mit|über|and adjust|adjusting):?\s+(${PATH})$`,
        'u',
      );
      const [, quantity, by] = pattern.exec(text) ?? [];
      const mended = quantity === undefined ? text : `hold ${quantity} by ${by}`;
      return mended === text ? undefined : mended;
    },
  },
];

/** Signs and words for a limit. */
const LIMITS: readonly (readonly [RegExp, string])[] = [
  [
    /^(?:<|<=|≤|=<|under|less than|at most|no more than|not above|max\.?|maximum|up to|unter|höchstens|bis zu|kleiner als|weniger als|bel\w{1,3}|blow)$/,
    'below ',
  ],
  [
    /^(?:>|>=|≥|=>|over|more than|at least|no less than|not below|min\.?|minimum|über|mindestens|größer als|mehr als|ab\w{2,3})$/,
    'above ',
  ],
  [/^(?:=|==|is|exactly|equals|gleich|genau)$/, ''],
];
