/** Solves tops, and remembers meshes so that a change of size starts from the assembled plan. */
import { assemble, multiplyMass } from './assembly.js';
import { BLOCK, columnOf, interleave } from './blocks.js';
import { lowestModes, type Eigenpairs } from './blockLanczos.js';
import { discreteTop, type DiscreteTop } from './discrete.js';
import { layoutOf, meshedThickness, withoutRepeats } from './layout.js';
import { loadCase } from './loads.js';
import { meshTop, type MeshResult, type TopMesh } from './mesh.js';
import type { TopModel } from './model.js';
import { plateElement } from './plateElement.js';
import { signedArea } from './polygon.js';
import { rigidMotions, shiftFor } from './rigidMotions.js';
import type { TopResult, TopSolution } from './solution.js';
import { factorise, solveFactored } from './sparseCholesky.js';
import { startingShapes } from './startingShapes.js';
import { describe } from './describe.js';
import { unknownsOf, type Support, type Unknowns } from './unknowns.js';
import { validateTop } from './validate.js';

export interface SolveOptions {
  /** Elastic modes wanted; absent: 6. */
  readonly modes?: number;
  /** About how many nodes the mesh gets; absent: 560. */
  readonly nodes?: number;
  /** Asked between steps; true gives up. */
  readonly shouldStop?: () => boolean;
}

const NODES = 560;
const RESIDUAL = 1e-5;
const MESHES_KEPT = 12;
/** A pivot this small beside its diagonal entry means that something is not held. */
const LEAST_PIVOT = 1e-11;

interface Plan {
  readonly result: MeshResult;
  readonly supports: Map<string, Unknowns>;
}

export class TopSolver {
  private readonly plans = new Map<string, Plan>();
  private readonly element = plateElement();
  private panels = new Float64Array(0);
  private stack = new Float64Array(0);

  /** Modes and, with a load, the static case. Bad input gives problems, never an exception. */
  solve(model: TopModel, options: SolveOptions = {}): TopResult {
    const problems = validateTop(model);
    const failed = (message: string, path = 'outline'): TopResult => ({
      ok: false,
      stopped: false,
      problems: [...problems, { severity: 'error', path, message }],
    });
    if (problems.some(({ severity }) => severity === 'error')) return { ok: false, stopped: false, problems };
    const shouldStop = options.shouldStop ?? (() => false);
    const plan = this.planOf(model, options.nodes ?? NODES);
    if ('failure' in plan.result) return failed(plan.result.failure);
    if (shouldStop()) return { ok: false, stopped: true, problems };
    const { mesh } = plan.result;
    const unknowns = unknownsIn(plan, mesh, supportOf(model));
    const top = discreteTop(model, mesh);
    const outcome = this.compute(model, top, unknowns, options.modes ?? 6, shouldStop);
    if (outcome === 'stopped') return { ok: false, stopped: true, problems };
    if (typeof outcome === 'string') return failed(outcome);
    if (!isFinite(outcome)) return failed('The numbers given lead to no finite answer: check the moduli and sizes.');
    return { ok: true, solution: outcome, problems };
  }

  /** Forgets all meshes. */
  clear(): void {
    this.plans.clear();
    this.panels = new Float64Array(0);
    this.stack = new Float64Array(0);
  }

  private planOf(model: TopModel, nodes: number): Plan {
    const key = planKey(model, nodes);
    let plan = this.plans.get(key);
    if (plan) this.plans.delete(key);
    else plan = { result: meshTop(model, spacingFor(model, nodes)), supports: new Map() };
    this.plans.set(key, plan);
    if (this.plans.size > MESHES_KEPT) this.plans.delete(this.plans.keys().next().value!);
    return plan;
  }

