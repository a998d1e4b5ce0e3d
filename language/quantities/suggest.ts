/** "Did you mean": near matches for a mistyped unit, name or dotted path. */
import { distance } from 'fastest-levenshtein';
import { typedDistance } from './typed-distance.js';

/** Longer words are not worth comparing: nobody mistypes a sentence. */
const LONGEST = 80;

/**
 * The candidates a maker may have meant by `word`, best first; empty when nothing is near. Understands slips of case,
 * a dropped, doubled, swapped or wrong letter, words in another order (`bass-x` for `x-bass`), singular for plural,
 * and, in dotted paths, a right last word under the wrong part.
 */
export function didYouMean(
  word: string,
  candidates: readonly string[],
  { most = 3 }: { most?: number } = {},
): string[] {
  const wanted = word.trim();
  if (wanted.length === 0 || wanted.length > LONGEST) return [];
  const scored: { candidate: string; cost: number }[] = [];
  for (const candidate of new Set(candidates)) {
    if (candidate === wanted) continue;
    const cost = costOf(wanted, candidate);
    if (cost !== undefined) scored.push({ candidate, cost });
  }
  scored.sort((a, b) => a.cost - b.cost);
  const best = scored[0]?.cost ?? 0;
  // A near-certain match makes distant ones noise.
  const worthNaming = scored.filter(({ cost }) => cost <= (best < 0.3 ? best : Math.max(1.5, best * 2)));
  return worthNaming.slice(0, most).map(({ candidate }) => candidate);
}

/** Smaller is nearer; undefined is too far to mention. The fixed costs only set the order among kinds of slip. */
function costOf(wanted: string, candidate: string): number | undefined {
  const a = wanted.toLowerCase();
  const b = candidate.toLowerCase();
  if (a === b) return 0.1;
  const whole = slipCost(a, b);
  const costs = [whole];
  if (sameWords(a, b)) costs.push(0.5);
  const lastA = lastSegment(a);
  const lastB = lastSegment(b);
  if (lastA !== a || lastB !== b) {
    const last = lastA === lastB ? 0 : slipCost(lastA, lastB);
    if (last !== undefined) {
      // The same last word elsewhere: better, the more of the way there is the same.
      const way = distance(withoutLast(a), withoutLast(b)) / Math.max(withoutLast(a).length, withoutLast(b).length, 1);
      costs.push(1 + last + way);
    }
  }
  const possible = costs.filter((cost) => cost !== undefined);
  return possible.length === 0 ? undefined : Math.min(...possible);
}

/** What it costs to turn one word into the other, or undefined when that is too much for words so short. */
function slipCost(a: string, b: string): number | undefined {
  if (stem(a) === stem(b)) return 0.4;
  if (withoutDoubles(a) === withoutDoubles(b) && distance(a, b) <= 3) return 0.25 * distance(a, b);
  const shorter = Math.min(a.length, b.length);
  const allowed = shorter <= 1 ? 0 : shorter <= 4 ? 1 : Math.min(shorter <= 8 ? 2 : 3, 0.36 * shorter);
  if (Math.abs(a.length - b.length) > Math.ceil(allowed)) return undefined;
  const slips = typedDistance(a, b);
  if (slips > allowed) return undefined;
  // The first letter is the one people rarely get wrong.
  return a[0] === b[0] ? slips : slips + 0.3;
}

function stem(word: string): string {
  return word.length > 3 ? word.replace(/(?<=s|x|z|ch|sh)es$|(?<!s)s$/, '') : word;
}

/** `mmm` and `mm`, `bracce` and `brace` are the same word with a key held too long. */
function withoutDoubles(word: string): string {
  return word.replace(/(.)\1+/g, '$1');
}

function sameWords(a: string, b: string): boolean {
  const words = (text: string): string[] =>
    text
      .split(/[-.\s_]+/)
      .map(stem)
      .sort();
  return words(a).join(' ') === words(b).join(' ');
}

function lastSegment(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}

function withoutLast(path: string): string {
  return path.slice(0, Math.max(path.lastIndexOf('.'), 0));
}
