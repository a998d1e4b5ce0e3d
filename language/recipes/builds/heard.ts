/**
 * What the ear said of a change: marks with it against marks without it, by their ranks alone and every way of dealing them
 * out. Kept apart from readings, and told whether it was blind.
 */
import { propertiesOf } from '../instrument/values.js';
import type { Reading } from './builds.js';
import type { Design, DesignVariable } from './design-matrix.js';
import type { DesignRow } from './design-rows.js';
import { chanceOfRanks } from './statistics/permutation.js';

export interface Heard {
  /** `heard.response` */
  readonly path: string;
  readonly variable: DesignVariable;
  /** Marks, one for each instrument, 0 … 1. */
  readonly with: readonly number[];
  readonly without: readonly number[];
  /** How likely as large a difference either way is by chance; undefined where there are too many ways to count. */
  readonly chance?: number;
  /** Nobody knew which instrument it was. */
  readonly blind: boolean;
}

/** Every quality marked with and without a declared change. */
export function heardOf({ builds, variables, reference }: Design): readonly Heard[] {
  const paths = new Set(
    builds.flatMap(({ readings }) => readings.flatMap(({ values }) => [...values.keys()].filter(isHeard))),
  );
  return [...paths].flatMap((path) => {
    const marks = builds.map((build) => markOf(build, path));
    const blind = builds.every((build) =>
      build.readings.every((reading) => !reading.values.has(path) || isBlind(build, reading)),
    );
    return variables
      .filter(({ declared }) => declared)
      .flatMap((variable): Heard[] => {
        const [on, off]: [number[], number[]] = [[], []];
        marks.forEach((mark, row) => {
          if (mark === undefined) return;
          (variable.column[row] === variable.column[reference] ? off : on).push(mark);
        });
        if (on.length === 0 || off.length === 0) return [];
        return [{ path, variable, with: on, without: off, chance: chanceOfRanks(on, off), blind }];
      });
  });
}

function isHeard(path: string): boolean {
  return path.startsWith('heard.');
}

/** Of several occasions their mean: one instrument has one mark. */
function markOf({ readings }: DesignRow, path: string): number | undefined {
  const found = readings.flatMap(({ values }) => {
    const value = values.get(path)?.value;
    return value?.kind === 'quantity' ? [value.quantity.si] : [];
  });
  return found.length === 0 ? undefined : found.reduce((sum, mark) => sum + mark, 0) / found.length;
}

function isBlind({ definition }: DesignRow, { span }: Reading): boolean {
  const own = definition.statements.find((statement) => statement.kind === 'reading' && statement.span === span);
  const said = own?.kind === 'reading' ? own.statements : definition.statements;
  return [...propertiesOf(said)].some(
    ({ statement: { path, value } }) => path.text === 'blind' && value.kind === 'name' && value.name === 'yes',
  );
}