  private compute(
    model: TopModel,
    top: DiscreteTop,
    unknowns: Unknowns,
    wanted: number,
    shouldStop: () => boolean,
  ): TopSolution | string {
    const { pattern } = unknowns;
    if (this.panels.length < pattern.panelSize) this.panels = new Float64Array(pattern.panelSize);
    if (this.stack.length < pattern.stackSize) this.stack = new Float64Array(pattern.stackSize);
    const { panels, stack } = this;
    const size = pattern.unknowns;
    const nodes = top.x.length;
    const mass = new Float64Array(3 * unknowns.graph.list.length);
    const diagonal = new Float64Array(size);
    const free = model.edge.kind === 'free' && !model.rests?.length;
    const shift = free ? shiftFor(model) : 0;
    if (assemble(top, unknowns, this.element, shift, panels, mass, diagonal) >= 0) {
      return 'A thickness has moved the edge of a bridge or bridge plate across another line.';
    }
    if (shouldStop()) return 'stopped';
    for (let i = 0; i < size; i++) diagonal[i]! *= LEAST_PIVOT;
    if (factorise(pattern, panels, stack, diagonal) >= 0) {
      return 'Something in the plan is not held by anything, or a stiffness is out of all proportion to the others.';
    }
    if (shouldStop()) return 'stopped';

    const scratch = new Float64Array(BLOCK * pattern.height.reduce((a, b) => Math.max(a, b), 0));
    const solve = (block: Float64Array): void => solveFactored(pattern, panels, block, scratch);
    const full = new Float64Array(5 * BLOCK * nodes);
    const product = new Float64Array(5 * BLOCK * nodes);
    const multiply = (x: Float64Array, y: Float64Array): void => {
      toNodes(unknowns, x, full);
      multiplyMass(unknowns, mass, full, product);
      y.fill(0);
      fromNodes(unknowns, product, y);
    };
    const locked = free ? rigidMotions(top, unknowns, multiply) : [];
    const start = startingShapes(top, unknowns);
    let modes: Eigenpairs | undefined;
    if (wanted > 0) {
      modes = lowestModes({ size, solve, multiply, locked }, start, wanted, RESIDUAL, 10 + 2 * wanted, shouldStop);
      if (!modes) return shouldStop() ? 'stopped' : 'The modes could not be found: check the moduli and sizes.';
    }
    const statics = model.load && !free ? this.deflect(model, top, unknowns, solve) : undefined;
    return describe({
      model,
      top,
      unknowns,
      vectors: modes?.vectors ?? [],
      squares: Array.from(modes?.values ?? [], (value) => value - shift),
      displacement: statics?.[0],
      adjoint: statics?.[1],
    });
  }

  /** Displacement under the load, and under the forces that measure the rotation. */
  private deflect(
    model: TopModel,
    top: DiscreteTop,
    unknowns: Unknowns,
    solve: (block: Float64Array) => void,
  ): readonly [Float64Array, Float64Array] {
    const { forces, measure } = loadCase(model, top);
    const block = new Float64Array(BLOCK * unknowns.pattern.unknowns);
    fromNodes(unknowns, interleave([forces, measure], forces.length), block);
    solve(block);
    return [columnOf(block, 0), columnOf(block, 1)];
  }
}

/** Copies a block in the order of elimination to five unknowns per node (0 where held). */
export function toNodes({ slot, pattern }: Unknowns, x: Float64Array, full: Float64Array): void {
  const { first } = pattern;
  for (let node = 0; node < first.length; node++) {
    for (let d = 5 * node; d < 5 * node + 5; d++) {
      const s = slot[d]!;
      const from = BLOCK * (first[node]! + s);
      for (let c = 0; c < BLOCK; c++) full[BLOCK * d + c] = s < 0 ? 0 : x[from + c]!;
    }
  }
}

/** Copies a block of five unknowns per node into the order of elimination; the braces' own rotations are left as they are. */
export function fromNodes({ slot, pattern }: Unknowns, full: Float64Array, x: Float64Array): void {
  const { first } = pattern;
  for (let node = 0; node < first.length; node++) {
    for (let d = 5 * node; d < 5 * node + 5; d++) {
      const s = slot[d]!;
      if (s < 0) continue;
      const to = BLOCK * (first[node]! + s);
      for (let c = 0; c < BLOCK; c++) x[to + c] = full[BLOCK * d + c]!;
    }
  }
}

function isFinite({ modes, statics }: TopSolution): boolean {
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

function supportOf({ edge, braces, patches }: TopModel): Support {
  return {
    edge: edge.kind,
    inPlaneHeld: edge.kind === 'clamped' || (edge.kind !== 'free' && edge.inPlane === 'held'),
    inPlane: (braces?.length ?? 0) + (patches?.length ?? 0) > 0,
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
  const layout = layoutOf(model, 0.005);
  const area = layout.holes.reduce((sum, hole) => sum - signedArea(hole.points), signedArea(layout.outline.points));
  let lines = layout.outline.length;
  for (const hole of layout.holes) lines += hole.length;
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
  // nodes = area / h² + lines / (2 h)
  return (lines / 2 + Math.sqrt((lines * lines) / 4 + 4 * nodes * area)) / (2 * nodes);
}
