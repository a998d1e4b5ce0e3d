/**
 * The bookshelf: everything written in a folder, by kind and name, kept up to date file by file.
 *
 * Entry point of `recipes/`. Give it the facts of each file with `put`; every answer in this folder is a query over
 * it. The species library is one more file on the shelf, marked read-only; a shop's own species of the same name
 * stands before it.
 *
 * Invariants
 * - A definition that is the same by `identityOf` stays the same object, wherever it moved in its file.
 * - The state after any sequence of `put` and `remove` equals a fresh shelf given the last version of each file.
 */
import { Memo, type Input } from './memo.js';
import type { Definition, DefinitionKind, FileFacts, Placement } from '../../facts/facts.js';
import { DEFINITION_KINDS, identityOf } from '../../facts/facts.js';

export class Bookshelf {
  readonly memo = new Memo();
  private readonly files = new Map<string, FileFacts>();
  private readonly places = new Map<Definition, Placement>();
  private readonly fileOf: Input<string, FileFacts> = this.memo.input();
  private readonly placeOf: Input<Definition, Placement> = this.memo.input(isSamePlace);
  private readonly libraryFiles = new Set<string>();
  private readonly index = new Map<string, Set<Definition>>();

  private readonly byName: Input<string, readonly Definition[]> = this.memo.input(sameItems);
  private readonly namesByKind: Input<DefinitionKind, readonly string[]> = this.memo.input(sameItems);
  private readonly byTarget: Input<string, readonly Definition[]> = this.memo.input(sameItems);

  /** Puts files' facts on the shelf, each in place of its earlier ones. */
  put(...files: readonly FileFacts[]): void {
    this.replace(files.map((facts) => ({ uri: facts.uri, facts })));
  }

  /** Puts a read-only file (the species library) on the shelf. */
  putLibrary(facts: FileFacts): void {
    this.libraryFiles.add(facts.uri);
    this.put(facts);
  }

  remove(...uris: readonly string[]): void {
    this.replace(uris.map((uri) => ({ uri, facts: undefined })));
    for (const uri of uris) this.libraryFiles.delete(uri);
  }

  uris(): readonly string[] {
    return [...this.files.keys()].filter((uri) => !this.libraryFiles.has(uri)).sort();
  }

  isLibrary(uri: string): boolean {
    return this.libraryFiles.has(uri);
  }

  file(uri: string): FileFacts | undefined {
    return this.fileOf.get(uri);
  }

  /** Where a definition stands now; undefined once it has left the shelf. What reads it is asked again when lines move. */
  placement(definition: Definition): Placement | undefined {
    return this.placeOf.get(definition);
  }

  /** All definitions of this kind and name, the one in force first. More than one is a mistake, reported by `checks`. */
  named(kind: DefinitionKind, name: string): readonly Definition[] {
    return this.byName.get(`${kind} ${name}`) ?? NONE;
  }

  /** The definition in force. */
  find(kind: DefinitionKind, name: string): Definition | undefined {
    return this.named(kind, name)[0];
  }

  /** Definitions of this kind that name `target` in their head: the builds of a recipe, the children of a recipe … */
  targeting(kind: DefinitionKind, target: string): readonly Definition[] {
    return this.byTarget.get(`${kind} > ${target}`) ?? NONE;
  }

  /** Every name of this kind, sorted. */
  names(kind: DefinitionKind): readonly string[] {
    return this.namesByKind.get(kind) ?? [];
  }

  /** The kinds under which a name is known. */
  kindsOf(name: string): readonly DefinitionKind[] {
    return DEFINITION_KINDS.filter((kind) => this.named(kind, name).length > 0);
  }

  /** The shop's own definition: the first, by name. */
  shop(): Definition | undefined {
    const first = this.names('shop')[0];
    return first === undefined ? undefined : this.find('shop', first);
  }

  private replace(files: readonly { uri: string; facts: FileFacts | undefined }[]): void {
    const touched = new Set<Definition>();
    const placed = new Set<Definition>();
    for (const { uri, facts } of files) {
      const before = this.files.get(uri);
      const after = facts && keepIdentities(facts, before);
      for (const definition of touchedBy(before, after)) touched.add(definition);
      const staying = this.staying(uri, after);
      for (const { definition } of before?.definitions ?? []) {
        if (staying.has(definition)) continue;
        placed.add(definition);
        this.takeDown(definition);
      }
      if (after) this.files.set(uri, after);
      else this.files.delete(uri);
      this.fileOf.set(uri, after);
      for (const { definition, line } of after?.definitions ?? []) {
        if (staying.has(definition)) continue;
        placed.add(definition);
        this.putUp(definition, { uri, line });
      }
    }
    for (const definition of placed) this.placeOf.set(definition, this.places.get(definition));
    this.announce(touched);
    this.memo.forget([...touched].filter((definition) => !this.places.has(definition)));
    this.memo.sweep();
  }

