/** Solves tops, and remembers meshes so that a change of size starts from the assembled plan. */
import { adjointsOf, type Adjoints } from '../fit/adjoints.js';
import { describe } from './describe.js';
import { discreteTop } from './discrete.js';
import { factorTop, Workspace, type FactoredTop } from './factored-top.js';
import { isLoose, solveFully } from './full-solve.js';
import { layoutOf, meshedThickness, withoutRepeats } from '../mesh/mesh-lines.js';
import { meshTop, type MeshResult, type TopMesh } from '../mesh/mesh.js';
import type { TopModel, TopProblem } from '../model.js';
import { HOLE_SPACING } from '../mesh/planar-graph.js';
import { shortEndsOf } from '../mesh/short-ends.js';
import { plateElement } from '../element/plate-element.js';
import { signedArea } from '../mesh/polygon.js';
import { solveQuickly } from './quick-solve.js';
import { shiftFor } from './rigid-motions.js';
import type { SolvedState, TopResult, TopSolution } from '../solution.js';
import { unknownsOf, type Support, type Unknowns } from './degrees-of-freedom.js';
import { validatePlan, validateSizes } from '../validate.js';

export interface SolveOptions {
  /** Elastic modes wanted; absent: 6. */
  readonly modes?: number;
  /** About how many nodes the mesh gets; absent: 900. */
  readonly nodes?: number;
  /** Asked between steps; true gives up. */
  readonly shouldStop?: () => boolean;
}

const NODES = 900;
const MESHES_KEPT = 12;
/** What the close division at the end of a brace near the outline takes, from counts over the tests' tops. */
const NODES_PER_SHORT_END = 20;

interface Plan {
  readonly result: MeshResult;
  readonly supports: Map<string, Unknowns>;
}

/** The last full solution, whose factor is still in the workspace. */
interface Base {
  readonly key: string;
  readonly state: SolvedState;
  readonly factored: FactoredTop;
}

export class TopSolver {
  private readonly plans = new Map<string, Plan>();
  private readonly element = plateElement();
  private workspace = new Workspace();
  private base: Base | undefined;
  private checked: { readonly key: string; readonly problems: readonly TopProblem[] } | undefined;

  /** Modes and, with a load, the static case. Bad input gives problems, never an exception. The same model always gives the same answer. */
  solve(model: TopModel, options: SolveOptions = {}): TopResult {
    return this.answer(model, options, false);
  }

  /**
   * The same, quickly, when only sizes or moduli differ a little from the last model that was solved in full: frequencies and
   * rotation then agree with `solve` to about one part in ten thousand. Larger changes, and changes of plan, are solved in full.
   */
  resolve(model: TopModel, options: SolveOptions = {}): TopResult {
    return this.answer(model, options, true);
  }

  /**
   * What makes the slopes of a mode's effective mass and area, and of dip and belly, cheap. Only for the solution that
   * came last from `solve`, whose factor is still there; undefined for any other, and for a plate that nothing holds.
   */
  adjoints({ state }: TopSolution, mode: number): Adjoints | undefined {
    if (this.base?.state !== state || !state.vectors[mode]) return undefined;
    return adjointsOf(state, this.base.factored, mode);
  }

  /** Forgets everything it holds. */
  clear(): void {
    this.plans.clear();
    this.workspace = new Workspace();
    this.base = undefined;
  }

