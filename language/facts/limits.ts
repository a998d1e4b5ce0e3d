/**
 * How much is read at most. Each is far beyond what a maker writes and near enough that whoever meets it still gets an
 * answer at once; where one is met, a finding names it and the rest goes on. How much of one plate is solved stands with the
 * solver (`mechanics/plate/limits.ts`).
 */
export const LIMITS = {
  /** Characters of a file; a notebook of a life's work has some two million. */
  fileCharacters: 5_000_000,
  /** Definitions of a file, and words and signs in all of them: some twenty-five times a well-filled notebook. */
  definitions: 2000,
  fileWords: 100_000,
  /** Words and signs of one definition; a long recipe has some 800. */
  words: 10_000,
  /** Characters of a path: the longest of the catalogue has 40. */
  pathCharacters: 200,
  /** Characters of a text in quotes: some two pages. */
  textCharacters: 10_000,
  /** Blocks within blocks. */
  blocks: 100,
  /** Recipes in one line, from the base to the last: five instruments a year for fifty years. */
  generations: 250,
  /** Findings of one file that are told one by one, and of one kind in one definition. */
  findings: 1000,
  alike: 50,
} as const;
