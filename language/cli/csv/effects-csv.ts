/** What each change did, as a table for a spreadsheet: a row for each effect, the three columns with their give or take. */
import type { ModelEffectsTable } from '../../reports/effects/model-effects-table.js';
import type { Interval } from '../../recipes/builds/response-effects.js';
import { type Escaped, forCsv } from '../border.js';

const COLUMNS = ['computed', 'builds', 'together'] as const;

export function effectsAsCsv({ responses }: ModelEffectsTable): Escaped {
  const head = [
    'reading',
    'conditions',
    'unit',
    'change',
    ...COLUMNS.flatMap((column) => [column, `${column} ±`]),
    'verdict',
  ];
  const rows = responses.flatMap(({ name, conditions, unit, effects }) =>
    effects.map(({ what, sizes, verdict }) => [
      ...[name, conditions, unit, what],
      ...COLUMNS.flatMap((column) => plain(sizes[column])),
      verdict,
    ]),
  );
  return forCsv([head, ...rows]);
}

function plain(interval: Interval | undefined): readonly (number | string)[] {
  const digits = (value: number) => Number(value.toPrecision(6));
  return interval ? [digits(interval.amount), digits(interval.band)] : ['', ''];
}
