/** The statements of the language, each where it may stand. */
import type { DefinitionKind } from '../../facts/facts.js';
import { english } from '../../wording/wording.js';
import type { Offer } from './offer.js';
import type { TypingPlace } from './typing-place.js';
import type { Joint } from './typing-statement.js';

interface Keyword {
  readonly word: string;
  readonly insert: string;
  readonly sentence: string;
  readonly in: readonly DefinitionKind[];
}

const KEYWORDS: readonly Keyword[] = [
  {
    word: 'because',
    insert: 'because "$1"',
    sentence: english('Why this instrument differs from its parent.'),
    in: ['recipe'],
  },
  {
    word: 'together',
    insert: 'together "${1:why they belong together}" {\n  $0\n}',
    sentence: english('One tweak made in several places: it counts once.'),
    in: ['recipe'],
  },
  {
    word: 'change',
    insert: 'change ',
    sentence: english('A checked change of what the parent says.'),
    in: ['recipe'],
  },
  {
    word: 'hold',
    insert: 'hold ',
    sentence: english('Keep a computed quantity as the parent has it by solving for a value.'),
    in: ['recipe'],
  },
  {
    word: 'expect',
    insert: 'expect ',
    sentence: english('A test of what the recipe comes out as.'),
    in: ['recipe'],
  },
  { word: 'add', insert: 'add ', sentence: english('Add a member the parent does not have.'), in: ['recipe', 'order'] },
  { word: 'drop', insert: 'drop ', sentence: english('Take a member away.'), in: ['recipe', 'order'] },
  {
    word: 'with',
    insert: 'with ',
    sentence: english('Take a named package of appointments.'),
    in: ['recipe', 'model', 'order'],
  },
  {
    word: 'allow',
    insert: 'allow ${1:2} because "$2"',
    sentence: english('Allow this one recipe more changes than the shop’s rule.'),
    in: ['recipe'],
  },
  {
    word: 'accept',
    insert: 'accept ',
    sentence: english('Silence one kind of finding here, with a reason.'),
    in: ['recipe', 'wood', 'build', 'model'],
  },
  {
    word: 'note',
    insert: 'note "$1"',
    sentence: english('A remark, kept and printed.'),
    in: ['recipe', 'build', 'wood', 'order', 'model'],
  },
  {
    word: 'reading',
    insert: 'reading ${1:day-1} {\n  stage: strung\n  strings-damped: yes\n  $0\n}',
    sentence: english('Measurements of one occasion, with the conditions that make them comparable.'),
    in: ['build'],
  },
  {
    word: 'rework',
    insert: 'rework "${1:what was done}" {\n  $0\n}',
    sentence: english('What was done to the instrument after it was read: what holds from then on.'),
    in: ['build'],
  },
  {
    word: 'request',
    insert: 'request ${1:2026-01-31} {\n  $0\n}',
    sentence: english('What the client asks for after the order was agreed.'),
    in: ['order'],
  },
  {
    word: 'vary at most',
    insert: 'vary at most ${1:1}',
    sentence: english('How many changes an instrument may make.'),
    in: ['shop'],
  },
];

export function keywordOffers(kind: DefinitionKind, inside: TypingPlace['inside']): readonly Offer[] {
  const inGroup = ['change', 'add', 'drop'];
  const isGroup = inside === 'together' || inside === 'rework';
  return KEYWORDS.filter((keyword) => (isGroup ? inGroup.includes(keyword.word) : keyword.in.includes(kind))).map(
    ({ word, insert, sentence }, rank) => ({
      label: word,
      kind: 'keyword',
      sentence,
      insert,
      snippet: true,
      rank,
    }),
  );
}

/** Where a number comes from, behind it on the same line. */
export const SOURCE: Offer = {
  label: 'per',
  kind: 'keyword',
  sentence: english('Where the number comes from.'),
  insert: 'per "$1"',
  snippet: true,
  rank: 500,
};

/** A further tap of a blank. */
export const MODE: Offer = {
  label: 'mode',
  kind: 'keyword',
  sentence: english('A further tap of the blank by its nodal lines: those along the grain, then those across it.'),
  insert: 'mode (${1:1},${2:2}): ${3:140} Hz',
  snippet: true,
  rank: 150,
};

const JOINTS: Readonly<Record<Joint, Omit<Offer, 'label' | 'kind' | 'rank'>>> = {
  by: {
    insert: 'by ',
    sentence: english(
      'The value that is solved for, within what can be built. Several with commas go together, in proportion.',
    ),
  },
  at: { insert: 'at ', sentence: english('Holds to this value instead of the parent’s.') },
  'at most': { insert: 'at most ${1:1}', snippet: true, sentence: english('How many changes an instrument may make.') },
  because: { insert: 'because "$1"', snippet: true, sentence: english('The reason; without one it is not granted.') },
};

export function joints(words: readonly Joint[]): readonly Offer[] {
  return words.map((word, rank) => ({ label: word, kind: 'keyword', rank, ...JOINTS[word] }));
}