  /** Those that stand where they stood: with one keystroke in a long file nearly all. */
  private staying(uri: string, after: FileFacts | undefined): ReadonlySet<Definition> {
    const staying = new Set<Definition>();
    for (const { definition, line } of after?.definitions ?? []) {
      const place = this.places.get(definition);
      if (place?.uri === uri && place.line === line) staying.add(definition);
    }
    return staying;
  }

  private putUp(definition: Definition, place: Placement): void {
    this.places.set(definition, place);
    this.memo.recall(definition);
    for (const key of keysOf(definition)) {
      const shelf = this.index.get(key);
      if (shelf) shelf.add(definition);
      else this.index.set(key, new Set([definition]));
    }
  }

  private takeDown(definition: Definition): void {
    this.places.delete(definition);
    for (const key of keysOf(definition)) this.index.get(key)?.delete(definition);
  }

  /** Tells the memo which names, targets and kinds may now read differently. */
  private announce(touched: ReadonlySet<Definition>): void {
    const names = new Set<string>();
    const targets = new Set<string>();
    const kinds = new Set<DefinitionKind>();
    for (const definition of touched) {
      names.add(nameKey(definition));
      kinds.add(definition.kind);
      const target = targetKey(definition);
      if (target) targets.add(target);
    }
    for (const key of names) {
      const found = this.inOrder(key);
      const own = found.filter((definition) => !this.isLibraryDefinition(definition));
      this.byName.set(key, someOrNone(own.length > 0 ? own : found));
    }
    for (const key of targets) this.byTarget.set(key, someOrNone(this.inOrder(key)));
    for (const kind of kinds) {
      const all = [...(this.index.get(kind) ?? [])].map((definition) => definition.name.text);
      this.namesByKind.set(kind, [...new Set(all)].filter((name) => name !== '').sort());
    }
  }

  /** By file, then by place, so that the answer does not depend on the order in which files were opened. */
  private inOrder(key: string): Definition[] {
    return [...(this.index.get(key) ?? [])].sort((a, b) => {
      const x = this.places.get(a)!;
      const y = this.places.get(b)!;
      if (x.uri !== y.uri) return x.uri < y.uri ? -1 : 1;
      return x.line - y.line || a.head.start.character - b.head.start.character;
    });
  }

  private isLibraryDefinition(definition: Definition): boolean {
    const place = this.places.get(definition);
    return place !== undefined && this.libraryFiles.has(place.uri);
  }
}

const NONE: readonly Definition[] = [];

function keepIdentities(facts: FileFacts, before: FileFacts | undefined): FileFacts {
  if (!before) return facts;
  const kept = new Set(before.definitions.map(({ definition }) => definition));
  // Whoever read the file with what it said before has kept them already.
  const now = new Set(facts.definitions.map(({ definition }) => definition));
  const old = new Map<string, Definition[]>();
  for (const { definition } of before.definitions) {
    if (now.has(definition)) continue;
    const identity = identityOf(definition);
    const same = old.get(identity);
    if (same) same.push(definition);
    else old.set(identity, [definition]);
  }
  return {
    ...facts,
    definitions: facts.definitions.map(({ definition, line }) => ({
      definition: kept.has(definition) ? definition : (old.get(identityOf(definition))?.shift() ?? definition),
      line,
    })),
  };
}

function touchedBy(before: FileFacts | undefined, after: FileFacts | undefined): readonly Definition[] {
  const old = new Set(before?.definitions.map((d) => d.definition));
  const now = new Set(after?.definitions.map((d) => d.definition));
  const touched = [...old, ...now].filter((definition) => !(old.has(definition) && now.has(definition)));
  // The order of definitions decides which of two of the same name is in force, so a pure move touches them too.
  return isSameOrder(before, after, (definition) => old.has(definition) && now.has(definition))
    ? touched
    : [...new Set([...touched, ...now])];
}

/** Whether the definitions that both have stand in the same order. */
function isSameOrder(
  before: FileFacts | undefined,
  after: FileFacts | undefined,
  isInBoth: (definition: Definition) => boolean,
): boolean {
  const kept = (facts: FileFacts | undefined) =>
    (facts?.definitions ?? []).map(({ definition }) => definition).filter(isInBoth);
  return sameItems(kept(before), kept(after));
}

function keysOf(definition: Definition): readonly string[] {
  return [definition.kind, nameKey(definition), targetKey(definition)].filter((key) => key !== undefined);
}

function nameKey(definition: Definition): string {
  return `${definition.kind} ${definition.name.text}`;
}

function targetKey(definition: Definition): string | undefined {
  const target = definition.relation?.target;
  return target && `${definition.kind} > ${target.text}`;
}

function someOrNone<T>(items: readonly T[]): readonly T[] | undefined {
  return items.length > 0 ? items : undefined;
}

function isSamePlace(a: Placement, b: Placement): boolean {
  return a.uri === b.uri && a.line === b.line;
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}
