/** The woods of an instrument: which part is of which set, and what the library says of the species. */
import type { Value } from '../facts/facts.js';
import type { Workshop } from '../recipes/workshop.js';
import type { SheetSubject } from './sheet-subject.js';
import { asTitle } from './sheet-words.js';

export interface PartWood {
  /** `top`, `bridge.plate`. */
  readonly part: string;
  /** The set, or the species where no set is named. */
  readonly set: string;
  readonly species?: string;
  readonly latin?: string;
  /** Of the set: where the tree grew, and what goes with it. */
  readonly country?: string;
  readonly papers?: string;
  /** Of the species: what is said of its trade and of its dust. */
  readonly trade?: string;
  readonly dust?: string;
}

export function woodsOf(workshop: Workshop, { values }: SheetSubject): readonly PartWood[] {
  return values.flatMap(({ path, value }) => {
    if (value.kind !== 'name' || workshop.catalogue.property(path)?.kind !== 'wood') return [];
    const set = workshop.shelf.find('wood', value.name);
    const species = workshop.speciesOf(value.name);
    const [ofSet, ofSpecies] = [set && workshop.stated(set), species && workshop.stated(species)];
    return [
      {
        part: path.replace(/\.wood$/, ''),
        set: value.name,
        species: species?.name.text,
        latin: written(ofSpecies?.get('latin')?.value),
        country: written(ofSet?.get('country')?.value),
        papers: written(ofSet?.get('papers')?.value),
        trade: written(ofSpecies?.get('trade')?.value),
        dust: written(ofSpecies?.get('dust')?.value),
      },
    ];
  });
}

/** `indian-rosewood: Can sensitise …`, once for each species of which something of the kind is said. */
export function speciesSaying(workshop: Workshop, subject: SheetSubject, what: 'dust' | 'trade'): readonly string[] {
  const said = new Map<string, string>();
  for (const { species, [what]: sentence } of woodsOf(workshop, subject)) {
    if (species !== undefined && sentence !== undefined) {
      said.set(species, `${asTitle(species, workshop.wording)}: ${workshop.wording.text(sentence)}`);
    }
  }
  return [...said.values()];
}

function written(value: Value | undefined): string | undefined {
  if (value?.kind === 'text') return value.text;
  return value?.kind === 'name' ? value.name : undefined;
}
