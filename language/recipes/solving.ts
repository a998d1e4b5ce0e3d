/** One plate task solved: modes, statics, and how they move with each number of the recipe. */
import {
  sensitivities,
  type TopMode,
  type TopModel,
  type TopSolution,
  type TopSolver,
} from '../mechanics/top/index.js';
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
  const slopes: Record<SlopedFigure, Record<string, number>> = { frequency: {}, rotation: {} };
  // Two parameters of one path (the wood of several braces) add up.
  const add = (path: string, frequency: number, rotation: number) => {
    slopes.frequency[path] = (slopes.frequency[path] ?? 0) + frequency;
    slopes.rotation[path] = (slopes.rotation[path] ?? 0) + rotation;
  };
  const perturbed = parameters.flatMap(({ path, parameter }) =>
    parameter.part === 'taper' ? [] : [{ path, parameter }],
  );
  sensitivities(
    solution,
    perturbed.map(({ parameter }) => parameter),
  ).forEach(({ frequencies, rotation }, i) => {
    add(perturbed[i]!.path, frequencies[figures.described.main] ?? 0, rotation ?? 0);
  });
  for (const { path, parameter } of parameters) {
    if (parameter.part !== 'taper') continue;
    if (shouldStop()) return undefined;
    const moved = solver.solve(thicker(model, parameter.quantity, TAPER_STEP), { shouldStop });
    if (!moved.ok) continue;
    const there = figuresOf(moved.solution);
    add(path, (there.frequency - figures.frequency) / TAPER_STEP, (there.rotation - figures.rotation) / TAPER_STEP);
  }
  return { ok: true, ...figures.described, slopes };
}

/** m: small beside a plate, large beside what the solver leaves undecided. */
const TAPER_STEP = 2e-5;

function thicker(model: TopModel, quantity: 'centre' | 'edge', by: number): TopModel {
  const { plate } = model;
  const map = plate.thickness;
  if (typeof map === 'number' || map.kind !== 'edge-taper') return model;
  return { ...model, plate: { ...plate, thickness: { ...map, [quantity]: map[quantity] + by } } };
}

interface Figures extends Record<SlopedFigure, number> {
  readonly described: Omit<PlateModes, 'ok' | 'slopes'>;
}

function figuresOf(solution: TopSolution): Figures {
  const modes = solution.modes.map(modeFigures);
  const main = mainOf(solution);
  const { frequency = 0 } = modes[main] ?? {};
  const { statics, mesh } = solution;
  return {
    frequency,
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
