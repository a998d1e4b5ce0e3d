/** A path in which some of the words are mistyped: read word by word, from part to part. */
import { typedDistance } from '../../quantities/typed-distance.js';
import { didYouMean } from '../../quantities/suggest.js';
import type { Definition } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';

interface Way {
  readonly path: string;
  readonly cost: number;
}

/** How many ways are followed at once, and how many paths are offered. */
const MOST = 3;

/**
 * The catalogue's paths that the words may be slips of, best first: each word is one of the part's own, another word for it,
 * or nearly one of these. `within`: the canonical part around, `''` for none.
 */
export function slippedPath(
  words: readonly string[],
  within: string,
  isPart: boolean,
  { kind }: Definition,
  { catalogue }: Workshop,
): readonly string[] {
  let ways: readonly Way[] = [{ path: within, cost: 0 }];
  for (const [at, word] of words.entries()) {
    const isLast = at === words.length - 1;
    ways = ways
      .flatMap((way) => onward(way, word, isLast))
      .sort((a, b) => a.cost - b.cost)
      .slice(0, MOST);
  }
  const [best] = ways;
  if (best === undefined) return [];
  const near = ways.filter(({ cost }) => cost <= Math.max(best.cost * 1.5, best.cost + 0.2));
  return [...new Set(near.map(({ path }) => path))];

  function onward({ path, cost }: Way, word: string, isLast: boolean): readonly Way[] {
    const { properties, parts } = catalogue.children(path, kind);
    // A synonym leads to the catalogue's own word.
    const known = new Map<string, string>();
    const wanted = isLast && !isPart ? [...properties, ...parts.filter(({ path: one }) => !valueless(one))] : parts;
    for (const { path: one, synonyms } of wanted) {
      const own = one.slice(one.lastIndexOf('.') + 1);
      if (own !== '*') for (const each of [own, ...synonyms]) if (!known.has(each)) known.set(each, own);
    }
    const to = (own: string): string => (path === '' ? own : `${path}.${own}`);
    const low = word.toLowerCase();
    const exact = known.get(word) ?? known.get(low);
    const found: Way[] = exact === undefined ? [] : [{ path: to(exact), cost }];
    const canonical = exact === undefined ? catalogue.canonical(to(word), kind) : '';
    if (found.length === 0 && canonical !== to(word) && catalogue.part(canonical))
      found.push({ path: canonical, cost });
    if (found.length > 0) return found;
    const near = didYouMean(low, [...known.keys()]).map((each) => ({ each, own: known.get(each) ?? each }));
    const others = near.map(({ each, own }) => ({ path: to(own), cost: cost + typedDistance(low, each) + FIRST }));
    // A member the maker named himself stands as it is.
    const free = parts.some(({ path: one }) => one.endsWith('*')) && !isLast;
    return free ? [...others, { path: to(word), cost }] : others;
  }

  /** A part by itself takes no value. */
  function valueless(path: string): boolean {
    return catalogue.property(path, kind) === undefined;
  }
}

/** One slip is likelier than two. */
const FIRST = 0.1;
