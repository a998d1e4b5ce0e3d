/** Names of woods, species, strings and rigs for a value: what fits the part comes first. */
import { BARE_KINDS } from '../../checks/names/name-rules.js';
import type { DefinitionKind } from '../../facts/facts.js';
import type { Offer } from './offer.js';
import type { Desk } from '../../checks/desk.js';

export function namesFor(desk: Desk, kinds: readonly DefinitionKind[], path: string): readonly Offer[] {
  return kinds.flatMap((kind, i) =>
    desk.shelf.names(kind).map((name) => {
      const definition = desk.shelf.find(kind, name)!;
      const use = kind === 'wood' ? desk.workshop.stated(definition).get('use')?.value : undefined;
      const fits = use?.kind === 'name' && isFor(use.name, path);
      return {
        label: name,
        kind: 'wood' as const,
        detail: definition.relation?.target.text ?? BARE_KINDS[kind],
        insert: name,
        rank: i + (fits ? -1 : 0),
      };
    }),
  );
}

/** Whether wood meant for `use` (`top`, `back-and-sides`, `bridge-plate`, `brace`) goes into the part at a path. */
function isFor(use: string, path: string): boolean {
  const part = path.replace(/\.wood$/, '').replaceAll('.', '-');
  return use.split('-and-').some((word) => (word === 'brace' ? part.includes('bracing') : part === word));
}
