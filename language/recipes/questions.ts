/**
 * What one group of queries may ask of the others. The `Workshop` answers it; stated apart from it, so that a group leans
 * on the questions and not on whoever gathers all groups.
 */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { VariableClass } from '../catalogue/property.js';
import type { Definition, DefinitionKind, Statement } from '../facts/facts.js';
import type { BuildRecord } from './builds/builds.js';
import type { Analyst } from './evaluation/analyst.js';
import type { Derivations } from './evaluation/derivations.js';
import type { DerivedQuantity } from './evaluation/derived-quantity.js';
import type { Evaluation, Kin } from './evaluation/evaluation.js';
import type { Count } from './instrument/counting.js';
import type { SolvedHold } from './instrument/hold.js';
import type { Change, Held, Instrument } from './instrument/instrument.js';
import type { ShopSettings } from './instrument/shop-settings.js';
import type { Barrier } from './shelf/barrier.js';
import type { Bookshelf } from './shelf/bookshelf.js';
import type { Lineage } from './shelf/lineage.js';

/** An instrument with its holds solved. */
export interface Solved extends Instrument {
  readonly solvedHolds: readonly SolvedHold[];
}

export interface Questions {
  readonly shelf: Bookshelf;
  readonly catalogue: Catalogue;
  /** Works out modes and statics of plates. */
  readonly analyst: Analyst;
  /** Around every question about one definition. */
  readonly barrier: Barrier;

  /** Tolerances, climate and the limit of changes, with common practice where the shop is silent. */
  settings(): ShopSettings;
  /** The values a definition states itself, by canonical path. */
  stated(definition: Definition): ReadonlyMap<string, Held>;
  /** The quantities computed for such a definition. */
  derivations(kind: DefinitionKind): Derivations;
  /** The species a wood set is said to be, through other sets if need be. */
  speciesOf(wood: string): Definition | undefined;
  readonly classOf: (path: string) => VariableClass;
  derivedAt(path: string): DerivedQuantity | undefined;

  lineage(recipe: string): Lineage;
  parentOf(recipe: string): string | undefined;
  startOf(recipe: string): Instrument | undefined;
  model(name: string): Instrument | undefined;
  instrument(recipe: string): Solved | undefined;
  evaluation(recipe: string): Evaluation | undefined;
  inFull(recipe: string): Evaluation | undefined;
  reworked(start: Instrument, build: Definition, statements: readonly Statement[]): Instrument;
  count(recipe: string): Count;
  needsModes(recipe: string): boolean;
  analystFor(recipe: string): Analyst;

  build(name: string): BuildRecord | undefined;
  buildsOf(recipe: string): readonly Definition[];
  lastBuiltAncestor(recipe: string): string | undefined;

  evaluate(values: ReadonlyMap<string, Held>, analyst?: Analyst, kin?: Kin): Evaluation;
  evaluateInFull(values: ReadonlyMap<string, Held>, kin?: Kin): Evaluation;
  evaluateWith(recipe: Instrument, parent: Instrument, changes: readonly Change[]): Evaluation | undefined;
}
