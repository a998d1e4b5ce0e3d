/**
 * The fewest actions that still fail: delta debugging (Zeller and Hildebrandt, "Simplifying and Isolating Failure-Inducing
 * Input", 2002), until nothing more can be left out or the time is up.
 */
export async function smallest<T>(
  all: readonly T[],
  fails: (some: readonly T[]) => Promise<boolean>,
  until: number,
): Promise<readonly T[]> {
  let left = all;
  let parts = 2;
  while (left.length > 1 && Date.now() < until) {
    const size = Math.ceil(left.length / parts);
    let found: readonly T[] | undefined;
    // From the front: what came long before the failure has least to do with it.
    for (let from = 0; from < left.length && !found && Date.now() < until; from += size) {
      const without = [...left.slice(0, from), ...left.slice(from + size)];
      if (without.length > 0 && (await fails(without))) found = without;
    }
    if (found) {
      left = found;
      parts = Math.max(2, parts - 1);
    } else if (size === 1) break;
    else parts = Math.min(left.length, 2 * parts);
  }
  return left;
}
