/** The rows of a design: each build as it was when something was read on it, and what is recorded of it in words. */
import type { Definition } from '../../facts/facts.js';
import type { Held, Instrument } from '../instrument/instrument.js';
import { sameValue } from '../instrument/values.js';
import type { BuildRecord, Reading } from './builds.js';

export interface DesignRow {
  readonly definition: Definition;
  readonly recipe?: Instrument;
  /** As it was then; of what is recorded in words, what all that may have made a difference. */
  readonly values: ReadonlyMap<string, Held>;
  readonly recorded: ReadonlyMap<string, Held>;
  readonly readings: readonly Reading[];
  /** `no-31`; after a rework also what was done. */
  readonly label: string;
  readonly done?: string;
  /** The instrument, and which of its states, by number. */
  readonly owner: number;
  readonly state: number;
}

/** A row for each state of a build in which something was read. */
export function rowsOf(builds: readonly BuildRecord[]): readonly DesignRow[] {
  return builds.flatMap(({ definition, recipe, states, recorded, readings }, owner) =>
    states.flatMap(({ values, rework }, state): DesignRow[] => {
      const own = readings.filter((reading) => reading.state === state);
      if (own.length === 0) return [];
      const name = definition.name.text;
      const done = rework?.reason?.text ?? rework?.kind;
      return [
        {
          ...{ definition, recipe, recorded, readings: own, owner, state },
          ...(done === undefined ? {} : { done }),
          label: state === 0 ? name : `${name}, ${done}`,
          values: new Map([...values, ...factorsIn(recorded, own)]),
        },
      ];
    }),
  );
}

/**
 * What may have made a difference although no recipe speaks of it. A title, a serial number, a label, a note or a day is
 * never a factor.
 */
const FACTORS = ['glue', 'billet', 'hygrometer', 'reader', 'instrument', 'method', 'held'];

export function isFactor(path: string): boolean {
  return FACTORS.some((part) => path === part || path.startsWith(`${part}.`));
}

function factorsIn(recorded: ReadonlyMap<string, Held>, readings: readonly Reading[]): readonly [string, Held][] {
  const found = new Map([...recorded].filter(([path]) => isFactor(path)));
  for (const { conditions } of readings) {
    for (const [path, held] of conditions) {
      if (!isFactor(path)) continue;
      const other = found.get(path);
      // Read on two hygrometers: neither is that of the instrument.
      if (other && !sameValue(other.value, held.value)) found.delete(path);
      else found.set(path, held);
    }
  }
  return [...found];
}

/** What one build leaves unrecorded is taken to be as in the build the others are told from: nobody says otherwise. */
export function filledIn(rows: readonly DesignRow[], reference: number): readonly DesignRow[] {
  const paths = new Set(rows.flatMap(({ values }) => [...values.keys()].filter(isFactor)));
  if (paths.size === 0) return rows;
  return rows.map((row) => {
    const missing = [...paths].flatMap((path): [string, Held][] => {
      if (row.values.has(path)) return [];
      const held = rows[reference]!.values.get(path) ?? rows.find(({ values }) => values.has(path))?.values.get(path);
      return held ? [[path, held]] : [];
    });
    return missing.length === 0 ? row : { ...row, values: new Map([...row.values, ...missing]) };
  });
}

/** Paths recorded otherwise in one row than in another. */
export function recordedFactors(rows: readonly DesignRow[]): readonly string[] {
  const paths = new Set(rows.flatMap(({ values }) => [...values.keys()].filter(isFactor)));
  return [...paths].filter((path) => {
    const all = rows.flatMap(({ values }) => values.get(path) ?? []);
    return all.some((held) => !sameValue(held.value, all[0]!.value));
  });
}
