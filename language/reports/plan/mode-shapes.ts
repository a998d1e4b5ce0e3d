/**
 * The first modes of a braced plate as plain data for drawing: how each moves, on a grid, and in which areas it goes which
 * way. They come from the same solution as the resonances, so nothing is solved twice.
 */
import { MechanicsError } from '../../mechanics/error.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { ModeFigures, PlateAnalysis, PlateTask } from '../../recipes/evaluation/analyst.js';
import { plateTask } from '../../recipes/derived/plate-task.js';
import { sideOf } from '../../recipes/instrument/sides.js';
import type { Desk } from '../../checks/desk.js';
import type { Grid } from '../../mechanics/plate/index.js';
import { ModeField } from './mode-field.js';
import type { MovingArea } from './moving-areas.js';
import { GatheringAsk, NotKnown } from './plain-ask.js';

export interface ModeShapes {
  readonly name: string;
  readonly plate: 'top' | 'back';
  /** `waiting`: being worked out; ask again after the next news of a change. `unknown`: see `missing` and `trouble`. */
  readonly state: 'known' | 'waiting' | 'unknown';
  /** What would have to be known. */
  readonly missing: readonly string[];
  /** Why it cannot be worked out although nothing is missing. */
  readonly trouble?: string;
  /** How the model holds the edge: free to turn, or as stiffly as the recipe says the rim does. */
  readonly edge: 'hinged' | 'rim';
  /** Points in rows across the plate, in mm as in the plan: `(x0 + row × step, y0 + column × step)`. */
  readonly grid: Grid;
  readonly modes: readonly DrawnMode[];
}

export interface DrawnMode {
  /** Written out: `185 Hz`. */
  readonly frequency: string;
  /** The same as a number, for reckoning. */
  readonly hertz: number;
  /** The one that moves most air. */
  readonly main: boolean;
  /** Air it moves when driven as hard, against the one that moves most: `100 %`. */
  readonly air: string;
  /** Movement at each point of the grid, row by row, in per mille of the largest, which is up; 0 off the plate. */
  readonly movement: readonly number[];
  /** Areas that move one way, the largest first. */
  readonly areas: readonly MovingArea[];
}

/** Undefined when there is no model, recipe or build of this name. */
export function modeShapes(desk: Desk, name: string, plate: 'top' | 'back'): ModeShapes | undefined {
  const side = sideOf(desk.workshop, name);
  if (!side) return undefined;
  const { wording } = desk.workshop;
  const nothing = {
    name,
    plate,
    missing: [],
    edge: 'hinged' as const,
    grid: { x0: 0, y0: 0, step: 1, rows: 0, columns: 0 },
    modes: [],
  };
  const ask = new GatheringAsk(side.evaluation);
  try {
    const task = plateTask(ask, plate);
    if (ask.absent.size > 0) return { ...nothing, state: 'unknown', missing: told(ask, ask.absent) };
    const analysis = side.evaluation.analyst.analysis(task);
    if (!analysis) return { ...nothing, state: 'waiting' };
    if (!analysis.ok) return { ...nothing, state: 'unknown', trouble: wording.told(troubleOf(analysis)) };
    return { ...nothing, state: 'known', ...drawn(task, analysis) };
  } catch (error) {
    const missing = [...ask.absent, ...(error instanceof NotKnown ? error.paths : [])];
    if (missing.length > 0) return { ...nothing, state: 'unknown', missing: told(ask, missing) };
    if (error instanceof MechanicsError) return { ...nothing, state: 'unknown', trouble: wording.told(error.message) };
    throw error;
  }
}

/** A wood that is not named at all would be named, rather than each of its constants. */
function told(ask: GatheringAsk, paths: Iterable<string>): readonly string[] {
  const named = [...paths].map((path) => {
    const wood = /^.*\.wood(?=\.)/.exec(path)?.[0];
    return wood !== undefined && ask.value(wood) === undefined ? wood : path;
  });
  return [...new Set(named)];
}

/** Those a maker knows by their look; above them the model says little. */
const MOST_MODES = 6;

function drawn(
  { model }: PlateTask,
  { modes, main, drawing }: Extract<PlateAnalysis, { ok: true }>,
): Pick<ModeShapes, 'edge' | 'grid' | 'modes'> {
  const field = new ModeField(model.outline, drawing);
  return {
    edge: model.edge.kind === 'elastic' ? 'rim' : 'hinged',
    grid: field.grid,
    modes: modes.slice(0, MOST_MODES).map((mode, i) => ({
      frequency: writeQuantity(mode.frequency, DIMENSION.frequency, { unit: 'Hz', decimals: 0 }),
      hertz: mode.frequency,
      air: `${Math.round((100 * airMoved(mode)) / airMoved(modes[main]!))} %`,
      main: i === main,
      ...field.of(i),
    })),
  };
}

/** Of equal energy, per second; up to a factor that all modes of the plate have in common. */
function airMoved({ effectiveArea, effectiveMass, frequency }: ModeFigures): number {
  return effectiveArea / Math.sqrt(effectiveMass) / frequency;
}

function troubleOf({ problems }: Extract<PlateAnalysis, { ok: false }>): string {
  return problems.find(({ severity }) => severity === 'error')?.message ?? '';
}
