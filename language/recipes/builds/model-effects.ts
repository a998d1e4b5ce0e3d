/** Everything the builds of a model say all together: the design, what each change did, and what to change next. */
import { sameDimension } from '../../quantities/dimension.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import type { Held } from '../instrument/instrument.js';
import { type Design, designOf, type DesignVariable } from './design-matrix.js';
import { type EstimateContext, estimatedEffects, type ResponseEffects } from './estimated-effects.js';
import { evidenceContext } from './evidence-context.js';
import { nextChange, type NextChange } from './next-change.js';
import { type Separation, separate } from './separation.js';
import type { Workshop } from '../workshop.js';

export interface ModelEffects {
  readonly design: Design;
  /** Of all variables in all builds. */
  readonly separation: Separation;
  readonly responses: readonly ResponseEffects[];
  readonly next?: NextChange;
  /**
   * What the engine computes for the step of these variables together, SI; undefined where it cannot, `pending` while the
   * solver is at it.
   */
  readonly predicted: (path: string, variables: readonly DesignVariable[]) => number | 'pending' | undefined;
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
    predicted: predictor(workshop, design),
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

/** Each step is evaluated once, whatever is asked of it. */
function predictor(workshop: Workshop, design: Design): ModelEffects['predicted'] {
  const reference = workshop.evaluateInFull(design.builds[design.reference]?.values ?? new Map<string, Held>());
  const stepped = new Map<string, Evaluation>();
  return (path, variables) => {
    const key = variables.map((each) => design.variables.indexOf(each)).join();
    const there = stepped.get(key) ?? workshop.evaluateInFull(after(design, variables));
    stepped.set(key, there);
    const [before, now] = [reference.derived(path), there.derived(path)];
    if (isPending(before) || isPending(now)) return 'pending';
    return before?.known && now?.known ? now.si - before.si : undefined;
  };
}

function isPending(derived: ReturnType<Evaluation['derived']>): boolean {
  return derived !== undefined && !derived.known && derived.pending === true;
}

/** The reference with the values of the builds the steps lead to. */
function after({ builds, reference }: Design, variables: readonly DesignVariable[]): ReadonlyMap<string, Held> {
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
  return changed;
}
