/** The plate-and-rib solver of braced tops and backs. */
export type * from './model.js';
export type { BridgeMotion, TopMode, TopResult, TopSolution, TopStatics } from './solution.js';
export { TopSolver, type SolveOptions } from './solve/top-solver.js';
export { PLATE_LIMITS } from './limits.js';
export { changed, parametersOf, valueOf, type TopParameter, type WoodConstant } from './fit/parameters.js';
export type { Adjoints } from './fit/adjoints.js';
export { sensitivities, type Sensitivity } from './fit/sensitivities.js';
export {
  fitTaps,
  type FitResult,
  type FittedConstant,
  type FittedWood,
  type Tap,
  type TapTest,
} from './fit/tap-fit.js';
export { fitDeflection, type DeflectionFit, type DeflectionTest } from './fit/deflection-fit.js';
export { labelledModes, type ModeLabel } from './solve/mode-labels.js';
export { valueAt } from './solve/sampling.js';
export { gridWeights, onGrid, type Grid, type GridWeights } from './solve/grid-sampling.js';
export { bentOnGrid, type Bent } from './solve/bent-grid.js';
