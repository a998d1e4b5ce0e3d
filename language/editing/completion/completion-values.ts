/** Values: the parent's as the old one, names by kind, choices, typical numbers; and units behind a number. */
import { writeValue } from '../../checks/phrases.js';
import type { Property } from '../../catalogue/property.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { unitsOf } from '../../quantities/units.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Value } from '../../facts/facts.js';
import { KINDS_OF_VALUE } from '../../recipes/shelf/mentions.js';
import { english } from '../../wording/wording.js';
import { propertyOf, startValues, tagsOf, wholePath } from './completion-context.js';
import { namesFor } from './completion-names.js';
import type { Offer } from './offer.js';
import type { Desk } from '../../checks/desk.js';
import { snippetText } from './snippet.js';
import type { At } from './typing-statement.js';
import type { TypingPlace } from './typing-place.js';

type ValueDue = Extract<At, { kind: 'value' }>;

export function valuesFor(desk: Desk, place: TypingPlace, { path, side, begun }: ValueDue): readonly Offer[] {
  const whole = wholePath(desk, place, path);
  if (side === 'expected' || side === 'held') return bounds(desk, place, whole, side, begun);
  const held = startValues(desk, place)?.get(whole)?.value;
  if (side === 'old') {
    if (begun !== '') return [];
    return held ? [oldValue(held), step(held), UNKNOWN].filter((offer) => offer !== undefined) : [];
  }
  const property = propertyOf(desk, place, whole);
  return property ? valuesOf(desk, place, property, whole, { held, begun }) : [];
}

export function unitsFor(desk: Desk, place: TypingPlace, path: string, isStep: boolean): readonly Offer[] {
  const whole = wholePath(desk, place, path);
  const property = propertyOf(desk, place, whole);
  const dimension = property?.dimension ?? desk.workshop.derivedAt(whole)?.dimension;
  if (!dimension) return [];
  const first = property?.unit ?? desk.workshop.derivedAt(whole)?.unit;
  const perCent = isStep && dimension.name !== 'number' ? unitsOf(DIMENSION.number) : [];
  return [...unitsOf(dimension), ...perCent.filter(({ symbol }) => symbol === '%')].map((unit, rank) => ({
    label: unit.symbol,
    kind: 'unit',
    sentence: unit.sentence,
    insert: unit.symbol,
    rank: unit.symbol === first ? -1 : rank,
    synonyms: unit.spellings,
  }));
}

/** Offers for the value of a property, best first. `begun`: what is written of it already. */
export function valuesOf(
  desk: Desk,
  place: TypingPlace,
  property: Property,
  path: string,
  { held, begun = '' }: { readonly held?: Value; readonly begun?: string } = {},
): readonly Offer[] {
  const kinds = KINDS_OF_VALUE[property.kind];
  const isList = property.kind === 'list' && begun.endsWith(',');
  if (begun !== '' && !isList) return [];
  const words = (property.words ?? []).map((word, rank) => choice(word, 2 + rank));
  if (kinds) return [...namesFor(desk, kinds, path), ...words];
  if (property.kind === 'choice') return (property.choices ?? []).map(choice);
  if (isList) return [];
  const text = typicalText(desk, place, property, path);
  const offers: Offer[] = [];
  if (held) {
    const written = writeValue(held);
    const detail = desk.workshop.wording.text(heldBy(place));
    offers.push({ label: written, kind: 'value', detail, insert: written, rank: 0 });
  }
  if (text !== undefined && !offers.some((offer) => offer.label === text.label)) {
    offers.push({
      label: text.label,
      kind: 'value',
      detail: text.detail,
      insert: text.snippet,
      snippet: true,
      rank: 1,
    });
  }
  return [...offers, ...words, ...(property.kind === 'text' ? [] : [UNKNOWN])];
}

/** What is to be written, in a word or two: the unit, where there is one. */
export function kindOf({ unit, kind }: Property): string {
  return unit ?? KINDS[kind];
}

const KINDS: Readonly<Record<Property['kind'], string>> = {
  quantity: english('number'),
  count: english('number'),
  ratio: english('number'),
  size: english('three lengths'),
  point: english('place'),
  text: english('words'),
  choice: english('choice'),
  date: english('date'),
  list: english('list'),
  wood: english('wood'),
  species: english('species'),
  strings: english('set of strings'),
  rig: english('rig'),
  model: english('model'),
  part: english('part'),
};

/** Whose value the one in force is. */
export function heldBy({ definition }: TypingPlace): string {
  return definition?.kind === 'recipe' ? english('as the parent has it') : english('as the recipe has it');
}

