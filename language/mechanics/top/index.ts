/** The plate-and-rib solver of braced tops and backs. */
export type * from './model.js';
export type { BridgeMotion, TopMode, TopResult, TopSolution, TopStatics } from './solution.js';
export { TopSolver, type SolveOptions } from './topSolver.js';
export { validateTop } from './validate.js';
