/**
 * The workshop: every question that can be asked of a bookshelf, as remembered queries. This file is the table of
 * contents of `recipes/`; the queries stand by subject in `queries/`, each answer is worked out in a file of its own.
 */
import { concretePaths } from './evaluation/effects.js';
import { Barrier, type Fault } from './shelf/barrier.js';
import type { Catalogue } from '../catalogue/catalogue.js';
import type { VariableClass } from '../catalogue/property.js';
import type { Dimension } from '../quantities/dimension.js';
import { ENGLISH, type Wording } from '../wording/wording.js';
import { type Analyst, NO_ANALYST } from './evaluation/analyst.js';
import type { Bookshelf } from './shelf/bookshelf.js';
import type { BuildRecord } from './builds/builds.js';
import type { Comparison } from './instrument/comparison.js';
import { type Count, withChanges } from './instrument/counting.js';
import { FITTED_WOOD_QUANTITIES } from './derived/fitted-wood-quantities.js';
import { INSTRUMENT_QUANTITIES } from './derived/instrument-quantities.js';
import { STRING_SET_QUANTITIES } from './derived/string-set-quantities.js';
import { WOOD_QUANTITIES } from './derived/wood-quantities.js';
import { Derivations, type DerivedQuantity, Evaluation, type Kin } from './evaluation/evaluation.js';
import type { Evidence } from './builds/evidence.js';
import type { OddReading } from './builds/odd-readings.js';
import type { Expectation } from './instrument/expectations.js';
import type { Definition, DefinitionKind, Statement } from '../facts/facts.js';
import { elsewhereOf, type Layer, ValueGround } from './evaluation/ground.js';
import {
  applyRecipe,
  applyRework,
  type Change,
  type Held,
  type Instrument,
  sameValues,
} from './instrument/instrument.js';
import type { Lineage } from './shelf/lineage.js';
import type { Mention } from './shelf/mentions.js';
import { buildQueries } from './queries/build-queries.js';
import { definitionQueries } from './queries/definition-queries.js';
import { instrumentQueries } from './queries/instrument-queries.js';
import { modeQueries } from './queries/mode-queries.js';
import { supplyQueries } from './queries/supply-queries.js';
import type { Questions, Solved } from './questions.js';
import { remembered } from './shelf/remembered.js';
import { type Limit, limitOf, type ShopSettings } from './instrument/shop-settings.js';
import { compareByName } from './instrument/sides.js';
import { Traces } from './evaluation/traces.js';
import type { Written } from './instrument/written.js';

/** What every question starts from. A class of its own so that it is in place before the queries below are made. */
class Foundation {
  constructor(
    readonly shelf: Bookshelf,
    readonly catalogue: Catalogue,
    /** @internal Works out modes and statics of plates. */
    readonly analyst: Analyst = NO_ANALYST,
    /** The language in which it answers people. */
    readonly wording: Wording = ENGLISH,
    /** Where what is thrown is written down. */
    log?: (words: string) => void,
  ) {
    this.barrier = new Barrier(shelf.memo, log);
  }

  /** @internal Around every question about one definition. */
  readonly barrier: Barrier;
}

export type { Solved } from './questions.js';

export class Workshop extends Foundation implements Questions {
  private readonly traces = new Traces();
  private readonly instrumentDerivations = new Derivations(INSTRUMENT_QUANTITIES);
  private readonly woodDerivations = new Derivations([...WOOD_QUANTITIES, ...FITTED_WOOD_QUANTITIES]);
  private readonly stringDerivations = new Derivations(STRING_SET_QUANTITIES);

  private readonly definitions = definitionQueries(this);
  private readonly supplies = supplyQueries(this);
  private readonly instruments = instrumentQueries(this);
  private readonly modes = modeQueries(this);
  private readonly builds = buildQueries(this);

  // ---- the shop -----------------------------------------------------------------------------------------------------

  /** Tolerances, climate and the limit of changes, with common practice where the shop is silent. */
  settings(): ShopSettings {
    return this.definitions.settings.get('');
  }

  /** How many changes this recipe may make, and who says so. */
  limit(recipe: Definition): Limit {
    return limitOf(recipe, this.settings());
  }

  // ---- plain definitions --------------------------------------------------------------------------------------------

  /** The values a definition states itself, by canonical path. */
  stated(definition: Definition): ReadonlyMap<string, Held> {
    return this.definitions.stated.get(definition);
  }

  /** Every path a definition writes, with what the catalogue and the engine know of it. */
  written(definition: Definition): readonly Written[] {
    return this.definitions.written.get(definition);
  }

