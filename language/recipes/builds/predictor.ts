/** What the engine computes for readings and for steps of the design, with how far it may be off. */
import { uncertaintyOfStep } from '../evaluation/step-uncertainty.js';
import type { Held } from '../instrument/instrument.js';
import type { Workshop } from '../workshop.js';
import type { Design, DesignVariable } from './design-matrix.js';
import { counterpartOf, Predictions } from './paired-prediction.js';
import type { ReadValue, Response } from './responses.js';

/** SI; `pending` while the solver is at it; undefined where it cannot be computed. */
export type Predicted = number | 'pending' | undefined;

export interface ComputedStep {
  /** Change of ln reading, and its standard uncertainty. */
  readonly amount: number;
  readonly error: number;
}

/** Mechanics may be wrong by a fifth of an effect until its model error is known quantity by quantity … */
const MODEL_ERROR = 0.2;
/** … and may leave out a fifth of a per cent altogether. */
const LEFT_OUT = 0.002;

export class Predictor {
  private readonly predictions: Predictions;
  private readonly steps = new Map<string, ReadonlyMap<string, Held>>();
  private readonly known = new Map<DesignVariable, boolean>();

  constructor(
    private readonly workshop: Workshop,
    private readonly design: Design,
  ) {
    this.predictions = new Predictions(workshop);
  }

  /** For the very instrument a value was read on. */
  of({ path }: Response, { row, reading }: ReadValue): Predicted {
    const counterpart = counterpartOf(this.workshop, path, reading);
    return counterpart && this.predictions.number(this.design.builds[row]!.values, counterpart);
  }

  /** For the steps of these variables together, from the reference. */
  effect({ path, reading }: Response, variables: readonly DesignVariable[]): ComputedStep | 'pending' | undefined {
    const counterpart = counterpartOf(this.workshop, path, reading);
    const reference = this.design.builds[this.design.reference];
    if (!counterpart || !reference) return undefined;
    const [before, after] = [reference.values, this.after(variables)];
    const [a, b] = [this.predictions.number(before, counterpart), this.predictions.number(after, counterpart)];
    if (a === 'pending' || b === 'pending') return 'pending';
    if (a === undefined || b === undefined) return undefined;
    const amount = Math.log(b / a);
    const inputs = uncertaintyOfStep(
      counterpart.quantity,
      this.predictions.evaluation(before, counterpart),
      this.predictions.evaluation(after, counterpart),
    );
    return { amount, error: Math.hypot(MODEL_ERROR * amount, LEFT_OUT, inputs / a) };
  }

  /** Whether the engine has heard of what this variable changes: it has of a brace, not of a glue. */
  knows(variable: DesignVariable): boolean {
    const known = this.known.get(variable) ?? variable.paths.every((path) => this.isOfInstrument(path));
    this.known.set(variable, known);
    return known;
  }

  private isOfInstrument(path: string): boolean {
    const { catalogue } = this.workshop;
    return catalogue.property(path, 'recipe') !== undefined || catalogue.classOfPart(path) !== undefined;
  }

  /** The reference with the values of the builds the steps lead to. */
  private after(variables: readonly DesignVariable[]): ReadonlyMap<string, Held> {
    const { builds, reference } = this.design;
    const key = variables.map((each) => this.design.variables.indexOf(each)).join();
    const known = this.steps.get(key);
    if (known) return known;
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
    this.steps.set(key, changed);
    return changed;
  }
}
