/** Modes and static case of a factored top. */
import { lowestModes, type Eigenpairs } from '../../linear-algebra/block-lanczos.js';
import { BLOCK, columnOf, interleave } from '../../linear-algebra/blocks.js';
import { fromNodes, type FactoredTop } from './factored-top.js';
import { loadCase } from './loads.js';
import type { TopModel } from '../model.js';
import { rigidMotions } from './rigid-motions.js';
import type { SolvedState } from '../solution.js';
import { startingShapes } from './starting-shapes.js';

const RESIDUAL = 1e-5;

/** Whether nothing holds the top. */
export function isLoose(model: TopModel): boolean {
  return model.edge.kind === 'free' && !model.rests?.length;
}

/** `wanted` elastic modes, and the static case when the model has a load and is held. */
export function solveFully(
  model: TopModel,
  factored: FactoredTop,
  wanted: number,
  shouldStop: () => boolean,
): SolvedState | 'stopped' | 'unconverged' {
  const { top, unknowns, shift, solve, multiply } = factored;
  const size = unknowns.pattern.unknowns;
  let modes: Eigenpairs | undefined;
  if (wanted > 0) {
    const locked = isLoose(model) ? rigidMotions(top, unknowns, multiply) : [];
    const problem = { size, solve, multiply, locked };
    modes = lowestModes(problem, startingShapes(top, unknowns), wanted, RESIDUAL, 10 + 2 * wanted, shouldStop);
    if (!modes) return shouldStop() ? 'stopped' : 'unconverged';
  }
  const statics = model.load && !isLoose(model) ? loadBlock(model, factored) : undefined;
  if (statics) solve(statics);
  return {
    model,
    top,
    unknowns,
    vectors: modes?.vectors ?? [],
    squares: Array.from(modes?.values ?? [], (value) => value - shift),
    displacement: statics && columnOf(statics, 0),
    adjoint: statics && columnOf(statics, 1),
  };
}

/** The load and the forces that measure the rotation, as the first two vectors of a block. */
export function loadBlock(model: TopModel, { top, unknowns }: Pick<FactoredTop, 'top' | 'unknowns'>): Float64Array {
  const { forces, measure } = loadCase(model, top);
  const block = new Float64Array(BLOCK * unknowns.pattern.unknowns);
  fromNodes(unknowns, interleave([forces, measure], forces.length), block);
  return block;
}
