/**
 * The design matrix of a model: a row for each of its builds, a column for each thing that was changed between them, with
 * what was made, not what was meant.
 *
 * A column is a number as built (SI), or 0 and 1 for a word (a species, a profile, another billet) or a member that is
 * there or not. Paths that are only ever changed in one `together` group are one column. Wood sets exchanged without
 * counting are the same wood. What a build has otherwise than its recipe, beyond what the shop works to, is a column too,
 * declared or not.
 */
import { type Dimension, sameDimension } from '../../quantities/dimension.js';
import type { BuildRecord } from './builds.js';
import { isCounted } from '../instrument/counting.js';
import { type Change, type Held, isWithin } from '../instrument/instrument.js';
import { buildsOfModel } from './builds-of-model.js';
import { type DesignRow, filledIn, recordedFactors, rowsOf } from './design-rows.js';
import { isVaried } from './least-squares.js';
import { halfWidth } from '../instrument/tolerances.js';
import { SameWords } from '../instrument/same-words.js';
import type { Workshop } from '../workshop.js';

export interface Design {
  readonly model: string;
  /** The recipe all of these builds descend from. */
  readonly base?: string;
  /** A row for each build, and one more for each rework after which it was read. */
  readonly builds: readonly DesignRow[];
  /** The one the others are told from: nearest to the base recipe. */
  readonly reference: number;
  readonly variables: readonly DesignVariable[];
  readonly leftOut: readonly LeftOut[];
}

export interface LeftOut {
  readonly build: string;
  readonly because: 'nothing-read' | 'other-base' | 'unknown-value';
  /** The recipe another line starts from, or what is not known in this build. */
  readonly base?: string;
  readonly path?: string;
}

export interface DesignVariable {
  readonly kind: 'number' | 'word' | 'member';
  /** More than one where they were declared to go together. For a member its own path. */
  readonly paths: readonly string[];
  readonly declared: boolean;
  /** For each build. */
  readonly column: readonly number[];
  /** The step its effect is told for: from the reference to the build (by index) that is farthest from it. */
  readonly to: number;
  readonly step: number;
  /** The species, where it says more than the name of a set: what the words have in common, before and after. */
  readonly species?: readonly [from: string, to: string];
}

/** Undefined when there is no such model. */
export function designOf(workshop: Workshop, model: string): Design | undefined {
  if (!workshop.shelf.find('model', model)) return undefined;
  const all = buildsOfModel(workshop, model);
  const bases = all.map((build) => baseOf(workshop, build));
  const base = mostFrequent(bases);
  const line = all.filter((build, i) => bases[i] === base && build.readings.length > 0);
  const changes = changesBehind(workshop, line);
  const declared = together(changes.counted);
  const known = new Set(declared.flat());
  const undeclared = [...new Set(line.flatMap((build) => undeclaredIn(workshop, build)))]
    .filter((path) => !known.has(path))
    .map((path) => [path]);
  const factors = [...declared, ...undeclared];
  const leftOut = all.flatMap((build, i): LeftOut[] => {
    const { text } = build.definition.name;
    if (build.readings.length === 0) return [{ build: text, because: 'nothing-read' }];
    if (bases[i] !== base) return [{ build: text, because: 'other-base', base: bases[i]! }];
    const path = factors.flat().find((each) => isUnknown(workshop, each, build));
    return path === undefined ? [] : [{ build: text, because: 'unknown-value', path }];
  });
  const out = new Set(leftOut.map(({ build }) => build));
  const rows = rowsOf(line.filter(({ definition }) => !out.has(definition.name.text)));
  const reference = nearestTheBase(workshop, rows);
  const builds = filledIn(rows, reference);
  const words = new SameWords(workshop, changes.uncounted);
  const columns = new Columns(workshop, builds, reference, words);
  const recorded = recordedFactors(builds).map((path) => [path]);
  const variables = [...factors, ...recorded].flatMap((paths) => columns.of(paths, known.has(paths[0]!)));
  return { model, base, builds, reference, variables, leftOut };
}

/** Two recipes that start afresh from one model declare nothing of each other: only one line is told of. */
function baseOf(workshop: Workshop, { recipe }: BuildRecord): string {
  return workshop.lineage(recipe!.name).recipes[0]!.name.text;
}

function mostFrequent(names: readonly string[]): string | undefined {
  const times = (name: string) => names.filter((each) => each === name).length;
  return [...new Set(names)].sort((a, b) => times(b) - times(a))[0];
}

/** What the recipes on the way to these builds change. Exchanges that do not count tell which words mean the same. */
function changesBehind(workshop: Workshop, builds: readonly BuildRecord[]) {
  const recipes = new Set(builds.flatMap(({ recipe }) => workshop.lineage(recipe!.name).recipes.slice(1)));
  const [counted, uncounted]: [(readonly string[])[], Change[]] = [[], []];
  for (const { name } of recipes) {
    for (const { variable, verdict } of workshop.count(name.text).variables) {
      if (isCounted(verdict)) counted.push(variable.changes.map(({ path }) => path).filter((path) => path !== 'model'));
      else uncounted.push(...variable.changes);
    }
  }
  // What was reworked on a build was changed as well, and on purpose.
  for (const { states } of builds) {
    for (const state of states) if (state.rework) counted.push(state.changes.map(({ path }) => path));
  }
  return { counted, uncounted };
}