  /** The quantities computed for such a definition. */
  derivations(kind: DefinitionKind): Derivations {
    if (kind === 'wood' || kind === 'species') return this.woodDerivations;
    return kind === 'strings' ? this.stringDerivations : this.instrumentDerivations;
  }

  /** A wood set (or, failing that, a species of this name) with everything that can be worked out about it. */
  wood(name: string): Evaluation | undefined {
    return this.supplies.wood.get(name);
  }

  /** The same with its moduli fitted by the solver beside those of the closed forms, for somebody who looks at it. */
  woodInFull(name: string): Evaluation | undefined {
    return this.supplies.woodInFull.get(name);
  }

  /** The species a wood set is said to be, through other sets if need be. */
  speciesOf(wood: string): Definition | undefined {
    return this.supplies.species.get(wood);
  }

  strings(name: string): Evaluation | undefined {
    return this.supplies.strings.get(name);
  }

  /** Every place where a definition names another. */
  mentions(definition: Definition): readonly Mention[] {
    return this.definitions.mentions.get(definition);
  }

  /** What was thrown while this definition was worked out: a finding says so, and everything else goes on. */
  faultsOf(definition: Definition): readonly Fault[] {
    return [...this.barrier.faultsOf(definition), ...this.computingFaults(definition)];
  }

  private computingFaults({ kind, name }: Definition): readonly Fault[] {
    const evaluation =
      kind === 'recipe'
        ? this.evaluation(name.text)
        : kind === 'wood'
          ? this.wood(name.text)
          : kind === 'strings'
            ? this.strings(name.text)
            : undefined;
    if (!evaluation) return [];
    return concretePaths(evaluation.derivations.all, evaluation).flatMap((path) => {
      const answer = evaluation.derived(path);
      if (answer?.known !== false || answer.fault === undefined) return [];
      return [this.barrier.note({ doing: `quantity ${path}`, error: answer.fault })];
    });
  }

  // ---- recipes ------------------------------------------------------------------------------------------------------

  lineage(recipe: string): Lineage {
    return this.instruments.lineage.get(recipe);
  }

  /** The parent's name, for a recipe that has a proper one and stands in a line that comes to an end. */
  parentOf(recipe: string): string | undefined {
    const definition = this.shelf.find('recipe', recipe);
    const relation = definition?.relation;
    if (relation?.word !== 'from' || this.ring(recipe) || this.lineage(recipe).trouble?.kind === 'long')
      return undefined;
    return this.shelf.find('recipe', relation.target.text) ? relation.target.text : undefined;
  }

  /** The ring of recipes this one is part of, if its parents lead back to itself. */
  ring(recipe: string): readonly string[] | undefined {
    return this.instruments.ring.get(recipe);
  }

  model(name: string): Instrument | undefined {
    return this.instruments.model.get(name);
  }

  /** The recipe of an order with what the client chose in place of what it says; what was asked for later once accepted. */
  ordered(name: string): Instrument | undefined {
    return this.instruments.ordered.get(name);
  }

  /** The recipe with all it inherits, its holds solved. */
  instrument(recipe: string): Solved | undefined {
    return this.instruments.instrument.get(recipe);
  }

  evaluation(recipe: string): Evaluation | undefined {
    return this.instruments.evaluation.get(recipe);
  }

  /** The instrument a recipe starts from: its parent, or for a base recipe its model. */
  startOf(recipe: string): Instrument | undefined {
    const parent = this.parentOf(recipe);
    if (parent !== undefined) return this.instrument(parent);
    const { model } = this.lineage(recipe);
    return model && this.model(model.name.text);
  }

  /** What a recipe starts from, known as fully as the recipe itself: what is compared with it is solved where it is. */
  startEvaluation(recipe: string): Evaluation | undefined {
    return this.instruments.start(recipe);
  }

  /**
   * What a recipe that is not on the shelf would make of `start`, its holds not solved. `appointments` are those it may
   * take up that are not on the shelf either.
   */
  wouldBe(recipe: Definition, start: Instrument | undefined, appointments: readonly Definition[] = []): Instrument {
    const { context } = this.instruments;
    const packaged = (name: string) =>
      appointments.find((each) => each.name.text === name) ?? context.appointments(name);
    return applyRecipe(start, recipe, { ...context, appointments: packaged });
  }

  /** An instrument after what a build says was reworked on it. */
  reworked(start: Instrument, build: Definition, statements: readonly Statement[]): Instrument {
    return applyRework(start, build, statements, this.instruments.context);
  }

  count(recipe: string): Count {
    return this.instruments.count.get(recipe);
  }

