/**
 * How far apart two words are for hands that type: two letters swapped, a key beside the right one, a letter doubled, a vowel
 * heard as another are nearer than any other slip. Weights are common practice of spelling correction, from memory.
 */

/**
 * The least cost of turning `a` into `b`: the optimal string alignment distance with weights between 0.3 and 1 for each
 * slip; 0 for equal words.
 */
export function typedDistance(a: string, b: string): number {
  const [from, to] = [Array.from(a), Array.from(b)];
  let before: number[] = [];
  let row = [0];
  for (let j = 1; j <= to.length; j++) row.push((row[j - 1] ?? 0) + missing(to, j - 1));
  for (let i = 1; i <= from.length; i++) {
    const next = [(row[0] ?? 0) + missing(from, i - 1)];
    for (let j = 1; j <= to.length; j++) {
      const [x = '', y = ''] = [from[i - 1], to[j - 1]];
      let cost = Math.min(
        (row[j] ?? 0) + missing(from, i - 1),
        (next[j - 1] ?? 0) + missing(to, j - 1),
        (row[j - 1] ?? 0) + mistaken(x, y),
      );
      if (x !== y && x === to[j - 2] && from[i - 2] === y) cost = Math.min(cost, (before[j - 2] ?? 0) + SWAPPED);
      next.push(cost);
    }
    before = row;
    row = next;
  }
  return row[to.length] ?? 0;
}

const SWAPPED = 0.8;

/** A letter too many or too few; less where it only doubles the one before it, or is a hyphen. */
function missing(word: readonly string[], at: number): number {
  const letter = word[at] ?? '';
  if (/[-_. ]/.test(letter)) return 0.3;
  return letter === word[at - 1] ? 0.4 : 1;
}

function mistaken(x: string, y: string): number {
  if (x === y) return 0;
  if (LOOK_ALIKE.some((set) => set.includes(x) && set.includes(y))) return 0.3;
  if (SOUND_ALIKE.some((set) => set.includes(x) && set.includes(y))) return 0.7;
  return NEIGHBOURS.some((row) => row.includes(x + y) || row.includes(y + x)) ? 0.8 : 1;
}

/** Letters and figures taken for each other, and letters written without their marks. */
const LOOK_ALIKE: readonly string[] = ['oO0', 'lI1i', 'sS5', 'bB8', 'zZ2', 'aä', 'oö', 'uü', '-_'];
const SOUND_ALIKE: readonly string[] = ['aeiouyäöü', 'ckq', 'sz', 'fv', 'dt', 'bp', 'gj'];
/** Keys side by side, on the keyboards of English and German. */
const NEIGHBOURS: readonly string[] = ['qwertyuiop', 'qwertzuiop', 'asdfghjkl', 'zxcvbnm', 'yxcvbnm'];
