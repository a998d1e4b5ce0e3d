/** Whether a value can be used at all. What is wrong with one that cannot is told once, where it stands. */
import type { Property } from '../catalogue/property.js';
import { isNumber, sameDimension } from '../quantities/dimension.js';
import type { NameValue, TextValue, Value } from '../facts/facts.js';
import { notesIn } from '../quantities/note-runs.js';
import { KINDS_OF_VALUE } from '../recipes/shelf/mentions.js';
import type { Workshop } from '../recipes/workshop.js';
import { numbersIn } from './amounts.js';

/** Of the sort the property takes, its numbers with their units, its name that of something in the folder. */
export function isSound(value: Value, property: Property | undefined, workshop: Workshop): boolean {
  if (!property || !fits(value, property)) return false;
  const { dimension } = property;
  if (dimension && !isNumber(dimension)) {
    for (const { number } of numbersIn(value)) if (!sameDimension(number.quantity.dimension, dimension)) return false;
  }
  const kinds = KINDS_OF_VALUE[property.kind];
  if (!kinds || value.kind !== 'name' || property.words?.includes(value.name)) return true;
  return kinds.some((kind) => workshop.shelf.find(kind, value.name));
}

/** `EADGBE`, `"E4 B3 G3"`: several notes in one word or text. */
function isTuning(value: NameValue | TextValue): boolean {
  return (notesIn(value.kind === 'name' ? value.name : value.text)?.length ?? 0) > 1;
}

/** Whether a value is of the sort a property takes, whatever its unit. */
export function fits(value: Value, property: Property): boolean {
  // `unknown` is a value a maker may write anywhere.
  if (value.kind === 'unknown') return true;
  if (value.kind === 'name' && property.words?.includes(value.name)) return true;
  switch (property.kind) {
    case 'quantity':
    case 'count':
    case 'ratio':
      return value.kind === 'quantity';
    case 'size':
      return value.kind === 'size';
    case 'point':
      return value.kind === 'point';
    case 'list':
      return property.dimension
        ? value.kind === 'list' || value.kind === 'quantity' || value.kind === 'point'
        : value.kind === 'list' || ((value.kind === 'name' || value.kind === 'text') && !isTuning(value));
    case 'text':
      return value.kind === 'text' || value.kind === 'name';
    case 'choice':
      return value.kind === 'name' && (property.choices ?? []).includes(value.name);
    case 'date':
      return value.kind === 'date';
    case 'wood':
    case 'species':
    case 'strings':
    case 'rig':
    case 'model':
    case 'part':
      return value.kind === 'name';
  }
}
