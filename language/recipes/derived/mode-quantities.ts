/**
 * What only the solver knows: resonances of the braced top and back, how the bridge turns under the strings, and the
 * three resonances of the body in which top, back and air move together.
 */
import {
  coupledModes,
  monopoleMobility,
  type CoupledBody,
  type OscillatorName,
} from '../../mechanics/body/coupled-body.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { ModeFigures, PlateModes, SlopedFigure } from '../evaluation/analyst.js';
import type { SharedPart } from '../evaluation/shared-part.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { MechanicsError } from '../../mechanics/error.js';
import type { TopModel, TopProblem } from '../../mechanics/plate/index.js';
import { openingsOf } from './layout/openings.js';
import { COUPLED_ERROR, PLATE_ERRORS, RIM_ERROR } from './model-errors.js';
import { plateTask } from './plate-task.js';

const SOLVER =
  'plate with transverse shear (DKMQ, Katili 1993), offset shear-flexible braces; edge held in the plane, hinged or with its rim stiffness';
const COUPLED = 'O. Christensen & B. B. Vistisen, J. Acoust. Soc. Am. 68 (1980) 758; O. Christensen 1982; J. Woodhouse';
const AID = 'a design aid, not a promise of safety';

/** Two guitars meant to be alike differ by 1 to 2 % in frequency; until a shop’s replicates say better. (common practice) */
export const PRIOR_SCATTER = 0.02;

export const MODE_QUANTITIES: readonly DerivedQuantity[] = [
  ...plateQuantities('top'),
  ...plateQuantities('back'),
  staticQuantity(
    'bridge.rotation',
    'rotation',
    DIMENSION.angle,
    'deg',
    'How far the bridge turns under the pull of the strings.',
  ),
  staticQuantity(
    'bridge.dip',
    'dip',
    DIMENSION.length,
    'mm',
    'How far the top sinks in front of the bridge under the strings.',
  ),
  staticQuantity(
    'bridge.belly',
    'belly',
    DIMENSION.length,
    'mm',
    'How far the top rises behind the bridge under the strings.',
  ),
  bodyResonance('resonance.air', 'air', 'Main air resonance of the body, top and back moving with it.'),
  bodyResonance('resonance.top', 'top', 'Main top resonance of the body, air and back moving with it.'),
  bodyResonance('resonance.back', 'back', 'Main back resonance of the body, air and top moving with it.'),
];

export type PlateName = 'top' | 'back';

function plateQuantities(plate: PlateName): readonly DerivedQuantity[] {
  const main = (figure: keyof ModeFigures) => (ask: Ask) => mainMode(ask, plate)[figure];
  return [
    {
      path: `${plate}.main-resonance`,
      dimension: DIMENSION.frequency,
      unit: 'Hz',
      slow: true,
      sentence: `Resonance of the braced ${plate} by itself in which it moves most air.`,
      formula: 'the lowest frequency at which the braced plate swings by itself, its stiffness against its inertia',
      source: SOLVER,
      compute: (ask) => {
        ask.doubt(PLATE_ERRORS.frequency);
        if (ask.numberIf(`${plate}.rim-stiffness`) === undefined) ask.doubt(RIM_ERROR);
        return main('frequency')(ask);
      },
      slopes: slopesOf(plate, 'frequency'),
    },
    {
      path: `${plate}.effective-mass`,
      dimension: DIMENSION.mass,
      unit: 'g',
      slow: true,
      sentence: `Mass of the ${plate} that seems to move in its main resonance${plate === 'top' ? ', felt at the bridge' : ''}.`,
      formula: 'M = ∫ φ² dm / φ_b²',
      source: SOLVER,
      compute: main('effectiveMass'),
      slopes: slopesOf(plate, 'effectiveMass'),
    },
    {
      path: `${plate}.effective-area`,
      dimension: DIMENSION.area,
      unit: 'cm²',
      slow: true,
      sentence: `Area of a piston that would move as much air as the ${plate} does in its main resonance.`,
      formula: 'A = ∫ φ dA / φ_b',
      source: SOLVER,
      compute: main('effectiveArea'),
      slopes: slopesOf(plate, 'effectiveArea'),
    },
    {
      path: `${plate}.effective-stiffness`,
      dimension: DIMENSION.stiffness,
      unit: 'kN/m',
      slow: true,
      sentence: `Stiffness the ${plate} seems to have in its main resonance.`,
      formula: 'K = M·(2πf)²',
      source: SOLVER,
      compute: (ask) =>
        ask.number(`${plate}.effective-mass`) * (2 * Math.PI * ask.number(`${plate}.main-resonance`)) ** 2,
    },
    {
      path: `${plate}.mobility`,
      dimension: DIMENSION.mobility,
      unit: 's/kg',
      slow: true,
      sentence: `1/√(K·M): how readily the ${plate} moves in its main resonance. Quote the method with it.`,
      formula: '1/√(K·M)',
      source: SOLVER,
      compute: (ask) =>
        monopoleMobility(ask.number(`${plate}.effective-mass`), ask.number(`${plate}.effective-stiffness`)),
    },
  ];
}

