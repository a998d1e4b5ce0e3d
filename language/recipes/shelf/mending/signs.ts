/** Other signs than the language's: brackets, dashes, doubled colons, quotes, remarks. */
import type { Slip } from './slip.js';
import { KEYWORDS } from './words.js';
import { NUMBER, QUANTITY } from './slip.js';

/** A rule that replaces a pattern. */
function replacing(pattern: RegExp, by: string, why?: Slip['why']): Slip {
  return {
    code: 'unreadable-line',
    ...(why ? { why } : {}),
    mend: ({ text }) => {
      const mended = text.replace(pattern, by);
      return mended === text ? undefined : mended;
    },
  };
}

/** Signs of which it is plain what they stand for. */
export const PLAIN_SIGN_SLIPS: readonly Slip[] = [
  // Paths.
  replacing(/^((?:change|expect|add|drop)\s+)?\.+(?=\p{L})/u, '$1'),
  {
    code: 'unreadable-line',
    mend({ text, pathOf }) {
      const [, lead = '', words = '', rest = ''] =
        /^((?:change|expect|hold|add|drop)\s+)?(\p{L}[\p{L}\d-]*(?:\s*(?:\.\s*\.*|[/:,;>]|\s)\s*\p{L}[\p{L}\d-]*){1,3}?)\s*((?:[:=-]|\d|").*)?$/su.exec(
          text,
        ) ?? [];
      if (words === '') return undefined;
      const path = pathOf(words);
      if (path === undefined || path === words) return undefined;
      const value = rest.replace(/^(?::|=|:=|-(?=\s))\s*/, '');
      return value === '' ? `${lead}${path}` : `${lead}${path}: ${value}`;
    },
  },
  replacing(
    /^(\p{L}[\p{L}\d.-]*)\s*(?:::|:=|=|;)\s*(?=\S)/u,
    '$1: ',
    ({ say }) => say`Write a colon instead of \`=\`: \`thickness: 2.85 mm\`.`,
  ),
  replacing(new RegExp(String.raw`^(\p{L}[\p{L}\d.-]*)\s+[-\u2013]\s+(?=${NUMBER})`, 'u'), '$1: '),
  {
    code: 'unreadable-line',
    mend({ text, property }) {
      const [, path = '', rest = ''] = /^(\p{L}[\p{L}\d.-]*)\s+("|\d|\.\d)/u.exec(text) ?? [];
      return rest === '' || !property(path) ? undefined : text.replace(/^(\S+)\s+/, '$1: ');
    },
  },
  replacing(/\s*[,;]\s*$/, ''),
  replacing(/^(\p{L}[\p{L}\d.-]*)\s*[:=]+$/u, '$1'),
  replacing(/^(\p{L}[\p{L}\d.-]*)\s*[([]\s*([^()[\]]*:[^()[\]]*?)\s*[)\]]$/u, '$1 { $2 }'),
  // Quotes.
  {
    code: 'unreadable-line',
    mend({ text, property }) {
      const quoted =
        /^(.*?:\s*)(?:'([^']*)'|\u2018([^\u2019]*)\u2019|\u00AB\s*([^\u00BB]*?)\s*\u00BB|\u201E([^\u201C\u201D]*)[\u201C\u201D]?|\u201A([^\u2018]*)\u2018)$/.exec(
          text,
        );
      if (!quoted) return undefined;
      const [, head = ''] = quoted;
      const said = quoted.slice(2).join('');
      const sort = property(head.replace(/^change\s+/, '').replace(/:\s*$/, ''))?.kind;
      return sort === undefined || sort === 'text' || sort === 'list'
        ? `${head}"${said}"`
        : `${head}${said.trim().replace(/\s+/g, '-')}`;
    },
  },
];

export const SIGN_SLIPS: readonly Slip[] = [
  // A value nobody knows.
  replacing(
    /^([\p{L}][\p{L}\d.-]*:)\s*(?:\?+|n\/?a\.?|tbd|[-\u2013\u2014]+|\u2026|\.\.\.)$/iu,
    '$1 unknown',
    ({ text }) => text('What is not known is written `unknown`.'),
  ),
  // Remarks.
  replacing(/^(?:#|\*+|--+|%+|;+|')\s*(?=\p{L})/u, '// '),
  replacing(/^(?=(?:nb|ps|todo|fixme|achtung|merke):)/i, '// '),
  {
    code: 'unreadable-line',
    why: ({ say }) => say`A remark that is not read begins with \`//\`.`,
    mend: ({ text }) =>
      /^(?:\p{L}[\p{L}'’-]*[ ,]+){2,}\p{L}[\p{L}'’-]*[.!?]?$/u.test(text) &&
      !KEYWORDS.includes(text.split(' ')[0] ?? '')
        ? `// ${text}`
        : undefined,
  },
  {
    code: 'unreadable-line',
    why: ({ say }) => say`What is said beside a value is a remark: \`${'// …'}\`.`,
    mend({ text }) {
      const pattern = new RegExp(
        String.raw`^(\p{L}[\p{L}\d.-]*:\s*${QUANTITY})\s*((?:\?+|\(.*\)|\[.*\]|(?:or|at|oder|bei|roughly|approx\.?|circa|ca\.?)\b.*))$`,
        'u',
      );
      const [, value, said] = pattern.exec(text) ?? [];
      return value === undefined ? undefined : `${value} // ${said}`;
    },
  },
  {
    code: 'unreadable-line',
    why: ({ say }) => say`A number is written with its doubt behind it, \`2.85 mm ± 0.05 mm\`, or alone.`,
    mend({ text }) {
      const doubt = String.raw`(?:about|approx(?:imately)?\.?|around|roughly|circa|ca\.?|c\.|etwa|rund|~|\u2248|±|\+\/-)`;
      const mended = text.replace(new RegExp(String.raw`(:\s*)${doubt}\s*(?=${NUMBER})`, 'i'), '$1');
      return mended === text ? undefined : mended;
    },
  },
  // Points and sizes.
  replacing(/:\s*[[({]([^()[\]{}]*)[\])}]$/, ': ($1)'),
  replacing(new RegExp(String.raw`\((${QUANTITY})\s*(?:;|/|\||\s)\s*(${QUANTITY})\)`), '($1, $2)'),
  replacing(new RegExp(String.raw`(?<=\d\s?[a-z"']*)\s*(?:\*|\bby\b|\bmal\b|\u00B7)\s*(?=${NUMBER})`, 'g'), ' x '),
];
