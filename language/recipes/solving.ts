/** One plate task solved: modes, statics, and how they move with each number of the recipe. */
import type { TopMode, TopModel, TopSolution, TopSolver } from '../mechanics/top/index.js';
import type { ModeFigures, PlateAnalysis, PlateModes, PlateTask, SlopedFigure } from './analyst.js';

/** Undefined: stopped. */
export function solveTask(
  solver: TopSolver,
  { model, parameters }: PlateTask,
  shouldStop: () => boolean = () => false,
): PlateAnalysis | undefined {
  const result = solver.solve(model, { shouldStop });
  if (!result.ok) return result.stopped ? undefined : { ok: false, problems: result.problems };
  const { solution } = result;
  const figures = figuresOf(solution);
  const slopes: Record<SlopedFigure, Record<string, number>> = {
    frequency: {},
    effectiveMass: {},
    effectiveArea: {},
    rotation: {},
  };
  for (const { path, target } of parameters) {
    const value = at(model, target);
    if (value === undefined) continue;
    if (shouldStop()) return undefined;
    const step = value * 0.005;
    const moved = solver.solve(withTarget(model, target, value + step), { shouldStop });
    if (!moved.ok) continue;
    const there = figuresOf(moved.solution);
    for (const figure of Object.keys(slopes) as SlopedFigure[]) {
      // Two parameters of one path (the wood of several braces) add up.
      slopes[figure][path] = (slopes[figure][path] ?? 0) + (there[figure] - figures[figure]) / step;
    }
  }
  return { ok: true, ...figures.described, slopes };
}

interface Figures extends Record<SlopedFigure, number> {
  readonly described: Omit<PlateModes, 'ok' | 'slopes'>;
}

function figuresOf(solution: TopSolution): Figures {
  const modes = solution.modes.map(modeFigures);
  const main = mainOf(solution);
  const { frequency = 0, effectiveMass = 0, effectiveArea = 0 } = modes[main] ?? {};
  const { statics, mesh } = solution;
  return {
    frequency,
    effectiveMass,
    effectiveArea,
    rotation: statics?.rotation ?? 0,
    described: {
      modes,
      main,
      statics: statics && { rotation: statics.rotation, dip: statics.dip, belly: statics.belly },
      drawing: { ...mesh, shapes: solution.modes.map(({ shape }) => Float32Array.from(shape)) },
    },
  };
}

/** The mode that pushes most air: no other can be heard as the main resonance. */
function mainOf(solution: TopSolution): number {
  const pushed = solution.modes.map((mode) => Math.abs(mode.volumeDisplacement) / (2 * Math.PI * mode.frequency));
  return pushed.indexOf(Math.max(...pushed));
}

/** As felt at the bridge; a plate without one is felt where it moves most. Shapes come with unit modal mass. */
function modeFigures(mode: TopMode): ModeFigures {
  const { frequency, bridge } = mode;
  if (bridge) {
    const { effectiveMass, effectiveArea, mobility } = bridge;
    return { frequency, effectiveMass, effectiveArea: Math.abs(effectiveArea), mobility };
  }
  const largest = mode.shape.reduce((most, movement) => Math.max(most, Math.abs(movement)), 0);
  const effectiveMass = 1 / largest ** 2;
  return {
    frequency,
    effectiveMass,
    effectiveArea: Math.abs(mode.volumeDisplacement) / largest,
    mobility: 1 / (effectiveMass * 2 * Math.PI * frequency),
  };
}

/** The number a target names in a model: `plate.thickness`, `braces.0.height`, `patches.1.thickness`. */
export function at(model: TopModel, target: string): number | undefined {
  const found = target
    .split('.')
    .reduce<unknown>((node, word) => (node as Record<string, unknown> | undefined)?.[word], model);
  if (typeof found === 'number') return found;
  const taper = model.plate.thickness;
  if (typeof taper === 'object' && taper.kind === 'edge-taper') {
    if (target === 'plate.thickness') return taper.centre;
    if (target === 'plate.edge') return taper.edge;
  }
  return Array.isArray(found) ? Math.max(...(found as { height: number }[]).map(({ height }) => height)) : undefined;
}

/** The model with one number changed; a carved brace keeps its shape and is scaled in height. */
export function withTarget(model: TopModel, target: string, value: number): TopModel {
  const taper = model.plate.thickness;
  if (typeof taper === 'object' && taper.kind === 'edge-taper') {
    if (target === 'plate.thickness')
      return { ...model, plate: { ...model.plate, thickness: { ...taper, centre: value } } };
    if (target === 'plate.edge') return { ...model, plate: { ...model.plate, thickness: { ...taper, edge: value } } };
  }
  return replaced(model, target.split('.'), value) as TopModel;
}

function replaced(node: unknown, [word, ...rest]: readonly string[], value: number): unknown {
  if (word === undefined) {
    if (!Array.isArray(node)) return value;
    const stations = node as { at: number; height: number }[];
    const most = Math.max(...stations.map(({ height }) => height));
    return stations.map((station) => ({ ...station, height: (station.height * value) / most }));
  }
  if (Array.isArray(node))
    return node.map((item, i) => (i === Number(word) ? replaced(item, rest, value) : (item as unknown)));
  return { ...(node as object), [word]: replaced((node as Record<string, unknown>)[word], rest, value) };
}
