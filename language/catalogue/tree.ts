/** The catalogue's paths as a tree of words, with `*` for a word the maker chooses. */
import type { DefinitionKind } from '../facts/facts.js';
import type { Part, Property } from './property.js';

export interface Branch {
  /** Full path, `*` where the maker chooses. */
  readonly path: string;
  readonly word: string;
  readonly part?: Part;
  /** One for each family of definitions that means something else by the path. */
  readonly properties: readonly Property[];
  readonly children: ReadonlyMap<string, Branch>;
  /** Definitions in which this branch or something below it may be written. */
  readonly kinds: ReadonlySet<DefinitionKind>;
}

interface Growing {
  readonly path: string;
  readonly word: string;
  part?: Part;
  readonly properties: Property[];
  readonly children: Map<string, Growing>;
  readonly kinds: Set<DefinitionKind>;
}

export function growTree(parts: readonly Part[], properties: readonly Property[]): Branch {
  const root = seedling('', '');
  for (const part of parts) along(root, part.path).part = part;
  for (const property of properties) {
    along(root, property.path, property.where).properties.push(property);
  }
  return root;
}

/** The branches a written path may mean, exact words before `*`. */
export function* branchesAt(root: Branch, words: readonly string[]): Iterable<Branch> {
  const [word, ...rest] = words;
  if (word === undefined) {
    yield root;
    return;
  }
  const exact = root.children.get(word);
  if (exact) yield* branchesAt(exact, rest);
  const chosen = root.children.get('*');
  if (chosen && word !== '*') yield* branchesAt(chosen, rest);
}

function along(root: Growing, path: string, kinds: readonly DefinitionKind[] = []): Growing {
  let branch = root;
  for (const kind of kinds) branch.kinds.add(kind);
  for (const word of path.split('.')) {
    let next = branch.children.get(word);
    if (!next) {
      next = seedling(branch.path === '' ? word : `${branch.path}.${word}`, word);
      branch.children.set(word, next);
    }
    for (const kind of kinds) next.kinds.add(kind);
    branch = next;
  }
  return branch;
}

function seedling(path: string, word: string): Growing {
  return { path, word, properties: [], children: new Map(), kinds: new Set() };
}
