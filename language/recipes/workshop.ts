/**
 * The workshop: every question that can be asked of a bookshelf, as remembered queries. This file is the table of
 * contents of `recipes/`; each answer is worked out in a file of its own.
 */
import type { Catalogue } from '../catalogue/catalogue.js';
import type { VariableClass } from '../catalogue/property.js';
import { DIMENSION, type Dimension } from '../quantities/dimension.js';
import { type Analyst, NO_ANALYST } from './analyst.js';
import { type BuildRecord, recordOf } from './builds.js';
import type { Bookshelf } from './bookshelf.js';
import type { Comparison } from './comparison.js';
import { type Count, countChanges, withChanges } from './counting.js';
import { INSTRUMENT_QUANTITIES } from './derived/instrument-quantities.js';
import { STRING_SET_QUANTITIES } from './derived/string-set-quantities.js';
import { WOOD_QUANTITIES } from './derived/wood-quantities.js';
import { Derivations, type DerivedQuantity, Evaluation } from './evaluation.js';
import { type Evidence, evidenceOf } from './evidence.js';
import { checkExpectations, type Expectation } from './expectations.js';
import type { Definition, DefinitionKind } from './facts.js';
import { elsewhereOf, type Layer, ValueGround } from './ground.js';
import { solveHolds, type SolvedHold } from './hold.js';
import { applyModel, applyRecipe, type Change, type Held, type Instrument, sameValues } from './instrument.js';
import { type Lineage, lineageOf, ringOf } from './lineage.js';
import { type Limit, limitOf, type ShopSettings, settingsOf } from './settings.js';
import type { Memo } from './memo.js';
import { type Mention, mentionsIn } from './mentions.js';
import { remembered } from './remembered.js';
import { compareByName } from './sides.js';
import { Traces } from './traces.js';
import { propertiesOf } from './values.js';
import { ENGLISH, type Wording } from '../wording/wording.js';
import { type Written, writtenIn } from './written.js';

/** An instrument with its holds solved. */
export interface Solved extends Instrument {
  readonly solvedHolds: readonly SolvedHold[];
}

/** What every question stands on. A class of its own so that it is in place before the queries below are made. */
class Stand {
  protected readonly memo: Memo;

  constructor(
    readonly shelf: Bookshelf,
    readonly catalogue: Catalogue,
    /** Works out modes and statics of plates, for the recipes in focus. */
    protected readonly analyst: Analyst = NO_ANALYST,
    /** The language in which it answers people. */
    readonly wording: Wording = ENGLISH,
  ) {
    this.memo = shelf.memo;
  }
}

export class Workshop extends Stand {
  private readonly traces = new Traces();
  private readonly instrumentDerivations = new Derivations(INSTRUMENT_QUANTITIES);
  private readonly woodDerivations = new Derivations(WOOD_QUANTITIES);
  private readonly stringDerivations = new Derivations(STRING_SET_QUANTITIES);

  // ---- the shop -----------------------------------------------------------------------------------------------------

  /** Tolerances, climate and the limit of changes, with common practice where the shop is silent. */
  settings(): ShopSettings {
    return this.settingsQuery.get('');
  }

  /** How many changes this recipe may make, and who says so. */
  limit(recipe: Definition): Limit {
    return limitOf(recipe, this.settings());
  }

  // ---- plain definitions --------------------------------------------------------------------------------------------

  /** The values a definition states itself, by canonical path. */
  stated(definition: Definition): ReadonlyMap<string, Held> {
    return this.statedQuery.get(definition);
  }

  /** Every path a definition writes, with what the catalogue and the engine know of it. */
  written(definition: Definition): readonly Written[] {
    return this.writtenQuery.get(definition);
  }

  /** The quantities computed for such a definition. */
  derivations(kind: DefinitionKind): Derivations {
    if (kind === 'wood' || kind === 'species') return this.woodDerivations;
    return kind === 'strings' ? this.stringDerivations : this.instrumentDerivations;
  }

