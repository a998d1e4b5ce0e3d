/** The woods of an instrument: which part is of which set, and what the library says of the species. */
import type { Value } from '../facts/facts.js';
import type { Workshop } from '../recipes/workshop.js';
import type { SheetSubject } from './sheet-subject.js';
import { partInWords } from '../reports/part-words.js';
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

export interface SpeciesOnSheet {
  /** The species, or the set where no species is known. */
  readonly name: string;
  readonly latin?: string;
  /** In words: `Top`, `Bridge plate`. */
  readonly parts: readonly string[];
  /** Paths of the parts. */
  readonly paths: readonly string[];
  readonly sets: readonly string[];
  readonly countries: readonly string[];
  readonly papers: readonly string[];
}

/** Each species once, with the parts made of it, in the order of the parts. */
export function speciesOf(workshop: Workshop, subject: SheetSubject): readonly SpeciesOnSheet[] {
  const found = new Map<string, PartWood[]>();
  for (const one of woodsOf(workshop, subject)) {
    const name = one.species ?? one.set;
    found.set(name, [...(found.get(name) ?? []), one]);
  }
  const each = (all: readonly (string | undefined)[]) => [...new Set(all.filter((one) => one !== undefined))];
  return [...found].map(([name, all]) => ({
    name,
    latin: all.find(({ latin }) => latin !== undefined)?.latin,
    // All braces of a plate that are of one wood are told as its bracing.
    parts: each(all.map(({ part }) => partInWords(part.replace(/^((?:back-)?bracing)\..*$/, '$1'), workshop.wording))),
    paths: all.map(({ part }) => part),
    sets: each(all.map(({ set }) => (set === name ? undefined : set))),
    countries: each(all.map(({ country }) => country)),
    papers: each(all.map(({ papers }) => papers)),
  }));
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
