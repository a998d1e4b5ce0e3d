/** Everything the builds of a model say all together: the design, what each change did, and what to do next. */
import type { Workshop } from '../workshop.js';
import { type Design, designOf, type DesignVariable } from './design-matrix.js';
import { evidenceContext } from './evidence-context.js';
import { type Heard, heardOf } from './heard.js';
import { nextChange, type NextChange } from './next-change.js';
import { nextFor, type NextFor } from './next-for.js';
import { isReadable } from './odd-readings.js';
import { Predictor } from './predictor.js';
import { type EffectContext, type FittedResponse, type ResponseEffects, responseEffects, type ToldEffect } from './response-effects.js'; // prettier-ignore
import { type Response, responsesOf } from './responses.js';
import { type Separation, separate } from './separation.js';
import { canRework } from './reworkable.js';

export interface ModelEffects {
  readonly design: Design;
  /** Of all variables in all builds. */
  readonly separation: Separation;
  /** Every kind of reading, fitted or not. */
  readonly kinds: readonly Response[];
  readonly responses: readonly ResponseEffects[];
  /** What the ear said, apart from readings. */
  readonly heard: readonly Heard[];
  readonly next?: NextChange;
  /** What it takes to tell one effect; worked out when asked. */
  readonly nextFor: (outcome: FittedResponse, effect: ToldEffect) => NextFor | undefined;
}

/** Undefined when there is no such model. */
export function modelEffects(workshop: Workshop, model: string): ModelEffects | undefined {
  const design = designOf(workshop, model);
  if (!design) return undefined;
  const kinds = responsesOf(design.builds, (path, held) => isReadable(workshop, path, held));
  const reworkable = (variable: DesignVariable) => canRework(workshop, variable);
  return {
    design,
    separation: separate(design.variables.map(({ column }) => column)),
    kinds,
    responses: responseEffects(design, kinds, new Predictor(workshop, design), contextFor(workshop)),
    heard: heardOf(design),
    next: nextChange(design),
    nextFor: (outcome, effect) => nextFor(design, outcome, effect, reworkable),
  };
}

function contextFor(workshop: Workshop): EffectContext {
  const { stated, isFrequency } = evidenceContext(workshop, []);
  const { tolerances } = workshop.settings();
  return {
    stated: (path) => (isFrequency(path) ? stated : undefined),
    repeats: (path, si) => {
      const dimension = workshop.catalogue.property(path, 'build')?.dimension?.name;
      if (dimension === 'mass') return tolerances.mass / Math.sqrt(3) / si;
      // A deflection repeats to a hundredth. (common practice)
      return isFrequency(path) ? tolerances.frequency / Math.sqrt(3) / si : 0.01;
    },
  };
}