  /** A wood set (or, failing that, a species of this name) with everything that can be worked out about it. */
  wood(name: string): Evaluation | undefined {
    return this.woodQuery.get(name);
  }

  /** The species a wood set is said to be, through other sets if need be. */
  speciesOf(wood: string): Definition | undefined {
    return this.speciesQuery.get(wood);
  }

  strings(name: string): Evaluation | undefined {
    return this.stringsQuery.get(name);
  }

  /** Every place where a definition names another. */
  mentions(definition: Definition): readonly Mention[] {
    return this.mentionsQuery.get(definition);
  }

  // ---- recipes ------------------------------------------------------------------------------------------------------

  lineage(recipe: string): Lineage {
    return this.lineageQuery.get(recipe);
  }

  /** The parent's name, for a recipe that has a proper one. */
  parentOf(recipe: string): string | undefined {
    const definition = this.shelf.find('recipe', recipe);
    const relation = definition?.relation;
    if (relation?.word !== 'from' || this.ring(recipe)) return undefined;
    return this.shelf.find('recipe', relation.target.text) ? relation.target.text : undefined;
  }

  /** The ring of recipes this one is part of, if its parents lead back to itself. */
  ring(recipe: string): readonly string[] | undefined {
    return this.ringQuery.get(recipe);
  }

  model(name: string): Instrument | undefined {
    return this.modelQuery.get(name);
  }

  /** The recipe with all it inherits, its holds solved. */
  instrument(recipe: string): Solved | undefined {
    return this.instrumentQuery.get(recipe);
  }

  evaluation(recipe: string): Evaluation | undefined {
    return this.evaluationQuery.get(recipe);
  }

  /** The instrument a recipe starts from: its parent, or for a base recipe its model. */
  startOf(recipe: string): Instrument | undefined {
    const parent = this.parentOf(recipe);
    if (parent !== undefined) return this.instrument(parent);
    const { model } = this.lineage(recipe);
    return model && this.model(model.name.text);
  }

  count(recipe: string): Count {
    return this.countQuery.get(recipe);
  }

  expectations(recipe: string): readonly Expectation[] {
    return this.expectationsQuery.get(recipe);
  }

  /** The derived quantity of instruments at a path, whether or not it can be computed. */
  derivedAt(path: string): DerivedQuantity | undefined {
    return this.instrumentDerivations.find(path)?.quantity;
  }

  // ---- what takes a solver --------------------------------------------------------------------------------------------

  /**
   * Names the recipes somebody is looking at. Only for these, and for recipes that hold or expect such a quantity, are
   * resonances worked out: five hundred tops would keep a solver busy for a minute.
   */
  focusOn(recipes: Iterable<string>): void {
    const wanted = new Set(recipes);
    for (const name of this.focused) if (!wanted.has(name)) this.focus.set(name, undefined);
    for (const name of wanted) this.focus.set(name, true);
    this.focused = wanted;
  }

  private analystFor(recipe: string): Analyst {
    return this.focus.get(recipe) || this.asksForModes.get(recipe) ? this.analyst : NO_ANALYST;
  }

  // ---- builds -------------------------------------------------------------------------------------------------------

  /** A build: the recipe's values as made, what was measured, and under which conditions. */
  build(name: string): BuildRecord | undefined {
    return this.buildQuery.get(name);
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
    return this.replicatesQuery.get(this.rootOfReplicates(recipe));
  }

  /** What a build's readings say against the builds it descends from. */
  evidence(build: string): readonly Evidence[] {
    return this.evidenceQuery.get(build);
  }

  // ---- evaluating values that no recipe has (yet) -------------------------------------------------------------------

  evaluate(values: ReadonlyMap<string, Held>, analyst: Analyst = NO_ANALYST): Evaluation {
    const layer: Layer = { values, prefix: '', shared: '', basis: 'recipe', spread: 'half-width' };
    const others = elsewhereOf(values, this.elsewhere);
    const ground = new ValueGround([layer], this.settings().tolerances, this.dimensionOf, others);
    return new Evaluation(this.instrumentDerivations, ground, this.traces, analyst);
  }

