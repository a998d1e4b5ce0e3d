/** The beginning of a statement: properties and parts that fit here, and the statements of the language. */
import { writeValue } from '../../checks/phrases.js';
import type { Part, Property } from '../../catalogue/property.js';
import type { DefinitionKind } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { startValues, wholePath } from './completion-context.js';
import { keywordOffers, MODE, SOURCE } from './completion-keywords.js';
import { changedPaths } from './completion-paths.js';
import type { Offer } from './offer.js';
import { heldBy, kindOf, numberBlank, typicalText, valuesOf } from './completion-values.js';
import type { Desk } from '../../checks/desk.js';
import { snippetText } from './snippet.js';
import { usualPaths } from './usual-paths.js';
import type { TypingPlace } from './typing-place.js';

export function statementsFor(desk: Desk, place: TypingPlace, afterValue = false): readonly Offer[] {
  const kind = place.definition?.kind;
  if (!kind) return [];
  const typed = place.word.includes('.') ? place.word.slice(0, place.word.lastIndexOf('.')) : '';
  const within = typed === '' ? wholeBlock(desk, place) : wholePath(desk, place, typed);
  const inserted = (word: string) => (typed === '' ? word : `${typed}.${word}`);
  const here = new Statements(desk, place, kind, within, inserted);
  const offers = [...here.properties(), ...here.parts()];
  if (typed !== '') return offers;
  const inBody = place.block === '';
  return [
    ...(inBody ? keywordOffers(kind, place.inside) : []),
    ...(kind === 'wood' && (inBody || within === 'tap') ? [MODE] : []),
    ...offers,
    ...here.further(place.word),
    ...(inBody && takesChanges(kind, place) ? wholeChanges(desk, place) : []),
    ...(afterValue ? [SOURCE] : []),
  ];
}

function takesChanges(kind: DefinitionKind, { inside }: TypingPlace): boolean {
  if (kind === 'build') return inside === 'rework';
  return kind === 'recipe' && (!inside || inside === 'together');
}

/** Parts alone, for `add`: members the parent does not have come first. */
export function addableParts(desk: Desk, place: TypingPlace): readonly Offer[] {
  const kind = place.definition?.kind;
  if (!kind) return [];
  const had = new Set<string>();
  for (const path of startValues(desk, place)?.keys() ?? []) {
    for (let dot = path.indexOf('.'); dot >= 0; dot = path.indexOf('.', dot + 1)) had.add(path.slice(0, dot));
  }
  return desk.workshop.catalogue.parts.flatMap((part, rank) =>
    pathsOf(part)
      .filter((path) => !had.has(path) && desk.workshop.catalogue.children(path, kind).properties.length > 0)
      .map((path) => ({ ...partOffer(part, path), rank: (part.path.endsWith('*') ? 0 : 1) + rank / 1000 })),
  );
}

function wholeBlock(desk: Desk, place: TypingPlace): string {
  return place.block === '' ? '' : desk.workshop.catalogue.canonical(place.block, place.definition?.kind);
}

class Statements {
  private readonly already: ReadonlyMap<string, Held> | undefined;
  private readonly usual: ReadonlySet<string>;

  constructor(
    private readonly desk: Desk,
    private readonly place: TypingPlace,
    private readonly kind: DefinitionKind,
    private readonly within: string,
    private readonly inserted: (word: string) => string,
  ) {
    this.already = startValues(desk, place);
    this.usual = usualPaths(desk, kind, place.definition);
  }

  properties(): readonly Offer[] {
    const { properties } = this.desk.workshop.catalogue.children(this.within, this.kind);
    return (
      properties
        // Modes by their nodal lines are one offer.
        .filter(({ path }) => !path.endsWith('*') && !path.startsWith('tap.mode-'))
        .map((property, rank) => {
          const word = lastWord(property.path);
          return this.property(property, this.inserted(word), this.whole(word), 100 + rank / 1000);
        })
    );
  }

  parts(): readonly Offer[] {
    const { parts } = this.desk.workshop.catalogue.children(this.within, this.kind);
    return parts.flatMap((part, rank) =>
      membersNamed(part).map((word) => ({ ...partOffer(part, this.inserted(word)), rank: 200 + rank / 1000 })),
    );
  }

