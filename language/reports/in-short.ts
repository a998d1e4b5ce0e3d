/** Effects in the fewest words that still say what moved: `top −9 g`, `x-bass and x-treble stiffness −18 %`. */
import { percent, shownDifference } from '../checks/phrases.js';
import { DIMENSION, sameDimension } from '../quantities/dimension.js';
import type { Effect } from '../recipes/evaluation/effects.js';
import { type Wording } from '../wording/wording.js';

/** The effects, those of like name and size told together; at most `most` phrases. */
export function inShort(effects: readonly Effect[], most: number, wording: Wording): readonly string[] {
  const groups = new Map<string, { readonly names: string[]; readonly what: string; readonly amount: string }>();
  for (const effect of effects) {
    const { name, what } = nameOf(effect.path, wording);
    const amount = amountOf(effect);
    const key = `${what} ${amount}`;
    const group = groups.get(key);
    if (group) group.names.push(name);
    else groups.set(key, { names: [name], what, amount });
  }
  return [...groups.values()].slice(0, most).map(({ names, what, amount }) => {
    const whose = wording.and(names);
    return what === '' ? `${whose} ${amount}` : wording.say`${whose} ${what} ${amount}`;
  });
}

/** A mass, a frequency or a level in its unit, everything else as a share. */
function amountOf({ before, difference, quantity }: Effect): string {
  const { dimension } = quantity;
  const asShare = before !== 0 && !SAID_IN_UNITS.some((each) => sameDimension(each, dimension));
  return asShare ? percent(difference / before) : shownDifference(difference, quantity);
}

const SAID_IN_UNITS = [DIMENSION.mass, DIMENSION.frequency, DIMENSION.level];

/** `top.mass` is just the top; otherwise part and quantity. */
function nameOf(path: string, { text }: Wording): { readonly name: string; readonly what: string } {
  const [name, what] = wordsFor(path);
  return { name: text(name), what: what === '' ? '' : text(what) };
}

/** The words for a quantity: whose it is, and what, where that is not plain. */
export function wordsFor(path: string): readonly [name: string, what: string] {
  const words = path.split('.');
  if (words[0] === 'bracing' && words.length === 2) return ['braces', ''];
  if (words[0] === 'back-bracing' && words.length === 2) return ['back braces', ''];
  if (words[0]?.endsWith('bracing')) return [words[1] ?? '', spaced(words.slice(2))];
  // The resonances of the whole body, as the trade calls them; of rigid walls there is but the one.
  if (words[0] === 'resonance')
    return [words[1] === 'rigid-air' ? 'air with the plates still' : `main ${words[1]}`, ''];
  if (words[0] === 'voice') return [spaced(words.slice(1)), ''];
  const rest = words.slice(1);
  return [words[0] ?? '', rest.join('.') === 'mass' ? '' : spaced(rest)];
}

function spaced(words: readonly string[]): string {
  return words.join(' ').replace(/-/g, ' ');
}
