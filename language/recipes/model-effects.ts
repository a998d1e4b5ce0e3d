/** Everything the builds of a model say all together: the design, what each change did, and what to change next. */
import { sameDimension } from '../quantities/dimension.js';
import type { Held } from './instrument.js';
import { type Design, designOf, type DesignVariable } from './design-matrix.js';
import { type EstimateContext, estimatedEffects, type ResponseEffects } from './estimated-effects.js';
import { evidenceContext } from './evidence-context.js';
import { nextChange, type NextChange } from './next-change.js';
import { type Separation, separate } from './separation.js';
import type { Workshop } from './workshop.js';

export interface ModelEffects {
  readonly design: Design;
  /** Of all variables in all builds. */
  readonly separation: Separation;
  readonly responses: readonly ResponseEffects[];
  readonly next?: NextChange;
  /** What the engine computes for the step of these variables together, SI; undefined where it cannot. */
  readonly predicted: (path: string, variables: readonly DesignVariable[]) => number | undefined;
}

/** Undefined when there is no such model. */
export function modelEffects(workshop: Workshop, model: string): ModelEffects | undefined {
  const design = designOf(workshop, model);
  if (!design) return undefined;
  return {
    design,
    separation: separate(design.variables.map(({ column }) => column)),
    responses: estimatedEffects(design, contextFor(workshop, design)),
    next: nextChange(design),
    predicted: (path, variables) => predict(workshop, design, path, variables),
  };
}

function contextFor(workshop: Workshop, { builds }: Design): EstimateContext {
  const groups = [...new Set(builds.map(({ recipe }) => workshop.replicates(recipe!.name)))];
  return {
    ...evidenceContext(workshop, groups),
    isReadable: (path, { value }) => {
      const dimension = workshop.catalogue.property(path, 'build')?.dimension;
      return value.kind === 'quantity' && !!dimension && sameDimension(value.quantity.dimension, dimension);
    },
  };
}

/** The reference with the values of the builds the steps lead to, less the reference as it is. */
function predict(
  workshop: Workshop,
  { builds, reference }: Design,
  path: string,
  variables: readonly DesignVariable[],
): number | undefined {
  const { values } = builds[reference]!;
  const changed = new Map<string, Held>(values);
  for (const { paths, to } of variables) {
    const there = builds[to]!.values;
    for (const each of [...values.keys(), ...there.keys()]) {
      if (!paths.some((own) => each === own || each.startsWith(`${own}.`))) continue;
      const held = there.get(each);
      if (held) changed.set(each, held);
      else changed.delete(each);
    }
  }
  const [before, after] = [values, changed].map((each) => workshop.evaluateInFull(each).number(path));
  return before === undefined || after === undefined ? undefined : after - before;
}
