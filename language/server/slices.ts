/** An answer that takes long, made piece by piece, so that others are served in between. */

/** How long one slice may hold up whoever is waiting, ms. */
const SLICE = 20;
/** How often it is begun again because of edits, before it is made in one go: otherwise nobody who types fast would ever see it. */
const MOST_BEGUN = 5;

/**
 * All pieces, each from the texts as they stand at the end: after an edit, told by `edits`, it begins again. Undefined as soon
 * as nobody wants it any more.
 */
export async function inSlices<T>(
  pieces: () => Iterable<T>,
  edits: () => number,
  isWithdrawn: () => boolean,
): Promise<readonly T[] | undefined> {
  for (let begun = 1; begun < MOST_BEGUN; begun++) {
    const [before, made]: [number, T[]] = [edits(), []];
    let start = performance.now();
    let isWhole = true;
    for (const piece of pieces()) {
      made.push(piece);
      if (performance.now() - start < SLICE) continue;
      await new Promise((go) => void setTimeout(go, 0));
      if (isWithdrawn()) return undefined;
      isWhole = edits() === before;
      if (!isWhole) break;
      start = performance.now();
    }
    if (isWhole) return made;
  }
  return [...pieces()];
}
