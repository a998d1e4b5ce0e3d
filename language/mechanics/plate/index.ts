/** The plate-and-rib solver of braced tops and backs. */
export type * from './model.js';
export type { BridgeMotion, TopMode, TopResult, TopSolution, TopStatics } from './solution.js';
export { TopSolver, type SolveOptions } from './topSolver.js';
export { validateTop } from './validate.js';
export { changed, parametersOf, valueOf, type TopParameter, type WoodConstant } from './parameters.js';
export type { Adjoints } from './adjoints.js';
export { sensitivities, type Sensitivity } from './sensitivities.js';
export { fitTaps, type FitResult, type FittedConstant, type FittedWood, type Tap, type TapTest } from './fit.js';
export { fitDeflection, type DeflectionFit, type DeflectionTest } from './fitDeflection.js';
export { labelledModes, type ModeLabel } from './modeLabels.js';
export { valueAt } from './sampling.js';
export { gridWeights, onGrid, type Grid, type GridWeights } from './gridSampling.js';
