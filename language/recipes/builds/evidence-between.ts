/**
 * What the builds of one instrument say against the builds of another: each reading of the second held against the first,
 * like with like, and against the scatter of all replicates along the two lines.
 */
import type { BuildRecord } from './builds.js';
import type { Side } from '../instrument/comparison.js';
import { type Evidence, evidenceOf } from './evidence.js';
import { evidenceContext } from './evidence-context.js';
import type { Workshop } from '../workshop.js';

export interface EvidenceBetween {
  /** What is held against … */
  readonly builds: readonly BuildRecord[];
  /** … and what it is held against. */
  readonly reference: readonly BuildRecord[];
  /** No counted change lies between them: they are replicates of one another, and what differs is scatter. */
  readonly alike: boolean;
  readonly found: readonly { readonly build: BuildRecord; readonly evidence: readonly Evidence[] }[];
}

/** Undefined where either side has no build. */
export function evidenceBetween(workshop: Workshop, a: Side, b: Side): EvidenceBetween | undefined {
  const [reference, builds] = [buildsOf(workshop, a), buildsOf(workshop, b)];
  if (reference.length === 0 || builds.length === 0) return undefined;
  const recipes = [recipeOf(workshop, a), recipeOf(workshop, b)] as const;
  const alike = workshop.replicates(recipes[0]) === workshop.replicates(recipes[1]);
  const context = evidenceContext(workshop, groupsAlong(workshop, recipes));
  const others = builds.filter((build) => !reference.includes(build));
  return {
    builds: others,
    reference,
    alike,
    found: others.map((build) => ({ build, evidence: evidenceOf(build, reference, context) })),
  };
}

/** A build stands for itself; a recipe for every build of it and of recipes that count no change from it. */
export function buildsOf(workshop: Workshop, { kind, name }: Side): readonly BuildRecord[] {
  if (kind === 'model') return [];
  if (kind === 'recipe') return workshop.replicates(name);
  const build = workshop.build(name);
  return build?.recipe ? [build] : [];
}

function recipeOf(workshop: Workshop, { kind, name }: Side): string {
  return kind === 'build' ? (workshop.build(name)?.recipe?.name ?? '') : name;
}

/** Groups of replicates along both lines. */
function groupsAlong(workshop: Workshop, recipes: readonly string[]): readonly (readonly BuildRecord[])[] {
  const along = recipes.flatMap((recipe) => workshop.lineage(recipe).recipes.map(({ name }) => name.text));
  return [...new Set(along.map((recipe) => workshop.replicates(recipe)))];
}
