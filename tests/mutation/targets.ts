/** What is mutated, and the tests that answer for it. Only those of them that reach a mutant are run against it. */
export interface Target {
  readonly name: string;
  readonly files: readonly string[];
  readonly tests: readonly string[];
}

export const TARGETS: readonly Target[] = [
  {
    name: 'memo',
    files: ['language/recipes/shelf/memo.ts', 'language/recipes/shelf/memo-cell.ts'],
    tests: ['tests/recipes/memo.test.ts', 'tests/recipes/memo-in-detail.test.ts'],
  },
  {
    name: 'reader',
    files: ['language/recipes/shelf/reader.ts'],
    tests: [
      'tests/grammar/statements.test.ts',
      'tests/grammar/values.test.ts',
      'tests/grammar/places.test.ts',
      'tests/grammar/suggestions.test.ts',
      'tests/grammar/broken-lines.test.ts',
      'tests/grammar/reader-in-detail.test.ts',
      'tests/recipes/reading-again.test.ts',
    ],
  },
  {
    name: 'quantities',
    files: [
      'language/quantities/number.ts',
      'language/quantities/read.ts',
      'language/quantities/readings.ts',
      'language/recipes/shelf/written-quantity.ts',
      'language/recipes/shelf/written-range.ts',
    ],
    tests: [
      'tests/quantities/number.test.ts',
      'tests/quantities/read.test.ts',
      'tests/quantities/suggest.test.ts',
      'tests/quantities/reading-in-detail.test.ts',
      'tests/grammar/values.test.ts',
    ],
  },
  {
    name: 'counting',
    files: ['language/recipes/instrument/counting.ts'],
    tests: [
      'tests/checks/counting.test.ts',
      'tests/checks/packages.test.ts',
      'tests/recipes/recipes.test.ts',
      'tests/recipes/counting-in-detail.test.ts',
    ],
  },
  {
    name: 'holds',
    files: ['language/recipes/instrument/hold.ts'],
    tests: ['tests/checks/holds.test.ts', 'tests/recipes/recipes.test.ts', 'tests/recipes/holds-in-detail.test.ts'],
  },
  {
    name: 'evidence',
    files: ['language/recipes/builds/evidence.ts', 'language/recipes/builds/evidence-between.ts'],
    tests: [
      'tests/checks/builds.test.ts',
      'tests/recipes/builds/honest.test.ts',
      'tests/recipes/builds/rework.test.ts',
      'tests/recipes/builds/evidence-in-detail.test.ts',
    ],
  },
];
