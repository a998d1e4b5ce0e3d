/** Readings of a model's builds that are so far from the others that a slip is likelier than a guitar. */
import { sameDimension } from '../../quantities/dimension.js';
import type { Held } from '../instrument/instrument.js';
import type { Questions } from '../questions.js';
import { buildsOfModel } from './builds-of-model.js';
import { rowsOf } from './design-rows.js';
import { responsesOf } from './responses.js';

export interface OddReading {
  /** Canonical path of what was read. */
  readonly path: string;
  readonly held: Held;
  /** What others read, one of the middle. */
  readonly like: Held;
}

/** By the name of the build. */
export function oddReadings(
  workshop: Pick<Questions, 'shelf' | 'build' | 'lineage' | 'catalogue'>,
  model: string,
): ReadonlyMap<string, readonly OddReading[]> {
  const rows = rowsOf(buildsOfModel(workshop, model));
  const found = new Map<string, OddReading[]>();
  for (const { path, odd, values } of responsesOf(rows, (path, held) => isReadable(workshop, path, held))) {
    const sorted = [...values].sort((a, b) => a.si - b.si);
    const like = sorted[Math.floor(sorted.length / 2)]?.held;
    if (!like) continue;
    for (const { row, held } of odd) {
      const name = rows[row]!.definition.name.text;
      found.set(name, [...(found.get(name) ?? []), { path, held, like }]);
    }
  }
  return found;
}

/** Whether a number has a unit that fits what was read. What the ear said is kept apart from readings. */
export function isReadable({ catalogue }: Pick<Questions, 'catalogue'>, path: string, { value }: Held): boolean {
  if (path.startsWith('heard.') || path === 'added-mass') return false;
  const dimension = catalogue.property(path, 'build')?.dimension;
  return value.kind === 'quantity' && !!dimension && sameDimension(value.quantity.dimension, dimension);
}
