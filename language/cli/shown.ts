/** Everything `show` tells of one definition, before it is put into words or JSON. */
import { byPart, partsInOrder, type PartBlock } from '../reports/parts-in-order.js';
import { concretePaths } from '../recipes/evaluation/effects.js';
import type { Basis, Derived, Evaluation } from '../recipes/evaluation/evaluation.js';
import type { Definition, DefinitionKind } from '../facts/facts.js';
import type { Held } from '../recipes/instrument/instrument.js';
import type { Reading } from '../recipes/builds/builds.js';
import { sideOf } from '../recipes/instrument/sides.js';
import { allStatements } from '../recipes/instrument/values.js';
import type { Shop } from './open-shop.js';
import { findingsOfDefinition, type ToldFinding } from './told-findings.js';

export interface Shown {
  readonly definition: Definition;
  readonly file: string;
  readonly line: number;
  /** Recipes from the base to this one (or to the one a build was made after). */
  readonly lineage: readonly string[];
  /** In the order of the catalogue. */
  readonly values: readonly ShownValue[];
  readonly derived: readonly ShownDerived[];
  readonly readings: readonly Reading[];
  readonly findings: readonly ToldFinding[];
}

export interface ShownValue {
  readonly path: string;
  readonly held: Held;
  readonly from: { readonly name: string; readonly file: string; readonly line: number };
  readonly basis: Basis | 'solved';
  /** What the maker named as the source of the number. */
  readonly source?: string;
}

export interface ShownDerived {
  readonly path: string;
  readonly derived: Derived;
  /** Standard uncertainty, SI; zero where nothing uncertain was read. */
  readonly uncertainty: number;
}

/** Kinds in the order in which a name is looked for. */
export const SHOWN_KINDS: readonly DefinitionKind[] = [
  'recipe',
  'build',
  'model',
  'wood',
  'strings',
  'species',
  'rig',
  'appointments',
  'order',
  'shop',
];

export function shownOf(shop: Shop, name: string): Shown | undefined {
  const definition = SHOWN_KINDS.map((kind) => shop.shelf.find(kind, name)).find((found) => found !== undefined);
  if (!definition) return undefined;
  const values = valuesOf(shop, definition);
  return {
    definition,
    ...placeOf(shop, definition, definition.name.span.start.line),
    lineage: lineageOf(shop, definition),
    values: inOrder(values, definition.kind).map((held) => shownValue(held, shop)),
    derived: byPart(derivedOf(evaluationOf(shop, definition)), ({ path }) => path, kindsOf(definition.kind)),
    readings: definition.kind === 'build' ? (shop.workshop.build(name)?.readings ?? []) : [],
    findings: findingsOfDefinition(shop, definition),
  };
}

/** The firmest first. */
export function basesInOrder(bases: ReadonlySet<Basis>): readonly Basis[] {
  return (['measured', 'recipe', 'handbook', 'assumed'] as const).filter((basis) => bases.has(basis));
}

function valuesOf(shop: Shop, definition: Definition): ReadonlyMap<string, Held> {
  const stated = shop.workshop.stated(definition);
  if (!isInstrument(definition)) return stated;
  const values = new Map(sideOf(shop.workshop, definition.name.text)?.values);
  if (definition.kind !== 'build') return values;
  const measured = shop.workshop.build(definition.name.text)?.readings.find(({ name }) => name === '');
  const isReading = (path: string) =>
    measured?.values.has(path) || [...(measured?.conditions.keys() ?? [])].some((each) => each === path);
  for (const [path, held] of stated) if (!values.has(path) && !isReading(path)) values.set(path, held);
  return values;
}

function evaluationOf({ workshop }: Shop, { kind, name }: Definition): Evaluation | undefined {
  if (kind === 'wood' || kind === 'species') return workshop.woodInFull(name.text);
  if (kind === 'strings') return workshop.strings(name.text);
  return isInstrumentKind(kind) ? sideOf(workshop, name.text)?.evaluation : undefined;
}

function lineageOf({ workshop }: Shop, { kind, name, relation }: Definition): readonly string[] {
  const recipe = kind === 'build' ? relation?.target.text : kind === 'recipe' ? name.text : undefined;
  return recipe === undefined ? [] : workshop.lineage(recipe).recipes.map((each) => each.name.text);
}

function derivedOf(evaluation: Evaluation | undefined): readonly ShownDerived[] {
  if (!evaluation) return [];
  return concretePaths(evaluation.derivations.all, evaluation)
    .flatMap((path) => (path.startsWith('*.') ? eachOfSet(path, evaluation) : [path]))
    .filter((path) => !evaluation.ground.leaf(path))
    .flatMap((path) => {
      const derived = evaluation.derived(path);
      return derived ? [{ path, derived, uncertainty: evaluation.uncertainty(path) }] : [];
    });
}

/** The strings of a set have no part around them: they are `1`, `2`, … counted from the highest. */
function eachOfSet(path: string, evaluation: Evaluation): readonly string[] {
  const count = evaluation.derived('count');
  return count?.known ? Array.from({ length: count.si }, (_, i) => `${i + 1}${path.slice(1)}`) : [];
}

function shownValue(held: Held, shop: Shop): ShownValue {
  const { definition, span } = held.from;
  const from = { name: definition.name.text, ...placeOf(shop, definition, span.start.line) };
  return { path: held.path, held, from, basis: basisOf(held), source: sourceOf(held) };
}

/** `line` counts from the definition's first, from zero. */
function placeOf(shop: Shop, definition: Definition, line: number): { file: string; line: number } {
  const place = shop.shelf.placement(definition);
  return { file: shop.nameOf(place?.uri ?? ''), line: (place?.line ?? 0) + line + 1 };
}

function basisOf({ via, from }: Held): ShownValue['basis'] {
  if (via === 'solved') return 'solved';
  const { kind } = from.definition;
  if (kind === 'species') return 'handbook';
  return via === 'built' || kind === 'build' || kind === 'wood' ? 'measured' : 'recipe';
}

function sourceOf({ from }: Held): string | undefined {
  for (const statement of allStatements(from.definition.statements)) {
    if (statement.kind === 'property' && statement.span === from.span) return statement.source?.text;
  }
  return undefined;
}

function inOrder(values: ReadonlyMap<string, Held>, kind: DefinitionKind): readonly Held[] {
  return heldIn(partsInOrder(values, kindsOf(kind)));
}

function heldIn(block: PartBlock<Held>): readonly Held[] {
  return block.entries.flatMap(({ value, block: inner }) => [
    ...(value ? [value] : []),
    ...(inner ? heldIn(inner) : []),
  ]);
}

function kindsOf(kind: DefinitionKind): readonly DefinitionKind[] {
  return isInstrumentKind(kind) ? ['recipe', 'build'] : [kind];
}

function isInstrument({ kind }: Definition): boolean {
  return isInstrumentKind(kind);
}

function isInstrumentKind(kind: DefinitionKind): boolean {
  return kind === 'recipe' || kind === 'build' || kind === 'model';
}
