/** One task solved: of a plate its modes, statics, and how they move with each number of the recipe; of a wood its moduli. */
import {
  sensitivities,
  type TopMode,
  type TopModel,
  type TopSolution,
  type TopSolver,
} from '../../mechanics/plate/index.js';
import type {
  ModeFigures,
  OneThickness,
  PlateAnalysis,
  PlateModes,
  PlateParameter,
  PlateTask,
  SlopedFigure,
  SolverAnswer,
  SolverTask,
} from './analyst.js';
import { fitWood } from './fitting.js';

/** Undefined: stopped. */
export function solveTask(
  solver: TopSolver,
  task: SolverTask,
  shouldStop: () => boolean = () => false,
): SolverAnswer | undefined {
  return 'test' in task ? fitWood(solver, task, shouldStop) : solvePlate(solver, task, shouldStop);
}

function solvePlate(
  solver: TopSolver,
  { model, parameters }: PlateTask,
  shouldStop: () => boolean,
): PlateAnalysis | undefined {
  const result = solver.solve(model, { shouldStop });
  if (!result.ok) return result.stopped ? undefined : { ok: false, problems: result.problems };
  const { solution, problems: warnings } = result;
  const figures = figuresOf(solution);
  const slopes = Object.fromEntries(SLOPED.map((figure) => [figure, new Map()])) as Slopes;
  // Two parameters of one path (the wood of several braces) add up.
  const add = (path: string, change: (figure: SlopedFigure) => number) => {
    for (const figure of SLOPED) slopes[figure].set(path, (slopes[figure].get(path) ?? 0) + change(figure));
  };
  const frequencySlopes = figures.described.modes.map(() => new Map<string, number>());
  const addFrequencies = (path: string, change: (mode: number) => number) =>
    frequencySlopes.forEach((of, mode) => of.set(path, (of.get(path) ?? 0) + change(mode)));
  const perturbed = parameters.flatMap(({ path, parameter, factor = 1 }) =>
    isOneThickness(parameter) ? [] : [{ path, parameter, factor }],
  );
  const { main } = figures.described;
  const adjoints = solver.adjoints(solution, main);
  sensitivities(
    solution,
    perturbed.map(({ parameter }) => parameter),
    adjoints,
  ).forEach((sensitivity, i) => {
    const { path, factor } = perturbed[i]!;
    const known: Partial<Record<SlopedFigure, number>> = {
      ...sensitivity,
      frequency: sensitivity.frequencies[main],
      // The area is given by its size, whichever way the plate goes.
      effectiveArea: (sensitivity.effectiveArea ?? 0) * figures.areaSign,
    };
    add(path, (figure) => factor * (known[figure] ?? 0));
    addFrequencies(path, (mode) => factor * (sensitivity.frequencies[mode] ?? 0));
  });
  for (const { path, parameter, factor = 1 } of parameters) {
    if (!isOneThickness(parameter)) continue;
    if (shouldStop()) return undefined;
    const moved = solver.solve(thicker(model, parameter, THICKNESS_STEP), { shouldStop });
    if (!moved.ok) continue;
    const there = figuresOf(moved.solution);
    add(path, (figure) => (factor * (there[figure] - figures[figure])) / THICKNESS_STEP);
    const [before, after] = [figures.described.modes, there.described.modes];
    addFrequencies(path, (mode) => {
      const moved = after[mode]?.frequency ?? before[mode]!.frequency;
      return (factor * (moved - before[mode]!.frequency)) / THICKNESS_STEP;
    });
  }
  return { ok: true, ...figures.described, slopes, frequencySlopes, warnings };
}

type Slopes = Record<SlopedFigure, Map<string, number>>;

const SLOPED: readonly SlopedFigure[] = ['frequency', 'effectiveMass', 'effectiveArea', 'rotation', 'dip', 'belly'];

/** m: small beside a plate, large beside what the solver leaves undecided. */
const THICKNESS_STEP = 2e-5;

function isOneThickness(parameter: PlateParameter['parameter']): parameter is OneThickness {
  return parameter.part === 'taper' || parameter.part === 'map';
}

function thicker(model: TopModel, which: OneThickness, by: number): TopModel {
  const map = model.plate.thickness;
  if (typeof map === 'number') return model;
  if (map.kind === 'edge-taper') {
    if (which.part !== 'taper') return model;
    return withThickness(model, { ...map, [which.quantity]: map[which.quantity] + by });
  }
  if (which.part !== 'map') return model;
  const points = map.points.map((point, i) =>
    i === which.index ? { ...point, thickness: point.thickness + by } : point,
  );
  return withThickness(model, { ...map, points });
}

function withThickness(model: TopModel, thickness: TopModel['plate']['thickness']): TopModel {
  return { ...model, plate: { ...model.plate, thickness } };
}

interface Figures extends Readonly<Record<SlopedFigure, number>> {
  /** −1 where the plate as a whole moves against the bridge. */
  readonly areaSign: 1 | -1;
  readonly described: Omit<PlateModes, 'ok' | 'slopes' | 'frequencySlopes' | 'warnings'>;
}

function figuresOf(solution: TopSolution): Figures {
  const modes = solution.modes.map(modeFigures);
  const main = mainOf(solution);
  const { frequency = 0, effectiveMass = 0, effectiveArea = 0 } = modes[main] ?? {};
  const { statics, mesh } = solution;
  const { rotation = 0, dip = 0, belly = 0 } = statics ?? {};
  return {
    frequency,
    effectiveMass,
    effectiveArea,
    rotation,
    dip,
    belly,
    areaSign: areaSignOf(solution.modes[main]),
    described: {
      modes,
      main,
      statics: statics && { rotation, dip, belly },
      drawing: {
        ...mesh,
        shapes: solution.modes.map(({ shape }) => Float32Array.from(shape)),
        slopes: solution.modes.map(({ slopes: [x, y] }) => [Float32Array.from(x), Float32Array.from(y)] as const),
      },
    },
  };
}

function areaSignOf(mode: TopMode | undefined): 1 | -1 {
  if (!mode) return 1;
  const signed = mode.bridge?.effectiveArea ?? mode.volumeDisplacement * largestOf(mode);
  return signed < 0 ? -1 : 1;
}

/** The mode that pushes most air: no other can be heard as the main resonance. */
function mainOf(solution: TopSolution): number {
  const pushed = solution.modes.map((mode) => Math.abs(mode.volumeDisplacement) / (2 * Math.PI * mode.frequency));
  return pushed.indexOf(Math.max(...pushed));
}

/** As felt at the bridge; a plate without one is felt where it moves most. Shapes come with unit modal mass. */
function modeFigures(mode: TopMode): ModeFigures {
  const { frequency, bridge, volumeDisplacement: volume } = mode;
  if (bridge) {
    const { effectiveMass, effectiveArea, mobility } = bridge;
    return { frequency, effectiveMass, effectiveArea: Math.abs(effectiveArea), mobility, volume };
  }
  const largest = Math.abs(largestOf(mode));
  const effectiveMass = 1 / largest ** 2;
  return {
    frequency,
    effectiveMass,
    effectiveArea: Math.abs(volume) / largest,
    mobility: 1 / (effectiveMass * 2 * Math.PI * frequency),
    volume,
  };
}

/** Movement of the point that moves most, with its sign. */
function largestOf({ shape }: TopMode): number {
  return shape.reduce((most, movement) => (Math.abs(movement) > Math.abs(most) ? movement : most), 0);
}