function staticQuantity(
  path: string,
  figure: 'rotation' | 'dip' | 'belly',
  dimension: DerivedQuantity['dimension'],
  unit: string,
  sentence: string,
): DerivedQuantity {
  return {
    path,
    dimension,
    unit,
    slow: true,
    // One number for how the top bears the strings is enough to count by; dip and belly go with it.
    voicing: figure === 'rotation',
    sentence,
    formula: 'how the braced plate bends under the couple and the shear of the strings at the bridge',
    source: `${SOLVER}; ${AID}`,
    compute: (ask) => {
      ask.doubt(figure === 'rotation' ? PLATE_ERRORS.rotation : PLATE_ERRORS.sag);
      const { statics } = solved(ask, 'top');
      if (!statics) return ask.missing('strings');
      // Read through the loads as well, so that what moves them moves this.
      return figure === 'dip' ? -statics.dip : statics[figure];
    },
    slopes: slopesOf('top', figure, figure === 'dip' ? -1 : 1),
  };
}

/** The body's three resonances. A frequency of the plates alone would read as if the box held no air. */
function bodyResonance(path: string, of: OscillatorName, sentence: string): DerivedQuantity {
  return {
    path,
    dimension: DIMENSION.frequency,
    unit: 'Hz',
    slow: true,
    voicing: true,
    scatter: PRIOR_SCATTER,
    sentence,
    formula: 'top, back and air as masses on springs, coupled through the pressure in the box',
    source: COUPLED,
    compute: (ask) => {
      ask.doubt(COUPLED_ERROR);
      const mode = coupledModes(coupledBody(ask)).find((candidate) => candidate.of === of);
      if (!mode) throw new MechanicsError('body', 'With these plates no such resonance stands out.');
      return mode.frequency;
    },
  };
}

function coupledBody(ask: Ask): CoupledBody {
  const piston = (plate: PlateName) => ({
    mass: ask.number(`${plate}.effective-mass`),
    stiffness: ask.number(`${plate}.effective-stiffness`),
    area: Math.abs(ask.number(`${plate}.effective-area`)),
  });
  return { top: piston('top'), back: piston('back'), volume: ask.number('body.volume'), openings: openingsOf(ask) };
}

export function solved(ask: Ask, plate: PlateName): PlateModes {
  const task = plateTask(ask, plate);
  const analysis = ask.analyse(task);
  if (analysis.ok) {
    // Whoever reads the number is told in what it is not of the plate as drawn.
    for (const { message } of analysis.warnings) ask.assume(message);
    return analysis;
  }
  const problem = analysis.problems.find(({ severity }) => severity === 'error');
  throw new MechanicsError(
    problem ? placeOf(problem, task.model, plate) : plate,
    problem?.message ?? 'The plate cannot be solved.',
  );
}

/** What the solver took otherwise than it is drawn, each with the path of the recipe it is about. */
export interface SolverNote {
  readonly path: string;
  readonly message: string;
}

export function solverNotes(plate: PlateName): SharedPart<readonly SolverNote[]> {
  return {
    key: `what the solver says of the ${plate}`,
    make: (ask) => {
      const { model } = plateTask(ask, plate);
      return solved(ask, plate).warnings.map((each) => ({
        path: placeOf(each, model, plate),
        message: each.message,
      }));
    },
  };
}

/** The recipe's path of what the solver finds wrong with a model. */
function placeOf({ path }: TopProblem, model: TopModel, plate: PlateName): string {
  const [part = '', which = '', ...rest] = path.split('.');
  switch (part) {
    case 'braces': {
      const { name = '' } = model.braces?.[Number(which)] ?? {};
      const what = rest[0] === 'height' || rest[0] === 'width' || rest[0] === 'wood' ? `.${rest[0]}` : '';
      return `${plate === 'top' ? 'bracing' : 'back-bracing'}.${name}${what}`;
    }
    case 'patches':
      return model.patches?.[Number(which)]?.name === 'bridge' ? 'bridge' : 'bridge.plate';
    case 'holes':
      return 'soundhole';
    case 'plate':
      return which === 'wood' || which === 'thickness' ? `${plate}.${which}` : plate;
    default:
      return part === 'outline' ? 'body' : plate;
  }
}

function mainMode(ask: Ask, plate: PlateName): ModeFigures {
  const { modes, main } = solved(ask, plate);
  const mode = modes[main];
  if (!mode) throw new MechanicsError(plate, 'No mode of this plate moves air.');
  return mode;
}

function slopesOf(plate: PlateName, figure: SlopedFigure, sign: 1 | -1 = 1) {
  return (ask: Ask): ReadonlyMap<string, number> =>
    new Map([...solved(ask, plate).slopes[figure]].map(([path, slope]) => [path, sign * slope]));
}