  /**
   * What lies deeper, written in one path (`top.thickness`), once a letter says which: there are hundreds. It is found
   * by the beginning of any of its words.
   */
  further(letters: string): readonly Offer[] {
    if (letters === '') return [];
    const { catalogue } = this.desk.workshop;
    const low = letters.toLowerCase();
    const rank = (words: string, place: number) => (words.startsWith(low) ? 400 : 450) + place / 1000;
    const fits = (words: string) => words.includes('.') && words.split(/[.-]/).some((word) => word.startsWith(low));
    const deeper = (path: string) => (this.within === '' ? path : below(path, this.within));
    const properties = catalogue.all.flatMap((property, at) => {
      const words = property.where.includes(this.kind) ? deeper(property.path) : undefined;
      if (words === undefined || words.includes('*') || !fits(words) || property.path.startsWith('tap.mode-'))
        return [];
      return [this.property(property, words, this.whole(words), rank(words, at))];
    });
    const parts = catalogue.parts.flatMap((part, at) =>
      pathsOf(part).flatMap((path) => {
        const words = deeper(path);
        if (words === undefined || !fits(words) || catalogue.children(path, this.kind).properties.length === 0)
          return [];
        return [{ ...partOffer(part, words), rank: rank(words, at) - 20 }];
      }),
    );
    return [...properties, ...parts];
  }

  private property(property: Property, words: string, path: string, rank: number): Offer {
    const { desk, place } = this;
    const held = this.already?.get(path)?.value;
    const written = held && held.kind !== 'unknown' ? writeValue(held) : undefined;
    const typical = written === undefined ? typicalText(desk, place, property, path) : undefined;
    const blank = written === undefined ? typical?.snippet : blankOf(written);
    return {
      label: words,
      kind: 'property',
      detail:
        written === undefined
          ? (typical?.detail ?? kindOf(property))
          : `${written}, ${desk.workshop.wording.text(heldBy(place))}`,
      sentence: property.sentence,
      insert: `${words}: ${blank ?? blankOf(valuesOf(desk, place, property, path)[0]?.insert ?? '')}`,
      snippet: true,
      rank: rank + this.late(path, held !== undefined),
      synonyms: property.synonyms,
    };
  }

  /**
   * What makers usually state in such a definition comes first, then, in a build or an order, what its recipe states. In
   * a recipe what is inherited is changed, not stated again.
   */
  private late(path: string, isHeld: boolean): number {
    if (this.kind === 'recipe' && isHeld) return 200;
    return this.usual.has(path) ? -80 : isHeld ? -70 : 0;
  }

  private whole(words: string): string {
    return this.within === '' ? words : `${this.within}.${words}`;
  }
}

/** A value as one blank; of a plain quantity the number alone. */
function blankOf(written: string): string {
  return /^[-\d.]+ \S+$/.test(written) ? numberBlank(written) : `\${1:${snippetText(written)}}`;
}

/** What a path is within a part, where `*` stands for any name; undefined when it is not in there. */
function below(path: string, within: string): string | undefined {
  const [words, around] = [path.split('.'), within.split('.')];
  const isWithin = words.length > around.length && around.every((word, i) => words[i] === word || words[i] === '*');
  return isWithin ? words.slice(around.length).join('.') : undefined;
}

/** The paths of a part: with `*` one for each of its usual members. */
function pathsOf(part: Part): readonly string[] {
  const stars = part.path.split('*').length - 1;
  if (stars === 0) return [part.path];
  return stars === 1 && part.path.endsWith('*')
    ? (part.members ?? []).map((member) => part.path.slice(0, -1) + member)
    : [];
}

function partOffer(part: Part, words: string): Offer {
  return {
    label: words,
    kind: 'part',
    sentence: part.sentence,
    insert: `${words} {\n  $0\n}`,
    snippet: true,
    rank: 0,
    synonyms: part.synonyms,
  };
}

/** The catalogue's usual names for members a maker may name freely; the part's own name otherwise. */
function membersNamed(part: Part): readonly string[] {
  const word = lastWord(part.path);
  return word === '*' ? (part.members ?? []) : [word];
}

/** Whole changes of what the parent says, behind everything else until `ch` is typed. */
function wholeChanges(desk: Desk, place: TypingPlace): readonly Offer[] {
  return changedPaths(desk, place).map((offer) => ({
    ...offer,
    label: `change ${offer.label}`,
    insert: `change ${offer.insert}`,
    rank: 20 + offer.rank,
  }));
}

function lastWord(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1);
}
