/** The questions asked of a catalogue. Its lookups are built once; nothing in it ever changes. */
import type { DefinitionKind } from '../facts/facts.js';
import { plausible } from './plausible.js';
import type { Part, PlausibleRange, Property, VariableClass } from './property.js';
import { SHORTCUTS } from './shortcuts.js';
import { type Branch, branchesAt, growTree } from './tree.js';

/** What fits inside a block, in catalogue order. */
export interface Children {
  readonly parts: readonly Part[];
  readonly properties: readonly Property[];
}

export class Catalogue {
  private readonly root: Branch;
  private readonly places: ReadonlyMap<Property, number>;

  constructor(
    /** Every part, in catalogue order. */
    readonly parts: readonly Part[],
    /** Every property, in catalogue order. */
    readonly all: readonly Property[],
    private readonly usualKinds: readonly DefinitionKind[],
  ) {
    this.root = growTree(parts, all);
    this.places = new Map(all.map((property, place) => [property, place]));
  }

  /**
   * The property at a canonical path; `*` in the catalogue matches any one word. Without a kind: what the path means
   * in an instrument, or else in whichever definition knows it.
   */
  property(path: string, kind?: DefinitionKind): Property | undefined {
    const words = path.split('.');
    for (const wanted of kind === undefined ? this.usualKinds : [kind]) {
      for (const branch of branchesAt(this.root, words)) {
        const found = branch.properties.find((property) => property.where.includes(wanted));
        if (found) return found;
      }
    }
    return undefined;
  }

  /** The part at a canonical path (`bracing.x-bass` finds `bracing.*`). */
  part(path: string): Part | undefined {
    for (const branch of branchesAt(this.root, path.split('.'))) if (branch.part) return branch.part;
    return undefined;
  }

  /** Parts and properties that fit inside the block at `path` (`''`: the definition itself) of such a definition. */
  children(path: string, kind: DefinitionKind): Children {
    const parts: Part[] = [];
    const properties: Property[] = [];
    for (const branch of branchesAt(this.root, path === '' ? [] : path.split('.'))) {
      for (const child of branch.children.values()) {
        if (!child.kinds.has(kind)) continue;
        if (child.part && hasBelow(child, kind)) parts.push(child.part);
        properties.push(...child.properties.filter((property) => property.where.includes(kind)));
      }
    }
    return { parts, properties: properties.sort((a, b) => this.placeOf(a) - this.placeOf(b)) };
  }

  /** The canonical path a maker's other word stands for, inside the part at `within` (`''`: on its own). */
  synonym(word: string, within: string, kind?: DefinitionKind): string | undefined {
    const low = word.toLowerCase();
    for (const wanted of this.kindsFor(kind)) {
      for (const branch of branchesAt(this.root, within === '' ? [] : within.split('.'))) {
        const child = childCalled(branch, word, wanted);
        if (child) return within === '' ? child.word : `${within}.${child.word}`;
      }
    }
    const short = within === '' ? SHORTCUTS.get(low) : undefined;
    return short !== undefined && this.isKnown(short, kind) ? short : undefined;
  }

  /**
   * The catalogue's spelling of a written path: synonyms replaced, word by word; what is not known (the maker's own
   * names, derived quantities) is left as it is.
   */
  canonical(path: string, kind?: DefinitionKind): string {
    const words = path.split('.');
    let done = '';
    for (const [place, word] of words.entries()) {
      const plain = done === '' ? word : `${done}.${word}`;
      if (!this.isKnown(plain, kind, 'exactly')) {
        const meant = this.synonym(word, done, kind);
        if (meant !== undefined) {
          done = meant;
          continue;
        }
        if (!this.isKnown(plain, kind)) return [plain, ...words.slice(place + 1)].join('.');
      }
      done = plain;
    }
    return done;
  }

  /** The innermost part a property belongs to; undefined for what holds for the whole instrument. */
  partOf(path: string): string | undefined {
    // What a maker may name for himself is no part where the catalogue has a property: `bracing.wood` is no brace.
    const part = this.part(path);
    if (part && (part.path === path || !this.property(path))) return path;
    const end = path.lastIndexOf('.');
    return end < 0 ? undefined : this.partOf(path.slice(0, end));
  }

  /** The part that is not there when the value at `path` says none: its own words or its kind say so. */
  partWithout(path: string): string | undefined {
    const part = path.replace(/\.kind$/, '');
    return this.part(part) && this.property(path, 'recipe') ? part : undefined;
  }

  /** Whether what a set of appointments says at `path` is said of the instrument that takes it up. */
  isPackaged(path: string): boolean {
    const packaged = this.property(path, 'appointments');
    // Its title and its description are its own. What belongs elsewhere is not read, as a finding says.
    return packaged ? packaged.class !== 'record' : this.property(path, 'recipe') === undefined;
  }

  /** The class shared by what belongs to a part (the commonest one), for counting what is added and dropped. */
  classOfPart(path: string): VariableClass | undefined {
    const counts = new Map<VariableClass, number>();
    for (const branch of branchesAt(this.root, path.split('.'))) tally(branch, counts);
    let best: VariableClass | undefined;
    for (const [each, count] of counts) if (best === undefined || count > (counts.get(best) ?? 0)) best = each;
    return best;
  }

  /** The plausible range that fits best; see `plausible`. */
  plausibleRange(path: string, tags: readonly string[] = [], kind?: DefinitionKind): PlausibleRange | undefined {
    const property = this.property(path, kind);
    return property && plausible(property, tags, path);
  }

  /** Lowest and highest plausible value, SI, for a search that must stay inside what can be built. */
  plausibleSpan(
    path: string,
    tags: readonly string[] = [],
  ): { readonly low: number; readonly high: number } | undefined {
    return this.plausibleRange(path, tags);
  }

  private isKnown(path: string, kind: DefinitionKind | undefined, how: 'exactly' | 'with *' = 'with *'): boolean {
    for (const branch of branchesAt(this.root, path.split('.'))) {
      if (how === 'exactly' && branch.word === '*') continue;
      if (kind === undefined || branch.kinds.has(kind)) return true;
    }
    return false;
  }

  private kindsFor(kind: DefinitionKind | undefined): readonly DefinitionKind[] {
    return kind === undefined ? this.usualKinds : [kind];
  }

  private placeOf(property: Property): number {
    return this.places.get(property) ?? 0;
  }
}

function childCalled(branch: Branch, written: string, kind: DefinitionKind): Branch | undefined {
  const word = written.toLowerCase();
  for (const child of branch.children.values()) {
    if (child.word === '*' || !child.kinds.has(kind)) continue;
    // `Thickness`: its own word, with a capital.
    const own = child.word === word && word !== written;
    if ((own || child.part?.synonyms.includes(word)) && hasBelow(child, kind)) return child;
    const named = child.properties.some(
      (property) => property.where.includes(kind) && (own || property.synonyms.includes(word)),
    );
    if (named) return child;
  }
  return undefined;
}

function hasBelow(branch: Branch, kind: DefinitionKind): boolean {
  for (const child of branch.children.values()) if (child.kinds.has(kind)) return true;
  return false;
}

/** Properties nobody counts say nothing about the part. */
function tally(branch: Branch, counts: Map<VariableClass, number>): void {
  for (const property of branch.properties) {
    if (property.class !== 'record') counts.set(property.class, (counts.get(property.class) ?? 0) + 1);
  }
  for (const child of branch.children.values()) tally(child, counts);
}
