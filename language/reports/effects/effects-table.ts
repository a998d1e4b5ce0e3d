/** What each change did: every build that can be held against the last built ancestor of its recipe, with what is read. */
import { isCounted } from '../../recipes/instrument/counting.js';
import { sideOf } from '../../recipes/instrument/sides.js';
import type { Workshop } from '../../recipes/workshop.js';
import { type ComparedEvidence, evidenceTable, writeSigned } from '../comparison/compared-evidence.js';

export interface BuildEffect extends ComparedEvidence {
  readonly build: string;
  readonly recipe: string;
  /** The recipe it is held against. */
  readonly ancestor: string;
  /** What lies between the two, every recipe on the way. */
  readonly changes: readonly string[];
}

/** `name`: a build, a recipe or a model, to tell of nothing else. Undefined when there is none of that name. */
export function effectsOf(workshop: Workshop, name?: string): readonly BuildEffect[] | undefined {
  const { shelf } = workshop;
  const known = name === undefined || (['build', 'recipe', 'model'] as const).some((kind) => shelf.find(kind, name));
  if (!known) return undefined;
  const builds = shelf
    .uris()
    .flatMap((uri) => shelf.file(uri)?.definitions ?? [])
    .map(({ definition }) => definition)
    .filter((definition) => definition.kind === 'build' && shelf.find('build', definition.name.text) === definition)
    .map((definition) => definition.name.text);
  return builds.flatMap((build) => effectOf(workshop, build, name) ?? []);
}

function effectOf(workshop: Workshop, build: string, wanted: string | undefined): BuildEffect | undefined {
  const recipe = workshop.build(build)?.recipe?.name;
  const ancestor = recipe === undefined ? undefined : workshop.lastBuiltAncestor(recipe);
  if (recipe === undefined || ancestor === undefined) return undefined;
  const { recipes, model } = workshop.lineage(recipe);
  if (wanted !== undefined && ![build, recipe, model?.name.text].includes(wanted)) return undefined;
  // An instrument built like its ancestor is one more replicate, and shows no effect.
  if (workshop.replicates(recipe) === workshop.replicates(ancestor)) return undefined;
  const [a, b] = [sideOf(workshop, ancestor), sideOf(workshop, build)];
  const evidence = a && b && evidenceTable(workshop, a, b, predictions(workshop, build, ancestor));
  if (!evidence) return undefined;
  const names = recipes.map((one) => one.name.text);
  const between = names.slice(names.indexOf(ancestor) + 1);
  return { build, recipe, ancestor, changes: between.flatMap((one) => countedIn(workshop, one)), ...evidence };
}

function countedIn(workshop: Workshop, recipe: string): readonly string[] {
  return workshop
    .count(recipe)
    .variables.filter(({ verdict }) => isCounted(verdict))
    .map(({ variable }) => variable.label);
}

/** Computed from what was made: this build less the mean of those it is held against. */
function predictions(workshop: Workshop, build: string, ancestor: string): ReadonlyMap<string, string> {
  const own = workshop.build(build);
  const others = workshop.replicates(ancestor).map(({ values }) => workshop.evaluateInFull(values));
  const evaluation = own && workshop.evaluateInFull(own.values);
  const predicted = new Map<string, string>();
  for (const path of new Set(own?.readings.flatMap(({ values }) => [...values.keys()]))) {
    const quantity = workshop.derivedAt(path);
    const here = evaluation?.number(path);
    const there = others.flatMap((other) => other.number(path) ?? []);
    if (!quantity || here === undefined || there.length === 0) continue;
    const by = here - there.reduce((sum, si) => sum + si, 0) / there.length;
    predicted.set(path, writeSigned(by, quantity.dimension, quantity.unit));
  }
  return predicted;
}
