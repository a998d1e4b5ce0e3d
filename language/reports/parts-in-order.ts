/** Paths gathered into the blocks of their parts, parts and properties in the order of the catalogue. */
import { catalogue } from '../catalogue/catalogue.js';
import type { DefinitionKind } from '../facts/facts.js';
import { remembered } from '../recipes/shelf/remembered.js';

export interface PartBlock<T> {
  /** Full path; empty for the outermost. */
  readonly path: string;
  readonly word: string;
  /** Values and inner blocks as they follow each other; a word may be both (`strings: light-12`, `strings { … }`). */
  readonly entries: readonly PartEntry<T>[];
}

export interface PartEntry<T> {
  readonly word: string;
  readonly value?: T;
  readonly block?: PartBlock<T>;
}

/** `kinds`: the definitions whose paths these may be. */
export function partsInOrder<T>(values: ReadonlyMap<string, T>, kinds: readonly DefinitionKind[]): PartBlock<T> {
  const root: Growing<T> = { path: '', word: '', children: new Map() };
  for (const [path, value] of values) {
    let at = root;
    for (const word of path.split('.')) {
      let next = at.children.get(word);
      if (!next) {
        next = { path: at.path === '' ? word : `${at.path}.${word}`, word, children: new Map() };
        at.children.set(word, next);
      }
      at = next;
    }
    at.value = value;
  }
  return finished(root, kinds);
}

/** The same items, those of one outermost part together and the parts in the order of the catalogue. */
export function byPart<T>(items: readonly T[], pathOf: (item: T) => string, kinds: readonly DefinitionKind[]): T[] {
  const places = remembered((part: string) => rankOf(part, kinds).place);
  const ranked = items.map((item) => ({ item, place: places(pathOf(item).replace(/\..*/, '')) }));
  return ranked.sort((a, b) => a.place - b.place).map(({ item }) => item);
}

/** The innermost block a path lies in. */
export function blockFor<T>(root: PartBlock<T>, path: string): PartBlock<T> {
  for (const { block } of root.entries) {
    if (block && path.startsWith(`${block.path}.`)) return blockFor(block, path);
  }
  return root;
}

interface Growing<T> {
  readonly path: string;
  readonly word: string;
  value?: T;
  readonly children: Map<string, Growing<T>>;
}

function finished<T>(growing: Growing<T>, kinds: readonly DefinitionKind[]): PartBlock<T> {
  const ranked = [...growing.children.values()].map((child) => ({ child, rank: rankOf(child.path, kinds) }));
  ranked.sort((a, b) => a.rank.place - b.rank.place || a.rank.member - b.rank.member || byName(a.child, b.child));
  const entries = ranked.map(({ child }) => ({
    word: child.word,
    value: child.value,
    block: child.children.size > 0 ? finished(child, kinds) : undefined,
  }));
  return { path: growing.path, word: growing.word, entries };
}

/**
 * Where a part or property stands: by the first entry of the catalogue at or below it, members of a part by their usual
 * order. It does not depend on what else an instrument has, so two instruments are written in the same order.
 */
function rankOf(path: string, kinds: readonly DefinitionKind[]): { place: number; member: number } {
  const words = path.split('.');
  const place = catalogue.all.findIndex((property) => {
    return property.where.some((kind) => kinds.includes(kind)) && startsWith(property.path, words);
  });
  const usual = catalogue.part(path)?.members?.indexOf(words.at(-1) ?? '') ?? -1;
  return { place: place < 0 ? catalogue.all.length : place, member: usual < 0 ? Number.MAX_SAFE_INTEGER : usual };
}

function startsWith(pattern: string, words: readonly string[]): boolean {
  const wanted = pattern.split('.');
  return words.every((word, i) => wanted[i] === word || wanted[i] === '*');
}

function byName(a: { word: string }, b: { word: string }): number {
  return a.word < b.word ? -1 : 1;
}
