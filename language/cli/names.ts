/** Names a maker gives on the command line: what they may have meant when there is no such name. */
import { didYouMean } from '../quantities/suggest.js';
import type { DefinitionKind } from '../recipes/facts.js';
import { WrongUse } from './io.js';
import { type Shop, shown } from './open-shop.js';
import type { Io } from './io.js';

/** Says that there is nothing of this name among these kinds, and names what is near, or what there is. */
export function noSuchName(name: string, kinds: readonly DefinitionKind[], shop: Shop, io: Io): WrongUse {
  const names = kinds.flatMap((kind) => shop.shelf.names(kind));
  const near = didYouMean(name, names);
  const other = shop.shelf.kindsOf(name).find((kind) => !kinds.includes(kind));
  const what =
    other === undefined ? `There is nothing called ${name}` : `${name} is of kind ${other}, not ${inWords(kinds)},`;
  const where = shown(shop.folder, io) === '.' ? 'here' : `in ${shown(shop.folder, io)}`;
  const hint =
    near.length > 0
      ? ` Did you mean ${inWords(near)}?`
      : ` The recipes ${where} are: ${someOf(shop.shelf.names('recipe'))}.`;
  return new WrongUse(`${what} ${where}.${hint}`);
}

function inWords(items: readonly string[]): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} or ${items.at(-1)}`;
}

function someOf(names: readonly string[]): string {
  if (names.length === 0) return 'none';
  return names.length <= 8 ? names.join(', ') : `${names.slice(0, 8).join(', ')} and ${names.length - 8} more`;
}