/** Paths in the order met; those that every change sets together are one entry. */
function together(counted: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const withPath = new Map<string, string>();
  counted.forEach((paths, i) => {
    for (const path of new Set(paths)) withPath.set(path, `${withPath.get(path) ?? ''} ${i}`);
  });
  const bySets = new Map<string, string[]>();
  for (const [path, set] of withPath) bySets.set(set, [...(bySets.get(set) ?? []), path]);
  return [...bySets.values()];
}

function undeclaredIn(workshop: Workshop, build: BuildRecord): readonly string[] {
  return build.departures.flatMap(({ path, meant }) => {
    if (!['voicing', 'body', 'setup'].includes(workshop.classOf(path)) || isUnknown(workshop, path, build)) return [];
    const [a, b] = [numberOf(workshop, path, meant), numberOf(workshop, path, build.values.get(path))];
    if (a === undefined || b === undefined) return [path];
    const allowed = halfWidth(path, meant.value, workshop.settings().tolerances);
    return allowed > 0 && Math.abs(b - a) > allowed * (1 + 1e-9) ? [path] : [];
  });
}

class Columns {
  constructor(
    private readonly workshop: Workshop,
    private readonly builds: readonly DesignRow[],
    private readonly reference: number,
    private readonly words: SameWords,
  ) {}

  of(paths: readonly string[], declared: boolean): readonly DesignVariable[] {
    const { workshop, builds, reference } = this;
    const dimensions = new Set(paths.map((path) => dimensionOf(workshop, path)?.name));
    if (dimensions.has(undefined) || dimensions.size > 1) {
      if (paths.length > 1) return paths.flatMap((path) => this.of([path], declared));
      return this.ofWords(paths[0]!, declared);
    }
    const means = builds.map((build) =>
      meanOf(paths.flatMap((path) => numberOf(workshop, path, build.values.get(path)) ?? [])),
    );
    // A member that is not there has the mean height, so that only its being there counts: that is a column of its own.
    const overall = meanOf(means.filter((value) => !Number.isNaN(value)));
    const column = means.map((value) => (Number.isNaN(value) ? overall : value));
    if (column.length === 0 || !isVaried(column)) return [];
    const from = column[reference]!;
    const to = column.reduce((far, value, i) => (Math.abs(value - from) > Math.abs(column[far]! - from) ? i : far), 0);
    return [{ kind: 'number', paths, declared, column, to, step: column[to]! - from }];
  }

  /** A column for each word but that of the reference, or one for a member that is there in some builds only. */
  private ofWords(path: string, declared: boolean): readonly DesignVariable[] {
    const { builds, reference, words } = this;
    const isMember = builds.every(({ values }) => !values.has(path));
    const found = builds.map(({ values }) => {
      if (!isMember) return words.meaning(path, values.get(path)?.value);
      return [...values.keys()].some((each) => isWithin(each, path)) ? 'there' : '';
    });
    const own = found[reference];
    const others = [...new Set(found)].filter((meaning) => meaning !== own);
    const speciesOf = (meaning: string | undefined) =>
      words.species(builds[found.indexOf(meaning!)]?.values.get(path)?.value);
    const before = speciesOf(own);
    return others.map((meaning) => {
      const to = found.indexOf(meaning);
      const after = speciesOf(meaning);
      // Two sets of one species that are not the same to the count go by their own names.
      const tells = after !== before && others.filter((other) => speciesOf(other) === after).length === 1;
      return {
        kind: isMember ? 'member' : 'word',
        paths: [path],
        declared,
        column: found.map((each) => (each === meaning ? 1 : 0)),
        to,
        step: 1,
        ...(before !== undefined && after !== undefined && tells ? { species: [before, after] } : {}),
      };
    });
  }
}

function nearestTheBase(workshop: Workshop, builds: readonly DesignRow[]): number {
  const depths = builds.map(({ recipe }) => workshop.lineage(recipe!.name).recipes.length);
  return Math.max(0, depths.indexOf(Math.min(...depths)));
}

/** SI; of a range its middle. */
function numberOf(workshop: Workshop, path: string, held: Held | undefined): number | undefined {
  const dimension = dimensionOf(workshop, path);
  if (!held || !dimension) return undefined;
  const { value } = held;
  const ends = value.kind === 'range' ? [value.low, value.high] : [value];
  const numbers = ends.flatMap((end) =>
    end?.kind === 'quantity' && sameDimension(end.quantity.dimension, dimension) ? [end.quantity.si] : [],
  );
  return numbers.length === ends.length ? meanOf(numbers) : undefined;
}

function dimensionOf({ catalogue }: Workshop, path: string): Dimension | undefined {
  return catalogue.property(path, 'recipe')?.dimension;
}

/** Said to be unknown, or a number that cannot be read one way only. */
function isUnknown(workshop: Workshop, path: string, { values }: BuildRecord): boolean {
  const held = values.get(path);
  if (!held) return false;
  if (held.value.kind === 'unknown' || held.value.kind === 'unreadable') return true;
  return dimensionOf(workshop, path) !== undefined && numberOf(workshop, path, held) === undefined;
}

function meanOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
}