  /** With resonances too, whether or not anybody looks at the recipe. */
  evaluateInFull(values: ReadonlyMap<string, Held>): Evaluation {
    return this.evaluate(values, this.analyst);
  }

  /** The parent's values with some of a recipe's changes, and the recipe's holds solved again for just those. */
  evaluateWith(recipe: Instrument, parent: Instrument, changes: readonly Change[]): Evaluation {
    const values = withChanges(parent.values, changes);
    return this.evaluate(
      this.solve({ ...recipe, values }, this.evaluationOf(parent)).values,
      this.analystFor(recipe.name),
    );
  }

  readonly classOf = remembered(
    (path: string): VariableClass =>
      this.catalogue.property(path)?.class ?? this.catalogue.classOfPart(path) ?? 'appointment',
  );

  // ---- queries ------------------------------------------------------------------------------------------------------

  private readonly settingsQuery = this.memo.query(
    () => {
      const shop = this.shelf.shop();
      return settingsOf(shop, shop ? this.stated(shop) : new Map());
    },
    { equal: sameJson },
  );

  private readonly statedQuery = this.memo.query((definition: Definition): ReadonlyMap<string, Held> => {
    const values = new Map<string, Held>();
    for (const { statement } of propertiesOf(definition.statements)) {
      const path = this.catalogue.canonical(statement.path.text, definition.kind);
      values.set(path, {
        path,
        value: statement.value,
        from: { definition, span: statement.span },
        via: 'stated',
        before: values.get(path),
      });
    }
    return values;
  });

  private readonly mentionsQuery = this.memo.query((definition: Definition) => mentionsIn(definition, this.catalogue));

  private readonly writtenQuery = this.memo.query((definition: Definition) =>
    writtenIn(definition, this.catalogue, this.derivations(definition.kind)),
  );

  private readonly speciesQuery = this.memo.query((name: string): Definition | undefined => {
    const seen = new Set<string>();
    for (let next: string | undefined = name; next !== undefined && !seen.has(next);) {
      seen.add(next);
      const wood: Definition | undefined = this.shelf.find('wood', next);
      if (!wood) return this.shelf.find('species', next);
      next = wood.relation?.target.text;
    }
    return undefined;
  });

  private readonly woodQuery = this.memo.query((name: string): Evaluation | undefined => {
    const wood = this.shelf.find('wood', name);
    const species = this.speciesOf(name);
    if (!wood && !species) return undefined;
    const layers: Layer[] = [];
    if (wood) {
      const values = this.stated(wood);
      layers.push({ values, prefix: '', shared: `wood ${name}: `, basis: 'measured', spread: 'half-width' });
    }
    if (species) {
      const values = this.stated(species);
      const shared = `species ${species.name.text}: `;
      layers.push({ values, prefix: 'species.', shared, basis: 'handbook', spread: 'standard deviation' });
    }
    const shop = this.shelf.shop();
    if (shop) {
      layers.push({
        values: this.stated(shop),
        prefix: 'shop.',
        shared: 'shop: ',
        basis: 'recipe',
        spread: 'half-width',
      });
    }
    const rigs = wood
      ? elsewhereOf(this.stated(wood), (part, rig) => (part.endsWith('rig') ? this.rig(rig) : undefined))
      : undefined;
    const ground = new ValueGround(layers, this.settings().tolerances, this.woodDimensionOf, rigs);
    return new Evaluation(this.woodDerivations, ground);
  });

  private readonly stringsQuery = this.memo.query((name: string): Evaluation | undefined => {
    const set = this.shelf.find('strings', name);
    return set && this.recordEvaluation(set, `strings ${name}: `, this.stringDerivations);
  });