  private answer(model: TopModel, options: SolveOptions, quickly: boolean): TopResult {
    const { modes = 6, nodes = NODES, shouldStop = () => false } = options;
    const key = planKey(model, nodes);
    const problems = [...this.planProblems(key, model), ...validateSizes(model)];
    const stopped: TopResult = { ok: false, stopped: true, problems };
    const failed = (message: string): TopResult => ({
      ok: false,
      stopped: false,
      problems: [...problems, { severity: 'error', path: 'outline', message }],
    });
    if (problems.some(({ severity }) => severity === 'error')) return { ok: false, stopped: false, problems };
    const support = supportOf(model);
    const whole = `${key} ${JSON.stringify([support, modes, model.load?.patch, model.load === undefined])}`;
    if (quickly && this.base?.key === whole) {
      const state = solveQuickly(model, this.base.state, this.base.factored, this.element);
      const solution = state && describe(state);
      if (solution && allFinite(solution)) return { ok: true, solution, problems };
    }
    const plan = this.planOf(key, model, nodes);
    if ('failure' in plan.result) return failed(plan.result.failure);
    if (shouldStop()) return stopped;
    const { mesh } = plan.result;
    const unknowns = unknownsIn(plan, mesh, support);
    this.base = undefined;
    const shift = isLoose(model) ? shiftFor(model) : 0;
    const factored = factorTop(discreteTop(model, mesh), unknowns, this.element, this.workspace, shift);
    if (typeof factored === 'string') return failed(factored);
    if (shouldStop()) return stopped;
    const state = solveFully(model, factored, modes, shouldStop);
    if (state === 'stopped') return stopped;
    if (state === 'unconverged') return failed('The modes could not be found: check the moduli and sizes.');
    const solution = describe(state);
    if (!allFinite(solution)) return failed('The numbers given lead to no finite answer: check the moduli and sizes.');
    if (!isLoose(model)) this.base = { key: whole, state, factored };
    return { ok: true, solution, problems };
  }

  /** What is wrong with where things lie; looked at once per plan. */
  private planProblems(key: string, model: TopModel): readonly TopProblem[] {
    if (this.checked?.key !== key) this.checked = { key, problems: validatePlan(model) };
    return this.checked.problems;
  }

  private planOf(key: string, model: TopModel, nodes: number): Plan {
    let plan = this.plans.get(key);
    if (plan) this.plans.delete(key);
    else plan = { result: meshTop(model, spacingFor(model, nodes)), supports: new Map() };
    this.plans.set(key, plan);
    if (this.plans.size > MESHES_KEPT) this.plans.delete(this.plans.keys().next().value!);
    return plan;
  }
}

function allFinite({ modes, statics }: TopSolution): boolean {
  return (
    modes.every(({ frequency }) => Number.isFinite(frequency)) &&
    (!statics || Number.isFinite(statics.dip + statics.belly + statics.rotation))
  );
}

function unknownsIn(plan: Plan, mesh: TopMesh, support: Support): Unknowns {
  const key = `${support.edge} ${support.inPlaneHeld} ${support.inPlane}`;
  let unknowns = plan.supports.get(key);
  if (!unknowns) plan.supports.set(key, (unknowns = unknownsOf(mesh, support)));
  return unknowns;
}

function supportOf({ edge, plate, braces, patches, rings, film }: TopModel): Support {
  return {
    edge: edge.kind,
    inPlaneHeld: edge.kind === 'clamped' || (edge.kind !== 'free' && edge.inPlane === 'held'),
    inPlane:
      plate.dome !== undefined ||
      [braces, patches, rings].some((glued) => glued !== undefined && glued.length > 0) ||
      Boolean(film?.stiffness),
  };
}

/** Everything that the mesh depends on, and nothing else. */
function planKey(model: TopModel, nodes: number): string {
  return JSON.stringify([
    nodes,
    model.outline,
    model.holes,
    model.braces?.map(({ axis }) => axis),
    model.rests,
    model.patches?.map(({ outline, thickness }) => [outline, meshedThickness(thickness)]),
  ]);
}

/** m: the lines of the plan need nodes of their own, which leaves fewer for the open plate. */
function spacingFor(model: TopModel, nodes: number): number {
  const layout = layoutOf(model);
  const area = layout.holes.reduce((sum, hole) => sum - signedArea(hole.points), signedArea(layout.outline.points));
  let lines = layout.outline.length;
  for (const hole of layout.holes) lines += hole.length / HOLE_SPACING;
  for (const { points } of layout.ribs) {
    for (let i = 1; i < points.length; i++) {
      lines += 1.2 * Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
    }
  }
  for (const { patch } of layout.patches) {
    const outline = withoutRepeats(model.patches![patch]!.outline);
    for (let i = 0; i < outline.length; i++) {
      const [a, b] = [outline[i]!, outline[(i + 1) % outline.length]!];
      lines += Math.hypot(b[0] - a[0], b[1] - a[1]);
    }
  }
  // nodes = area / h² + lines / (2 h) + those of the short ends, but never most of them for these
  const open = Math.max(nodes / 2, nodes - NODES_PER_SHORT_END * shortEndsOf(layout).length);
  return (lines / 2 + Math.sqrt((lines * lines) / 4 + 4 * open * area)) / (2 * open);
}
