/** The numbers of a definition, one by one, each with what the catalogue expects of it. */
import { plausible } from '../catalogue/plausible.js';
import type { PlausibleRange } from '../catalogue/property.js';
import { type Dimension, sameDimension } from '../quantities/dimension.js';
import type { Definition, QuantityValue, Value } from '../facts/facts.js';
import type { Instrument } from '../recipes/instrument/instrument.js';
import type { Workshop } from '../recipes/workshop.js';
import type { Written } from '../recipes/instrument/written.js';
import { tagsFor } from './in-force.js';

export interface Amount {
  readonly written: Written;
  readonly as: Written['values'][number]['as'];
  readonly value: QuantityValue;
  readonly dimension: Dimension;
  /** Of a size: `length`, `width`, `thickness`. */
  readonly part?: string;
}

/** Numbers whose dimension is known. A size, a point, a range or a list gives one for each of its parts. */
export function* amountsIn(definition: Definition, workshop: Workshop): Iterable<Amount> {
  for (const written of workshop.written(definition)) {
    const dimension = expectedOf(written);
    if (!dimension) continue;
    for (const { as, value } of written.values) {
      for (const { number, part } of numbersIn(value)) yield { written, as, value: number, dimension, part };
    }
  }
}

export function hasItsDimension({ value, dimension }: Amount): boolean {
  return sameDimension(value.quantity.dimension, dimension);
}

/** The range that fits the instrument, the wood and the part, or undefined where none is known. */
export function rangeFor(
  amount: Pick<Amount, 'written' | 'part'>,
  definition: Definition,
  workshop: Workshop,
): PlausibleRange | undefined {
  const { property, canonical } = amount.written;
  if (!property || property.ranges.length === 0) return undefined;
  return plausible(property, [...tagsOf(amount, definition, workshop)], canonical);
}

function expectedOf({ role, property, derived }: Written): Dimension | undefined {
  if (role === 'quantity') return derived?.dimension ?? property?.dimension;
  return role === 'value' ? property?.dimension : undefined;
}

/** Every number in a value, of a size with the name of its part. */
export function* numbersIn(value: Value): Iterable<{ number: QuantityValue; part?: string }> {
  switch (value.kind) {
    case 'quantity':
      yield { number: value };
      break;
    case 'range':
      if (value.low) yield { number: value.low };
      if (value.high) yield { number: value.high };
      break;
    case 'size':
      for (const [i, number] of value.parts.entries()) yield { number, part: SIZE_PARTS[i] };
      break;
    case 'point':
      yield { number: value.station };
      yield { number: value.offset };
      break;
    case 'list':
      for (const item of value.items) yield* numbersIn(item);
      break;
    default:
      break;
  }
}

const SIZE_PARTS: readonly (string | undefined)[] = ['length', 'width', 'thickness'];

function tagsOf(
  { part, written }: Pick<Amount, 'written' | 'part'>,
  definition: Definition,
  workshop: Workshop,
): readonly string[] {
  const tags = part === undefined ? [] : [part];
  if (definition.kind === 'wood') return [...tags, ...tagsOfWood(definition, workshop)];
  const instrument = instrumentOf(definition, workshop);
  return instrument ? [...tags, ...tagsFor(written.canonical, instrument, workshop)] : tags;
}

export function tagsOfWood(definition: Definition, workshop: Workshop): readonly string[] {
  const use = workshop.stated(definition).get('use')?.value;
  const species = workshop.speciesOf(definition.name.text);
  const kind = species && workshop.stated(species).get('kind')?.value;
  return [use, kind].flatMap((value) => (value?.kind === 'name' ? [value.name] : [])).concat(species?.name.text ?? []);
}

function instrumentOf(
  { kind, name, relation }: Definition,
  workshop: Workshop,
): Pick<Instrument, 'values'> | undefined {
  if (kind === 'recipe') return workshop.instrument(name.text);
  if (kind === 'model') return workshop.model(name.text);
  return (kind === 'build' || kind === 'order') && relation ? workshop.instrument(relation.target.text) : undefined;
}

/** Where a range quoted for one use of wood says nothing about another. */
export function isWorthAsking({ written, part }: Amount, definition: Definition, workshop: Workshop): boolean {
  if (definition.kind !== 'wood' || written.canonical !== 'blank' || part !== 'thickness') return true;
  const tags = tagsOfWood(definition, workshop);
  return tags.includes('top');
}