  private readonly rigQuery = this.memo.query((name: string): Evaluation | undefined => {
    const rig = this.shelf.find('rig', name);
    return rig && this.recordEvaluation(rig, `rig ${name}: `, new Derivations([]));
  });

  private readonly focus = this.memo.input<string, true>();
  private focused: ReadonlySet<string> = new Set();

  /** Whether a recipe holds or expects something only the solver knows. */
  private readonly asksForModes = this.memo.query((name: string): boolean => {
    const statements = this.shelf.find('recipe', name)?.statements ?? [];
    return statements.some(
      (statement) =>
        (statement.kind === 'hold' || statement.kind === 'expect') &&
        this.derivedAt(this.catalogue.canonical(statement.quantity.text))?.slow,
    );
  });

  private readonly lineageQuery = this.memo.query((recipe: string) => lineageOf(this.shelf, recipe));

  private readonly ringQuery = this.memo.query((recipe: string) => ringOf(this.shelf, recipe));

  private readonly modelQuery = this.memo.query((name: string): Instrument | undefined => {
    const model = this.shelf.find('model', name);
    return model && applyModel(model, this.recipeContext);
  });

  private readonly instrumentQuery = this.memo.query((name: string): Solved | undefined => {
    const definition = this.shelf.find('recipe', name);
    if (!definition) return undefined;
    const parent = this.startOf(name);
    const instrument = applyRecipe(parent, definition, this.recipeContext);
    const { values, holds } = this.solve(instrument, parent && this.evaluationOf(parent));
    return { ...instrument, values, solvedHolds: holds };
  });

  private readonly valuesQuery = this.memo.query((recipe: string) => this.instrument(recipe)?.values ?? NO_VALUES, {
    equal: sameValues,
  });

  private readonly evaluationQuery = this.memo.query((recipe: string): Evaluation | undefined => {
    if (!this.shelf.find('recipe', recipe)) return undefined;
    return this.evaluate(this.valuesQuery.get(recipe), this.analystFor(recipe));
  });

  private readonly modelValuesQuery = this.memo.query((model: string) => this.model(model)?.values ?? NO_VALUES, {
    equal: sameValues,
  });

  private readonly modelEvaluationQuery = this.memo.query((model: string) =>
    this.evaluate(this.modelValuesQuery.get(model)),
  );

  private readonly countQuery = this.memo.query((recipe: string): Count => {
    const instrument = this.instrument(recipe);
    const parentName = this.parentOf(recipe);
    const parent = parentName === undefined ? undefined : this.instrument(parentName);
    if (!instrument || !parent) return { variables: [], total: 0 };
    return countChanges(instrument, this.evaluationOf(parent), {
      classOf: this.classOf,
      speciesOf: (wood) => this.speciesOf(wood)?.name.text,
      evaluateWith: (changes) => this.evaluateWith(instrument, parent, changes),
    });
  });

  private readonly expectationsQuery = this.memo.query((recipe: string): readonly Expectation[] => {
    const definition = this.shelf.find('recipe', recipe);
    const evaluation = this.evaluation(recipe);
    return definition && evaluation
      ? checkExpectations(definition, evaluation, (path) => this.catalogue.canonical(path))
      : [];
  });

  private readonly buildQuery = this.memo.query((name: string): BuildRecord | undefined => {
    const build = this.shelf.find('build', name);
    if (!build) return undefined;
    const recipe = build.relation && this.instrument(build.relation.target.text);
    return recordOf(build, recipe, {
      canonical: (path) => this.catalogue.canonical(path, 'build'),
      isOfInstrument: (path) => this.catalogue.property(path, 'recipe') !== undefined,
      evaluate: (values) => this.evaluate(values),
    });
  });

  private readonly replicatesQuery = this.memo.query((root: string): readonly BuildRecord[] => {
    const alike = [root];
    for (const name of alike) {
      const children = this.shelf.targeting('recipe', name).map((child) => child.name.text);
      alike.push(...children.filter((child) => this.parentOf(child) === name && this.count(child).total === 0));
    }
    return alike.flatMap((name) => this.buildsOf(name).flatMap(({ name: { text } }) => this.build(text) ?? []));
  });

