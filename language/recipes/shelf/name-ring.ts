/** Rings of names: what leads, name by name, back to itself. */
import { LIMITS } from '../../facts/limits.js';

/** The shortest way round from `name` to itself, each name once; undefined when there is none, or none so short as is looked for. */
export function ringThrough(name: string, next: (name: string) => readonly string[]): readonly string[] | undefined {
  const from = new Map<string, string>();
  const waiting = [name];
  for (const at of waiting) {
    for (const one of next(at)) {
      if (one === name) return wayTo(at, from);
      if (from.has(one) || waiting.length > LIMITS.generations) continue;
      from.set(one, at);
      waiting.push(one);
    }
  }
  return undefined;
}

function wayTo(last: string, from: ReadonlyMap<string, string>): readonly string[] {
  const way = [last];
  for (let before = from.get(last); before !== undefined; before = from.get(before)) way.push(before);
  return way.reverse();
}
