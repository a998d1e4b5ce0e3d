/** The beginning of a statement: properties and parts that fit here, and the statements of the language. */
import type { Part } from '../catalogue/property.js';
import type { DefinitionKind } from '../recipes/facts.js';
import { changedPaths } from './completion-paths.js';
import { startValues, wholePath } from './completion-context.js';
import type { Offer } from './completion.js';
import { typicalText, valuesOf } from './completion-values.js';
import type { Desk } from './desk.js';
import type { TypingPlace } from './typing-place.js';

export function statementsFor(desk: Desk, place: TypingPlace): readonly Offer[] {
  const kind = place.definition?.kind;
  if (!kind) return [];
  const typed = place.word.includes('.') ? place.word.slice(0, place.word.lastIndexOf('.')) : '';
  const within = typed === '' ? wholeBlock(desk, place) : wholePath(desk, place, typed);
  const inserted = (word: string) => (typed === '' ? word : `${typed}.${word}`);
  const offers = [
    ...propertyOffers(desk, place, within, kind, inserted),
    ...partOffers(desk, place, within, kind, inserted),
  ];
  if (typed !== '') return offers;
  const inBody = place.block === '';
  return [
    ...(inBody ? keywordOffers(kind, place.inside) : []),
    ...offers,
    ...(inBody && kind === 'recipe' && !place.inside ? wholeChanges(desk, place) : []),
  ];
}

function wholeBlock(desk: Desk, place: TypingPlace): string {
  return place.block === '' ? '' : desk.workshop.catalogue.canonical(place.block, place.definition?.kind);
}

function propertyOffers(
  desk: Desk,
  place: TypingPlace,
  within: string,
  kind: DefinitionKind,
  inserted: (word: string) => string,
): readonly Offer[] {
  const { properties } = desk.workshop.catalogue.children(within, kind);
  const already = startValues(desk, place);
  return properties
    .filter((property) => !property.path.endsWith('*'))
    .map((property, rank) => {
      const word = lastWord(property.path);
      const path = within === '' ? word : `${within}.${word}`;
      const first = typicalText(desk, place, property, path);
      const value = first?.snippet ?? valuesOf(desk, place, property, path)[0]?.insert ?? '';
      return {
        label: inserted(word),
        kind: 'property',
        detail: first?.detail ?? property.kind,
        sentence: property.sentence,
        insert: `${inserted(word)}: ${value}`,
        snippet: true,
        // In a recipe what is inherited is changed, not stated again.
        rank: (kind === 'recipe' && already?.has(path) ? 300 : 100) + rank / 1000,
        synonyms: property.synonyms,
      };
    });
}

function partOffers(
  desk: Desk,
  place: TypingPlace,
  within: string,
  kind: DefinitionKind,
  inserted: (word: string) => string,
): readonly Offer[] {
  const { parts } = desk.workshop.catalogue.children(within, kind);
  return parts.flatMap((part, rank) =>
    membersNamed(part).map((word) => ({
      label: inserted(word),
      kind: 'part',
      sentence: part.sentence,
      insert: `${inserted(word)} {\n  $0\n}`,
      snippet: true,
      rank: 200 + rank / 1000,
      synonyms: part.synonyms,
    })),
  );
}

/** The catalogue's usual names for members a maker may name freely; the part's own name otherwise. */
function membersNamed(part: Part): readonly string[] {
  const word = lastWord(part.path);
  return word === '*' ? (part.members ?? []) : [word];
}

/** Whole changes of what the parent says, behind everything else until `ch` is typed. */
function wholeChanges(desk: Desk, place: TypingPlace): readonly Offer[] {
  return changedPaths(desk, place).map((offer) => ({
    ...offer,
    label: `change ${offer.label}`,
    insert: `change ${offer.insert}`,
    rank: 20 + offer.rank,
  }));
}

interface Keyword {
  readonly word: string;
  readonly insert: string;
  readonly sentence: string;
  readonly in: readonly DefinitionKind[];
}

const KEYWORDS: readonly Keyword[] = [
  { word: 'because', insert: 'because "$1"', sentence: 'Why this instrument differs from its parent.', in: ['recipe'] },
  {
    word: 'together',
    insert: 'together "${1:why they belong together}" {\n  $0\n}',
    sentence: 'One tweak made in several places: it counts once.',
    in: ['recipe'],
  },
  { word: 'change', insert: 'change ', sentence: 'A checked change of what the parent says.', in: ['recipe'] },
  {
    word: 'hold',
    insert: 'hold ',
    sentence: 'Keep a computed quantity as the parent has it by solving for a value.',
    in: ['recipe'],
  },
  { word: 'expect', insert: 'expect ', sentence: 'A test of what the recipe comes out as.', in: ['recipe'] },
  { word: 'add', insert: 'add ', sentence: 'Add a member the parent does not have.', in: ['recipe', 'order'] },
  { word: 'drop', insert: 'drop ', sentence: 'Take a member away.', in: ['recipe', 'order'] },
  {
    word: 'with',
    insert: 'with ',
    sentence: 'Take a named package of appointments.',
    in: ['recipe', 'model', 'order'],
  },
  {
    word: 'allow',
    insert: 'allow ${1:2} because "$2"',
    sentence: 'Allow this one recipe more changes than the shop’s rule.',
    in: ['recipe'],
  },
  {
    word: 'accept',
    insert: 'accept ',
    sentence: 'Silence one kind of finding here, with a reason.',
    in: ['recipe', 'wood', 'build', 'model'],
  },
  {
    word: 'note',
    insert: 'note "$1"',
    sentence: 'A remark, kept and printed.',
    in: ['recipe', 'build', 'wood', 'order', 'model'],
  },
  {
    word: 'reading',
    insert: 'reading ${1:day-1} {\n  stage: strung\n  strings-damped: yes\n  $0\n}',
    sentence: 'Measurements of one occasion, with the conditions that make them comparable.',
    in: ['build'],
  },
  {
    word: 'request',
    insert: 'request ${1:2026-01-31} {\n  $0\n}',
    sentence: 'What the client asks for after the order was agreed.',
    in: ['order'],
  },
  {
    word: 'vary at most',
    insert: 'vary at most ${1:1}',
    sentence: 'How many changes an instrument may make.',
    in: ['shop'],
  },
];

function keywordOffers(kind: DefinitionKind, inside: TypingPlace['inside']): readonly Offer[] {
  const inGroup = ['change', 'add', 'drop'];
  return KEYWORDS.filter(
    (keyword) => keyword.in.includes(kind) && (inside !== 'together' || inGroup.includes(keyword.word)),
  ).map(({ word, insert, sentence }, rank) => ({
    label: word,
    kind: 'keyword',
    sentence,
    insert,
    snippet: true,
    rank,
  }));
}

function lastWord(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}
