/** Words a line begins with: mistyped, in capitals, glued to what follows, or another word for the same. */
import { STATEMENT_WORDS } from '../../../facts/statement-words.js';
import { typedDistance } from '../../../quantities/typed-distance.js';
import type { Slip } from './slip.js';
import { NUMBER } from './slip.js';

/** `vary` belongs to a shop and `mode` to a tap: elsewhere a word like them means something else. */
const OF_ONE_PLACE: ReadonlySet<string> = new Set(['vary', 'mode']);

/** Words that a mistyped one at the beginning of any line may have been meant for. */
export const KEYWORDS: readonly string[] = [...STATEMENT_WORDS].filter((word) => !OF_ONE_PLACE.has(word));

/** Other words that begin such a line. Sources: common practice. */
const OTHER_WORDS: ReadonlyMap<string, string> = new Map(
  Object.entries<readonly string[]>({
    change: [
      'replace',
      'set',
      'modify',
      'swap',
      'alter',
      'ändere',
      'aendere',
      'ändern',
      'ersetze',
      'ändert',
      'changed',
    ],
    drop: ['remove', 'delete', 'omit', 'without', 'entferne', 'ohne', 'weglassen'],
    hold: ['keep', 'fix', 'maintain', 'halte', 'behalte', 'halten'],
    expect: ['assert', 'should', 'want', 'expected', 'erwarte', 'erwartet', 'test', 'target'],
    because: ['since', 'reason', 'why', 'weil', 'denn', 'grund'],
    note: ['remark', 'comment', 'bemerkung', 'notiz', 'notes', 'anmerkung'],
    add: ['plus', 'insert', 'hinzu', 'ergänze'],
    with: ['mit', 'using', 'include'],
    allow: ['permit', 'erlaube'],
    reading: ['measurement', 'measured', 'messung', 'read'],
  }).flatMap(([keyword, others]) => others.map((other) => [other, keyword] as const)),
);

/** How near a word must be to a keyword, by the keyword's length. */
const nearEnough = (keyword: string): number => (keyword.length <= 4 ? 1 : 1.8);

function keywordFor(word: string): string | undefined {
  const low = word.toLowerCase();
  if (KEYWORDS.includes(low)) return low;
  const other = OTHER_WORDS.get(low);
  if (other !== undefined) return other;
  const near = KEYWORDS.map((keyword) => ({ keyword, cost: typedDistance(low, keyword) }))
    .filter(({ keyword, cost }) => cost <= nearEnough(keyword))
    .sort((a, b) => a.cost - b.cost);
  return near[0]?.keyword;
}

export const WORD_SLIPS: readonly Slip[] = [
  {
    code: 'unreadable-line',
    why: ({ text }) => text('No line begins with this word.'),
    mend({ text }) {
      const [, word = '', colon = '', rest = ''] = /^(\p{L}[\p{L}-]*)(:?)\s+(\S.*)$/su.exec(text) ?? [];
      if (word === '' || (colon === '' && KEYWORDS.includes(word)) || (colon !== '' && !KEYWORDS.includes(word)))
        return undefined;
      const keyword = keywordFor(word);
      return keyword === undefined ? undefined : `${keyword} ${rest}`;
    },
  },
  {
    code: 'unreadable-line',
    why: ({ text }) => text('A blank is missing here.'),
    mend: ({ text }) => {
      const [, word = '', rest = ''] = /^(change|expect|hold|drop|add)([a-z][a-z-]*\..+)$/s.exec(text) ?? [];
      return word === '' ? undefined : `${word} ${rest}`;
    },
  },
  ...['note', 'because'].map((keyword): Slip => ({
    code: 'unreadable-line',
    why: ({ say }) => say`After \`${keyword}\` a text in double quotes is expected.`,
    mend({ text }) {
      const said = new RegExp(`^${keyword}:?\\s+([^"]+)$`, 'is').exec(text)?.[1];
      return said === undefined || /[{}]/.test(said) ? undefined : `${keyword} "${said.trim()}"`;
    },
  })),
  {
    code: 'unreadable-line',
    why: ({ text }) => text('A reading has a name of one word.'),
    mend({ text }) {
      const [, days] =
        /^reading:?\s+(?:after\s+|nach\s+|at\s+)?(?:day[s]?\s+|tag\s+)?(\d+)\s*(?:days?|tage[n]?|d)?$/i.exec(text) ??
        [];
      if (days !== undefined) return `reading day-${days}`;
      const [, name] = /^reading:\s*([\w-]+)$/.exec(text) ?? [];
      return name === undefined ? undefined : `reading ${name}`;
    },
  },
  {
    code: 'unreadable-line',
    mend: ({ text }) => {
      const found = text.replace(/\b(most|allow)\s+(\p{L}+)/u, (all, before: string, word: string) => {
        const number = COUNTS.get(word.toLowerCase());
        return number === undefined ? all : `${before} ${number}`;
      });
      return found === text ? undefined : found;
    },
  },
  {
    // `7 of 10`, `7 out of 10`
    code: 'unreadable-line',
    mend({ text }) {
      const found = text.replace(new RegExp(String.raw`(:\s*${NUMBER})\s+(?:out\s+of|of|von)\s+(\d+)$`), '$1/$2');
      return found === text ? undefined : found;
    },
  },
];

/** Small numbers in words, in English and German. */
export const COUNTS: ReadonlyMap<string, number> = new Map(
  [
    'zero|null',
    'one|ein|eins|eine',
    'two|zwei',
    'three|drei',
    'four|vier',
    'five|fünf',
    'six|sechs',
    'seven|sieben',
    'eight|acht',
    'nine|neun',
    'ten|zehn',
    'eleven|elf',
    'twelve|zwölf',
    'thirteen|dreizehn',
    'fourteen|vierzehn',
    'fifteen|fünfzehn',
    'sixteen|sechzehn',
    'seventeen|siebzehn',
    'eighteen|achtzehn',
    'nineteen|neunzehn',
    'twenty|zwanzig',
    'twenty-one|einundzwanzig',
    'twenty-two|zweiundzwanzig',
  ].flatMap((words, number) => words.split('|').map((word) => [word, number] as const)),
);
