/** Values: the parent's as the old one, names by kind, choices, typical numbers; and units behind a number. */
import type { Property } from '../catalogue/property.js';
import { unitsOf } from '../quantities/units.js';
import { writeQuantity } from '../quantities/write.js';
import type { DefinitionKind, Value } from '../recipes/facts.js';
import { KINDS_OF_VALUE } from '../recipes/mentions.js';
import { propertyOf, startValues, tagsOf, wholePath } from './completion-context.js';
import type { Offer } from './completion.js';
import type { Desk } from './desk.js';
import type { At, TypingPlace } from './typing-place.js';
import { writeValue } from '../checks/phrases.js';

type Side = Extract<At, { kind: 'value' }>['side'];

export function valuesFor(desk: Desk, place: TypingPlace, path: string, side: Side): readonly Offer[] {
  const whole = wholePath(desk, place, path);
  if (side === 'expected') return bounds(desk, place, whole);
  const held = startValues(desk, place)?.get(whole)?.value;
  if (side === 'old') return held ? [oldValue(held), step(held)].filter((offer) => offer !== undefined) : [];
  const property = propertyOf(desk, place, whole);
  return property ? valuesOf(desk, place, property, whole, held) : [];
}

export function unitsFor(desk: Desk, place: TypingPlace, path: string): readonly Offer[] {
  const whole = wholePath(desk, place, path);
  const property = propertyOf(desk, place, whole);
  const dimension = property?.dimension ?? desk.workshop.derivedAt(whole)?.dimension;
  if (!dimension) return [];
  const first = property?.unit ?? desk.workshop.derivedAt(whole)?.unit;
  return unitsOf(dimension).map((unit, rank) => ({
    label: unit.symbol,
    kind: 'unit',
    sentence: unit.sentence,
    insert: unit.symbol,
    rank: unit.symbol === first ? -1 : rank,
    synonyms: unit.spellings,
  }));
}

/** Offers for the value of a property, best first. */
export function valuesOf(
  desk: Desk,
  place: TypingPlace,
  property: Property,
  path: string,
  held?: Value,
): readonly Offer[] {
  const kinds = KINDS_OF_VALUE[property.kind];
  if (kinds) return names(desk, kinds, path);
  if (property.kind === 'choice') {
    return (property.choices ?? []).map((choice, rank) => ({ label: choice, kind: 'choice', insert: choice, rank }));
  }
  const text = typicalText(desk, place, property, path);
  const offers: Offer[] = [];
  if (held) {
    const written = writeValue(held);
    offers.push({ label: written, kind: 'value', detail: 'as the parent has it', insert: written, rank: 0 });
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
  return offers;
}

/** A value to start from: typical where the catalogue knows one, otherwise a blank of the right shape. */
export function typicalText(
  desk: Desk,
  place: TypingPlace,
  property: Property,
  path: string,
): { readonly label: string; readonly snippet: string; readonly detail: string } | undefined {
  const unit = property.unit ?? '';
  const detail = property.unit ?? property.kind;
  const range = desk.workshop.catalogue.plausibleRange(path, tagsOf(desk, place), place.definition?.kind);
  switch (property.kind) {
    case 'quantity':
    case 'ratio':
    case 'count': {
      if (!property.dimension) return undefined;
      const typical = range ? writeQuantity(range.typical, property.dimension, { unit }) : `0 ${unit}`.trim();
      const [number, ...rest] = typical.split(' ');
      const label = range ? typical : `… ${unit}`.trim();
      return { label, snippet: [`\${1:${number}}`, ...rest].join(' '), detail: range ? 'typical' : detail };
    }
    case 'size':
      return { label: `… x … ${unit}`, snippet: `\${1:0} ${unit} x \${2:0} ${unit} x \${3:0} ${unit}`, detail };
    case 'point':
      return { label: `(…, …) ${unit}`, snippet: `(\${1:0} ${unit}, \${2:0} ${unit})`, detail };
    case 'text':
      return { label: '"…"', snippet: '"${1:}"', detail };
    case 'date':
      return { label: 'a date', snippet: '${1:2026}-${2:01}-${3:01}', detail: 'year-month-day' };
    case 'list':
      return { label: '…, …', snippet: unit === '' ? '${1:}, ${2:}' : `\${1:0} ${unit}, \${2:0} ${unit}`, detail };
    default:
      return undefined;
  }
}

function oldValue(held: Value): Offer {
  const written = writeValue(held);
  return {
    label: `${written} -> …`,
    kind: 'change',
    detail: 'what the parent says',
    insert: `${written} -> \${1:${snippetText(written)}}`,
    snippet: true,
    rank: 0,
  };
}

function step(held: Value): Offer | undefined {
  if (held.kind !== 'quantity') return undefined;
  const unit = held.quantity.unit?.symbol;
  if (unit === undefined) return undefined;
  return {
    label: 'by …',
    kind: 'change',
    detail: 'a step from what the parent says',
    insert: `by \${1:-0.1} ${unit}`,
    snippet: true,
    rank: 1,
  };
}

function bounds(desk: Desk, place: TypingPlace, path: string): readonly Offer[] {
  const quantity = desk.workshop.derivedAt(path);
  if (!quantity) return [];
  const recipe = place.definition?.kind === 'recipe' ? place.definition.name.text : undefined;
  const now = recipe === undefined ? undefined : desk.workshop.evaluation(recipe)?.number(path);
  const text =
    now === undefined ? `0 ${quantity.unit}` : writeQuantity(now, quantity.dimension, { unit: quantity.unit });
  const [number, ...unit] = text.split(' ');
  const rest = unit.join(' ');
  const detail = now === undefined ? undefined : `now ${text}`;
  const offer = (label: string, insert: string, rank: number): Offer => ({
    label,
    kind: 'value',
    detail,
    insert,
    snippet: true,
    rank,
  });
  return [
    offer(`below … ${rest}`, `below \${1:${number}} ${rest}`, 0),
    offer(`above … ${rest}`, `above \${1:${number}} ${rest}`, 1),
    offer(`….. … ${rest}`, `\${1:${number}}..\${2:${number}} ${rest}`, 2),
  ];
}

function names(desk: Desk, kinds: readonly DefinitionKind[], path: string): readonly Offer[] {
  return kinds.flatMap((kind, i) =>
    desk.shelf.names(kind).map((name) => {
      const definition = desk.shelf.find(kind, name)!;
      const use = kind === 'wood' ? desk.workshop.stated(definition).get('use')?.value : undefined;
      const fits = use?.kind === 'name' && path.startsWith(use.name);
      return {
        label: name,
        kind: 'wood' as const,
        detail: definition.relation?.target.text ?? kind,
        insert: name,
        rank: i + (fits ? -1 : 0),
      };
    }),
  );
}

/** `$`, `}` and `\` mean something inside a snippet. */
export function snippetText(text: string): string {
  return text.replace(/[$}\\]/g, '\\$&');
}
