/** Ways to a wish, for another program. Numbers are SI. */
import { isDiscernible } from '../../recipes/evaluation/effects.js';
import type { Ways } from '../../recipes/ways/ways.js';
import { tidy } from '../numbers.js';
import { type Escaped, forJson } from '../border.js';

export function waysAsJson({ wish, now, isMet, ways }: Ways): Escaped {
  return forJson({
    wish: { quantity: wish.quantity, low: plain(wish.low), high: plain(wish.high) },
    now: plain(now),
    met: isMet,
    ways: ways.map(({ paths, old, new: size, after, error, also, until }) => ({
      paths,
      old: tidy(old),
      new: tidy(size),
      result: tidy(after),
      uncertainty: tidy(error),
      also: also.map((effect) => ({
        path: effect.path,
        difference: tidy(effect.difference),
        told: isDiscernible(effect),
      })),
      costlyAfter: until.costly ?? null,
      impossibleAfter: until.impossible ?? null,
    })),
  });
}

function plain(number: number | undefined): number | null {
  return number === undefined ? null : tidy(number);
}
