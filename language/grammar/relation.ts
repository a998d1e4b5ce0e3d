/** Where in a head the relation stands: `recipe tarn-7 from tarn-6`. Its word may be a name as well. */
export const RELATION_WORDS: ReadonlySet<string> = new Set(['is', 'for', 'from', 'of']);

/** The index of the relation word among the words after the kind; -1 for none. */
export function relationIndex(words: readonly string[]): number {
  return words.findIndex((word, i) => {
    if (!RELATION_WORDS.has(word)) return false;
    if (i > 0) return true;
    // `recipe from` is called from; `recipe from tarn-6` lacks its name; `recipe from from tarn-6` lacks nothing.
    return words.length > 1 && !(words.length > 2 && RELATION_WORDS.has(words[1] ?? ''));
  });
}
