/** Everything that is wrong with a model, as the solver finds it in two steps. */
import type { TopModel, TopProblem } from '../../../language/mechanics/plate/index.js';
import { validatePlan, validateSizes } from '../../../language/mechanics/plate/validate.js';

export function validateTop(model: TopModel): readonly TopProblem[] {
  return [...validatePlan(model), ...validateSizes(model)];
}
