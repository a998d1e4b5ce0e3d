/**
 * Which of many differences stand out when it is allowed that a given share of those named are chance: Y. Benjamini & Y.
 * Hochberg, Controlling the false discovery rate, J. R. Statist. Soc. B 57 (1995) 289, step (1).
 */

/** By index, whether it stands out. `chances`: of each, how likely as much is by chance alone. `share`: of false ones, e.g. 0.05. */
export function standOut(chances: readonly number[], share: number): readonly boolean[] {
  const sorted = [...chances].sort((a, b) => a - b);
  let limit = -1;
  sorted.forEach((chance, i) => {
    if (chance <= (share * (i + 1)) / chances.length) limit = chance;
  });
  return chances.map((chance) => chance <= limit);
}