  expectations(recipe: string): readonly Expectation[] {
    return this.instruments.expectations.get(recipe);
  }

  /** The derived quantity of instruments at a path, whether or not it can be computed. */
  derivedAt(path: string): DerivedQuantity | undefined {
    return this.instrumentDerivations.find(path)?.quantity;
  }

  // ---- what takes a solver --------------------------------------------------------------------------------------------

  /**
   * The recipe with its resonances, for somebody who looks at it. Findings do without, unless the recipe holds or expects
   * a resonance, so that they never wait for the solver and never depend on what happens to be open.
   */
  inFull(recipe: string): Evaluation | undefined {
    return this.instruments.inFull.get(recipe);
  }

  /** @internal */
  analystFor(recipe: string): Analyst {
    return this.modes.analystFor(recipe);
  }

  /** @internal */
  needsModes(recipe: string): boolean {
    return this.modes.isNeeded(recipe);
  }

  // ---- builds -------------------------------------------------------------------------------------------------------

  /** A build: the recipe's values as made, what was measured, and under which conditions. */
  build(name: string): BuildRecord | undefined {
    return this.builds.build.get(name);
  }

  /** Builds of a recipe, by name. */
  buildsOf(recipe: string): readonly Definition[] {
    return this.shelf.targeting('build', recipe);
  }

  /** The nearest ancestor (the parent first) that has been built. */
  lastBuiltAncestor(recipe: string): string | undefined {
    const { recipes } = this.lineage(recipe);
    for (let i = recipes.length - 2; i >= 0; i--) {
      const name = recipes[i]!.name.text;
      if (this.buildsOf(name).length > 0) return name;
    }
    return undefined;
  }

  // ---- side by side -------------------------------------------------------------------------------------------------

  /** Two recipes, builds or models side by side; undefined when either name is unknown. */
  compare(a: string, b: string): Comparison | undefined {
    return compareByName(this, a, b);
  }

  /** The builds of a recipe and of every recipe with no counted change between it and this one: replicates. */
  replicates(recipe: string): readonly BuildRecord[] {
    return this.builds.replicates(recipe);
  }

  /** What a build's readings say against the builds it descends from. */
  evidence(build: string): readonly Evidence[] {
    return this.builds.evidence.get(build);
  }

  /** Readings of a model's builds that are asked about, by build. */
  oddReadings(model: string): ReadonlyMap<string, readonly OddReading[]> {
    return this.builds.odd.get(model);
  }

  // ---- evaluating values that no recipe has (yet) -------------------------------------------------------------------

  evaluate(values: ReadonlyMap<string, Held>, analyst: Analyst = NO_ANALYST, kin: Kin = {}): Evaluation {
    const layers: Layer[] = [{ values, prefix: '', shared: '', basis: 'recipe', spread: 'half-width' }];
    const shop = this.shelf.shop();
    if (shop) {
      const said = this.stated(shop);
      layers.push({ values: said, prefix: 'shop.', shared: 'shop: ', basis: 'recipe', spread: 'half-width' });
    }
    const others = elsewhereOf(values, this.supplies.named);
    const ground = new ValueGround(layers, this.settings().tolerances, this.dimensionOf, others);
    return new Evaluation(this.instrumentDerivations, ground, this.traces, analyst, kin);
  }

  /** With resonances too. */
  evaluateInFull(values: ReadonlyMap<string, Held>, kin: Kin = {}): Evaluation {
    return this.evaluate(values, this.analyst, kin);
  }

  /**
   * The parent's values with some of a recipe's changes, and the recipe's holds solved again for just those; undefined as
   * long as a hold waits for the solver.
   */
  evaluateWith(recipe: Instrument, parent: Instrument, changes: readonly Change[]): Evaluation | undefined {
    const { values, holds } = this.instruments.solve(
      { ...recipe, values: withChanges(parent.values, changes) },
      parent,
    );
    if (holds.some(({ outcome }) => outcome.kind === 'pending')) return undefined;
    // Mostly a recipe does one thing, and this is that recipe.
    if (sameValues(values, recipe.values)) return this.evaluation(recipe.name);
    return this.evaluate(values, this.analystFor(recipe.name), { like: this.instruments.latest(parent.name) });
  }

  readonly classOf = remembered(
    (path: string): VariableClass =>
      this.catalogue.property(path)?.class ?? this.catalogue.classOfPart(path) ?? 'appointment',
  );

  private readonly dimensionOf = remembered(
    (path: string): Dimension | undefined =>
      this.catalogue.property(path)?.dimension ?? this.instrumentDerivations.find(path)?.quantity.dimension,
  );
}