  private readonly evidenceQuery = this.memo.query((name: string): readonly Evidence[] => {
    const build = this.build(name);
    const recipe = build?.recipe?.name;
    const ancestor = recipe === undefined ? undefined : this.lastBuiltAncestor(recipe);
    if (!build || recipe === undefined || ancestor === undefined) return [];
    const root = this.rootOfReplicates(ancestor);
    // An instrument built like its ancestor is one more replicate, and shows no effect.
    if (this.rootOfReplicates(recipe) === root) return [];
    const roots = new Set(this.lineage(recipe).recipes.map((one) => this.rootOfReplicates(one.name.text)));
    const shop = this.shelf.shop();
    const scatter = shop && this.stated(shop).get('scatter.frequency')?.value;
    return evidenceOf(build, this.replicates(ancestor), {
      groups: [...roots].map((one) => this.replicatesQuery.get(one)),
      stated:
        scatter?.kind === 'quantity' && scatter.quantity.si > 0
          ? { share: scatter.quantity.si, basis: 'shop' }
          : { share: 0.02, basis: 'common practice' },
      isFrequency: (path) => this.catalogue.property(path, 'build')?.dimension?.name === DIMENSION.frequency.name,
    });
  });

  /** The first of the recipes that lead here without a counted change. */
  private rootOfReplicates(recipe: string): string {
    let root = recipe;
    for (let parent = this.parentOf(root); parent !== undefined && this.count(root).total === 0;) {
      root = parent;
      parent = this.parentOf(root);
    }
    return root;
  }

  private rig(name: string): Evaluation | undefined {
    return this.rigQuery.get(name);
  }

  private evaluationOf(instrument: Instrument): Evaluation | undefined {
    const { kind, name } = instrument.definition;
    return kind === 'model' ? this.modelEvaluationQuery.get(name.text) : this.evaluation(name.text);
  }

  private solve(instrument: Instrument, parent: Evaluation | undefined) {
    return solveHolds(instrument, {
      parent,
      evaluate: (values) => this.evaluate(values, this.analystFor(instrument.name)),
      range: (path) => this.catalogue.plausibleSpan(path),
    });
  }

  private recordEvaluation(definition: Definition, shared: string, derivations: Derivations): Evaluation {
    const values = this.stated(definition);
    const layer: Layer = { values, prefix: '', shared, basis: 'recipe', spread: 'as stated' };
    const dimensionOf = (path: string) => this.catalogue.property(path, definition.kind)?.dimension;
    return new Evaluation(derivations, new ValueGround([layer], this.settings().tolerances, dimensionOf));
  }

  private readonly recipeContext = {
    canonical: remembered((path: string) => this.catalogue.canonical(path)),
    appointments: (name: string) => this.shelf.find('appointments', name),
    model: (name: string) => this.model(name),
  };

  private readonly elsewhere = (part: string, name: string): Evaluation | undefined =>
    part === 'strings'
      ? this.strings(name)
      : part.endsWith('wood')
        ? this.wood(name)
        : part.endsWith('.rig')
          ? this.rig(name)
          : undefined;

  private readonly dimensionOf = remembered(
    (path: string): Dimension | undefined =>
      this.catalogue.property(path)?.dimension ?? this.instrumentDerivations.find(path)?.quantity.dimension,
  );

  private readonly woodDimensionOf = remembered((path: string): Dimension | undefined => {
    for (const kind of ['species', 'shop'] as const) {
      if (path.startsWith(`${kind}.`)) return this.catalogue.property(path.slice(kind.length + 1), kind)?.dimension;
    }
    return this.catalogue.property(path, 'wood')?.dimension;
  });
}

const NO_VALUES: ReadonlyMap<string, Held> = new Map();

function sameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
