/** What a name nobody has may stand for: a slip of the pen, or one of the other names a wood goes by. */
import { didYouMean } from '../../quantities/suggest.js';
import type { Definition, DefinitionKind } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';

/** Names of these kinds, best first; never that of the definition that asks, which cannot lean on itself. */
export function meantNames(
  name: string,
  kinds: readonly DefinitionKind[],
  asking: Definition,
  workshop: Workshop,
): readonly string[] {
  const known = kinds
    .flatMap((kind) => workshop.shelf.names(kind))
    .filter((other) => !kinds.includes(asking.kind) || other !== asking.name.text);
  const wanted = plain(name);
  const woods = kinds.includes('species') ? workshop.shelf.names('species') : [];
  const same = [...known.filter((other) => plain(other) === wanted), ...woods.filter((wood) => goesBy(wood, wanted))];
  if (same.length > 0) return [...new Set(same)].slice(0, MOST);
  const near = didYouMean(wanted, known);
  if (near.length > 0) return near;
  // `rosewood`: every species with that word in its name.
  return woods.filter((wood) => wood.split('-').includes(wanted)).slice(0, MOST);

  function goesBy(wood: string, word: string): boolean {
    const definition = workshop.shelf.find('species', wood);
    const also = definition && workshop.stated(definition).get('also')?.value;
    const names = also?.kind === 'list' ? also.items : also ? [also] : [];
    return names.some((one) => one.kind === 'text' && plain(one.text) === word);
  }
}

const MOST = 4;

/** `Western red cedar` and `western-red-cedar` are one name. */
function plain(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
}
