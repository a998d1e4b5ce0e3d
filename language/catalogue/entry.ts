/** How a catalogue entry is written: one call, one property. */
import { DIMENSION } from '../quantities/dimension.js';
import type { DefinitionKind } from '../facts/facts.js';
import { OFFERED_UNITS, type OfferedUnit } from './offered-units.js';
import type { Freeze, PlausibleRange, Property, ValueKind, VariableClass } from './property.js';

/** Definitions that describe an instrument: as meant, as made, as asked for. */
export const INSTRUMENT: readonly DefinitionKind[] = ['model', 'recipe', 'build', 'order'];
/** Those, and a named package of appointments. */
export const OPTIONAL: readonly DefinitionKind[] = [...INSTRUMENT, 'appointments'];

/** What most entries of a file have in common. */
export interface Shared {
  readonly where: readonly DefinitionKind[];
  readonly class: VariableClass;
  readonly freeze?: Freeze;
}

/** What one entry may say beyond its path and its sentence. */
export interface Details extends Partial<Shared> {
  readonly ranges?: readonly PlausibleRange[];
  /** Other words makers use for the last word of the path. */
  readonly also?: readonly string[];
  /** Words accepted in place of the value. */
  readonly words?: readonly string[];
}

type Unit = OfferedUnit | '';

export interface EntryWriter {
  quantity(path: string, unit: OfferedUnit, sentence: string, details?: Details): Property;
  point(path: string, unit: OfferedUnit, sentence: string, details?: Details): Property;
  size(path: string, unit: OfferedUnit, sentence: string, details?: Details): Property;
  /** A list of quantities, or, with no unit, of names or texts. */
  list(path: string, unit: Unit, sentence: string, details?: Details): Property;
  count(path: string, sentence: string, details?: Details): Property;
  /** A pure number; `%` where makers say it in per cent. */
  ratio(path: string, unit: '%' | '', sentence: string, details?: Details): Property;
  choice(path: string, choices: readonly string[], sentence: string, details?: Details): Property;
  text(path: string, sentence: string, details?: Details): Property;
  date(path: string, sentence: string, details?: Details): Property;
  /** The name of a definition or of a part. */
  name(
    path: string,
    kind: 'wood' | 'species' | 'strings' | 'rig' | 'model' | 'part',
    sentence: string,
    details?: Details,
  ): Property;
}

export function entries(shared: Shared): EntryWriter {
  const write = (
    path: string,
    kind: ValueKind,
    unit: Unit,
    sentence: string,
    details: Details = {},
    choices?: readonly string[],
  ): Property => ({
    path,
    where: details.where ?? shared.where,
    kind,
    ...(unit === '' ? {} : { dimension: DIMENSION[OFFERED_UNITS[unit].dimension], unit }),
    ...(kind === 'count' || (kind === 'ratio' && unit === '') ? { dimension: DIMENSION.number } : {}),
    ...(choices ? { choices } : {}),
    ...(details.words ? { words: details.words } : {}),
    ranges: details.ranges ?? [],
    class: details.class ?? shared.class,
    ...((details.freeze ?? shared.freeze) ? { freeze: details.freeze ?? shared.freeze } : {}),
    synonyms: details.also ?? [],
    sentence,
  });
  return {
    quantity: (path, unit, sentence, details) => write(path, 'quantity', unit, sentence, details),
    point: (path, unit, sentence, details) => write(path, 'point', unit, sentence, details),
    size: (path, unit, sentence, details) => write(path, 'size', unit, sentence, details),
    list: (path, unit, sentence, details) => write(path, 'list', unit, sentence, details),
    count: (path, sentence, details) => write(path, 'count', '', sentence, details),
    ratio: (path, unit, sentence, details) => write(path, 'ratio', unit, sentence, details),
    choice: (path, choices, sentence, details) => write(path, 'choice', '', sentence, details, choices),
    text: (path, sentence, details) => write(path, 'text', '', sentence, details),
    date: (path, sentence, details) => write(path, 'date', '', sentence, details),
    name: (path, kind, sentence, details) => write(path, kind, '', sentence, details),
  };
}

/** A plausible range in the unit its source speaks, kept in SI. A pure number or a count has the unit `''`. */
export function range(
  unit: Unit,
  low: number,
  typical: number,
  high: number,
  source: string,
  more: { readonly of?: string; readonly note?: string } = {},
): PlausibleRange {
  const { factor, offset } = unit === '' ? { factor: 1, offset: 0 } : { offset: 0, ...OFFERED_UNITS[unit] };
  const si = (value: number) => value * factor + offset;
  return { low: si(low), typical: si(typical), high: si(high), ...more, source };
}

export function part(path: string, sentence: string, also: readonly string[] = [], members?: readonly string[]) {
  return { path, sentence, synonyms: also, ...(members ? { members } : {}) };
}