/** A value to start from: typical where the catalogue knows one, otherwise a blank of the right shape. */
export function typicalText(
  desk: Desk,
  place: TypingPlace,
  property: Property,
  path: string,
): { readonly label: string; readonly snippet: string; readonly detail: string } | undefined {
  const unit = property.unit ?? '';
  const detail = kindOf(property);
  switch (property.kind) {
    case 'quantity':
    case 'ratio':
    case 'count': {
      if (!property.dimension) return undefined;
      const range = desk.workshop.catalogue.plausibleRange(path, tagsOf(desk, place), place.definition?.kind);
      const typical = range ? writeQuantity(range.typical, property.dimension, { unit }) : `0 ${unit}`.trim();
      const label = range ? typical : `… ${unit}`.trim();
      return { label, snippet: numberBlank(typical), detail: range ? english('typical') : detail };
    }
    case 'size':
      return { label: `… x … ${unit}`, snippet: `\${1:0} ${unit} x \${2:0} ${unit} x \${3:0} ${unit}`, detail };
    case 'point':
      return { label: `(…, …) ${unit}`, snippet: `(\${1:0} ${unit}, \${2:0} ${unit})`, detail };
    case 'text':
      return { label: '"…"', snippet: '"${1:}"', detail };
    case 'date':
      return { label: english('a date'), snippet: '${1:2026-01-31}', detail: english('year-month-day') };
    case 'list': {
      const usual = USUAL_LISTS.get(path);
      if (usual) return { label: usual, snippet: listBlanks(usual), detail: english('usual') };
      return { label: '…, …', snippet: unit === '' ? '${1:}, ${2:}' : `\${1:0} ${unit}, \${2:0} ${unit}`, detail };
    }
    default:
      return undefined;
  }
}

/** Six strings in standard tuning, and a light set of steel for them. (string makers’ charts) */
const USUAL_LISTS: ReadonlyMap<string, string> = new Map(
  Object.entries<string>({
    tuning: 'E4, B3, G3, D3, A2, E2',
    gauges: '.012 in, .016 in, .024 in, .032 in, .042 in, .053 in',
    wound: 'plain, plain, wound, wound, wound, wound',
  }),
);

function listBlanks(list: string): string {
  return list
    .split(', ')
    .map((item, i) => item.replace(/^\S+/, (word) => `\${${i + 1}:${word}}`))
    .join(', ');
}

/** `2.85 mm` with the number as a blank. */
export function numberBlank(quantity: string): string {
  const [number = '', ...rest] = quantity.split(' ');
  return [`\${1:${snippetText(number)}}`, ...rest.map(snippetText)].join(' ');
}

function choice(word: string, rank: number): Offer {
  return { label: word, kind: 'choice', insert: word, rank };
}

const UNKNOWN: Offer = {
  label: 'unknown',
  kind: 'keyword',
  sentence: english('A value you know you do not know. Nothing is computed from it, and nothing is guessed.'),
  insert: 'unknown',
  rank: 9,
};

function oldValue(held: Value): Offer {
  const written = writeValue(held);
  return {
    label: `${written} -> …`,
    kind: 'change',
    detail: english('what the parent says'),
    insert: `${snippetText(written)} -> ${newValue(held, written)}`,
    snippet: true,
    rank: 0,
  };
}

/** The blank behind the arrow: of a number its unit stays. */
export function newValue(held: Value, written: string): string {
  return held.kind === 'quantity' && /^\S+ \S+$/.test(written) ? numberBlank(written) : `\${1:${snippetText(written)}}`;
}

function step(held: Value): Offer | undefined {
  if (held.kind !== 'quantity') return undefined;
  const unit = held.quantity.unit?.symbol;
  if (unit === undefined) return undefined;
  return {
    label: 'by …',
    kind: 'change',
    detail: english('a step from what the parent says'),
    insert: `by \${1:-0.1} ${unit}`,
    snippet: true,
    rank: 1,
  };
}

/** What a computed quantity may be expected to be, or held at, with what it is now as the blank. */
function bounds(
  desk: Desk,
  place: TypingPlace,
  path: string,
  side: 'expected' | 'held',
  begun: string,
): readonly Offer[] {
  const quantity = desk.workshop.derivedAt(path);
  if (!quantity) return [];
  const recipe = place.definition?.kind === 'recipe' ? place.definition.name.text : undefined;
  const now = recipe === undefined ? undefined : desk.workshop.evaluation(recipe)?.number(path);
  const text =
    now === undefined ? `0 ${quantity.unit}` : writeQuantity(now, quantity.dimension, { unit: quantity.unit });
  const [number = '', ...unit] = text.split(' ');
  const rest = unit.join(' ');
  const detail = now === undefined ? undefined : desk.workshop.wording.say`now ${text}`;
  const offer = (label: string, insert: string, rank: number): Offer => ({
    label,
    kind: 'value',
    detail,
    insert,
    snippet: true,
    rank,
  });
  if (side === 'held') return [offer(text, `${numberBlank(text)} by `, 0)];
  if (/^(below|above)$|\.\.$/.test(begun)) return [offer(text, numberBlank(text), 0)];
  if (begun !== '') return [];
  return [
    offer(`below … ${rest}`, `below \${1:${number}} ${rest}`, 0),
    offer(`above … ${rest}`, `above \${1:${number}} ${rest}`, 1),
    offer(`….. … ${rest}`, `\${1:${number}}..\${2:${number}} ${rest}`, 2),
  ];
}
