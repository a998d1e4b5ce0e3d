/** What a name nobody has may stand for: a slip of the pen, or one of the other names a wood goes by. */
import { didYouMean } from '../../quantities/suggest.js';
import { plainWoodName as plain, speciesCalled, woodWords } from '../../catalogue/wood-words.js';
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
  const same = known.filter((other) => plain(other) === wanted || unmarked(other) === unmarked(wanted));
  if (same.length > 0) return [...new Set(same)].slice(0, MOST);
  if (woods.length === 0) return didYouMean(wanted, known);
  const called = [...speciesCalled(wanted).filter((wood) => woods.includes(wood)), ...woods.filter(goesByName)];
  // `rosewood`, `hollin-spruce`: every species with that word in its name.
  const inside = woods.filter((wood) => wood.split('-').includes(wanted));
  if (called.length + inside.length > 0) return [...new Set([...called, ...inside])].slice(0, MOST);
  const near = didYouMean(wanted, known);
  if (near.length > 0) return near;
  const words = new Map([
    ...woods.flatMap((wood) => [...also(wood), ...wood.split('-')].map((word) => [word, wood] as const)),
    ...woodWords().map((word) => [word, speciesCalled(word)[0] ?? ''] as const),
  ]);
  const heard = didYouMean(wanted, [...words.keys()]).flatMap((word) =>
    speciesCalled(word).length > 0 ? speciesCalled(word) : (words.get(word) ?? []),
  );
  return [...new Set(heard)].filter((wood) => woods.includes(wood)).slice(0, MOST);

  function goesByName(wood: string): boolean {
    return also(wood).includes(wanted);
  }

  function also(wood: string): readonly string[] {
    const definition = workshop.shelf.find('species', wood);
    const stated = definition && workshop.stated(definition);
    const [names, latin] = [stated?.get('also')?.value, stated?.get('latin')?.value];
    const all = [...(names?.kind === 'list' ? names.items : names ? [names] : []), ...(latin ? [latin] : [])];
    return all.flatMap((one) => (one.kind === 'text' ? [plain(one.text)] : []));
  }
}

const MOST = 4;

/** `s1`, `s_1` and `S-1` are one name to the ear. */
function unmarked(name: string): string {
  return name.toLowerCase().replace(/[-_.\s]+/g, '');
}
