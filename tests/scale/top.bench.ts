/** How long the top solver takes, warmed up: medians and 95th percentiles of one run, ms. */
import {
  changed,
  sensitivities,
  TopSolver,
  type TopModel,
  type TopSolution,
} from '../../language/mechanics/plate/index.js';
import { guitarCases } from '../published/plate/reference-tops.js';

export interface Timing {
  readonly name: string;
  /** ms */
  readonly median: number;
  readonly p95: number;
}

const RUNS = 40;
const WARM_UP = 15;

/** A braced top of the size of an OM: six modes and the static case, at the default mesh. */
export function benchTop(): Timing[] {
  const model = guitarCases.e1_guitar_hinged_braced!.model;
  const solver = new TopSolver();
  const plate = (k: number): TopModel =>
    changed(model, { part: 'plate', quantity: 'thickness' }, 1e-4 * (1 + k * 1e-3));
  const brace = (k: number): TopModel =>
    changed(model, { part: 'brace', index: 0, quantity: 'height' }, 1e-4 * (1 + k * 1e-3));
  const solution = solved(solver, model);
  return [
    timed('full solve, mesh included', (k) => solved(solver, moved(model, k))),
    timed('full solve, mesh known', (k) => solved(solver, plate(k))),
    timedAfter(solver, model, 'one plate thickness changed', plate),
    timedAfter(solver, model, 'one brace height changed', brace),
    timed('sensitivities to every dimension', () => sensitivities(solution)),
  ];
}

/** The soundhole a few thousandths of a millimetre further on: another plan, so another mesh. */
function moved(model: TopModel, k: number): TopModel {
  return { ...model, holes: [{ centre: [0.335 + 1e-6 * (k + 1), 0], diameter: 0.1 }] };
}

function timedAfter(solver: TopSolver, model: TopModel, name: string, other: (k: number) => TopModel): Timing {
  solved(solver, model);
  return timed(name, (k) => {
    if (!solver.resolve(other(k)).ok) throw new Error(name);
  });
}

function solved(solver: TopSolver, model: TopModel): TopSolution {
  const result = solver.solve(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.solution;
}

function timed(name: string, work: (k: number) => unknown): Timing {
  const times: number[] = [];
  for (let k = 0; k < WARM_UP + RUNS; k++) {
    const start = taken();
    work(k);
    if (k >= WARM_UP) times.push(taken() - start);
  }
  times.sort((a, b) => a - b);
  return { name, median: times[RUNS >> 1]!, p95: times[Math.floor(0.95 * RUNS)]! };
}

/** ms of the processor's time this program was given: a busy machine adds little to it. */
function taken(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
