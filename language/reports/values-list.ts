/**
 * Every value of one instrument, part by part: what is written with where it comes from along the chain, what is computed
 * with how well it is known, and what is not known with what would make it so.
 */
import { shown } from '../checks/phrases.js';
import { concretePaths } from '../recipes/evaluation/effects.js';
import type { Derived } from '../recipes/evaluation/evaluation.js';
import type { Definition } from '../facts/facts.js';
import type { Held } from '../recipes/instrument/instrument.js';
import { type Side } from '../recipes/instrument/comparison.js';
import { sideOf } from '../recipes/instrument/sides.js';
import { english, type Wording } from '../wording/wording.js';
import { type Desk, type Location, locationOf } from '../checks/desk.js';
import { basisOf, inPlainWords } from './figures.js';
import { type PartBlock, byPart, partsInOrder } from './parts-in-order.js';
import { partOf, partTitle, withinPart } from './part-of.js';
import { writeInShopUnit } from './shop-values.js';

export interface ValuesList {
  readonly name: string;
  readonly kind: Side['kind'];
  /** In the order of the catalogue. */
  readonly parts: readonly PartOfValues[];
}

export interface PartOfValues {
  readonly part: string;
  readonly title: string;
  readonly values: readonly ListedValue[];
}

export interface ListedValue {
  readonly path: string;
  /** The path without its part. */
  readonly name: string;
  readonly sort: 'written' | 'computed' | 'unknown' | 'pending';
  /** With its unit, a computed one with its uncertainty; absent where it is not known. */
  readonly value?: string;
  /** The definition that says it. */
  readonly from?: string;
  /** What this very definition did to it: `changed here`, `solved here`. Absent for what it inherits. */
  readonly here?: string;
  /** What it was before that. */
  readonly was?: string;
  /** Of a computed one, what it rests on: `measured and handbook`. */
  readonly basis?: string;
  /** Why it is not known: `needs lining.width and lining.height`. */
  readonly trouble?: string;
  /** Where it is written. */
  readonly source?: Location;
}

/** Undefined when there is no recipe, build or model of this name. */
export function valuesOf(desk: Desk, name: string): ValuesList | undefined {
  const side = sideOf(desk.workshop, name);
  const definition = side && desk.shelf.find(side.kind, name);
  if (!side || !definition) return undefined;
  const { evaluation } = side;
  const written = heldIn(partsInOrder(side.values, ['recipe', 'build'])).map((held) =>
    writtenValue(desk, definition, held),
  );
  const computed = concretePaths(evaluation.derivations.all, evaluation)
    .filter((path) => !side.values.has(path))
    .flatMap((path) => {
      const derived = evaluation.derived(path);
      return derived ? [computedValue(desk.workshop.wording, side, path, derived)] : [];
    });
  return { name, kind: side.kind, parts: inParts([...written, ...computed], desk.workshop.wording) };
}

function inParts(values: readonly ListedValue[], wording: Wording): readonly PartOfValues[] {
  const parts = new Map<string, ListedValue[]>();
  for (const value of byPart(values, ({ path }) => partOf(path), ['recipe', 'build'])) {
    const part = partOf(value.path);
    parts.set(part, [...(parts.get(part) ?? []), value]);
  }
  return [...parts].map(([part, all]) => ({ part, title: partTitle(part, wording), values: all }));
}

function heldIn(block: PartBlock<Held>): readonly Held[] {
  return block.entries.flatMap(({ value, block: inner }) => [
    ...(value ? [value] : []),
    ...(inner ? heldIn(inner) : []),
  ]);
}

function writtenValue(desk: Desk, definition: Definition, held: Held): ListedValue {
  const { path, value, from, via, before } = held;
  const source = locationOf(desk, from.definition, from.span);
  const isHere = from.definition === definition;
  const { wording } = desk.workshop;
  return {
    path,
    name: withinPart(path),
    sort: value.kind === 'unknown' ? 'unknown' : 'written',
    value: writeInShopUnit(path, value),
    from: from.definition.name.text,
    ...(isHere ? { here: wording.text(HERE[via]) } : {}),
    ...(isHere && before && before.from.definition !== definition ? { was: writeInShopUnit(path, before.value) } : {}),
    ...(source ? { source } : {}),
  };
}

const HERE: Readonly<Record<Held['via'], string>> = {
  stated: english('set here'),
  changed: english('changed here'),
  added: english('added here'),
  package: english('brought by a package'),
  solved: english('solved here'),
  built: english('as made'),
};

function computedValue(wording: Wording, side: Side, path: string, derived: Derived): ListedValue {
  const { say, text, some, told } = wording;
  const named = { path, name: withinPart(path) };
  if (derived.known) {
    return {
      ...named,
      sort: 'computed',
      value: shown(derived.si, derived.quantity, side.evaluation.uncertainty(path)),
      basis: inPlainWords(basisOf(path, side.evaluation), wording),
    };
  }
  if (derived.pending) return { ...named, sort: 'pending', trouble: text('being worked out') };
  const trouble = derived.missing.length > 0 ? say`needs ${some(derived.missing, 3)}` : told(derived.trouble ?? '');
  return { ...named, sort: 'unknown', trouble };
}
