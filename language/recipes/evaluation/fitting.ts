/** Wood fitted to taps or to a deflection by the plate solver itself. */
import { fitDeflection, fitTaps, type TopSolver } from '../../mechanics/plate/index.js';
import type { WoodFit, WoodTask } from './analyst.js';

/** Undefined: stopped. */
export function fitWood(
  solver: TopSolver,
  { test }: WoodTask,
  shouldStop: () => boolean = () => false,
): WoodFit | undefined {
  if (test.kind === 'deflection') {
    const found = fitDeflection(solver, test, shouldStop);
    if (found.ok) return { ok: true, along: { value: found.eAlong.value, spread: 0 } };
    return found.stopped ? undefined : { ok: false, problems: found.problems };
  }
  const found = fitTaps(solver, test, shouldStop);
  if (!found.ok) return found.stopped ? undefined : { ok: false, problems: found.problems };
  const { eAlong, eAcross, shearInPlane } = found.fitted;
  return { ok: true, along: eAlong, across: eAcross, twist: shearInPlane };
}
