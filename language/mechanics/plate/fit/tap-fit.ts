/**
 * Wood constants from taps on a free rectangular plate: closed forms as the first guess, then the plate solver itself fitted to the measured
 * frequencies. With E = 0.946 ρ f² L⁴/h² along (and W⁴ across) and G ≈ 0.822 ρ f² L² W²/h² (free-plate approximations, in
 * common use) the twist reads G about 10 % low; the fit does not.
 */
import { solveDense } from '../../linear-algebra/dense-system.js';
import { labelledModes, type ModeLabel } from '../solve/mode-labels.js';
import type { OrthotropicWood, TopModel, TopProblem } from '../model.js';
import type { TopParameter } from './parameters.js';
import { sensitivities } from './sensitivities.js';
import type { TopSolution } from '../solution.js';
import type { TopSolver } from '../solve/top-solver.js';

export interface Tap {
  readonly mode: ModeLabel;
  /** Hz */
  readonly frequency: number;
  /** Hz, standard uncertainty of the reading; absent: 0.5 %. */
  readonly uncertainty?: number;
}

export interface TapTest {
  /** m: along the grain, across it, thickness. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** What is known beforehand: density, Poisson's ratio and the two shear moduli through the thickness count; the rest is the fallback for what is not tapped. */
  readonly wood: OrthotropicWood;
  readonly taps: readonly Tap[];
  /** Whether Poisson's ratio is fitted too; it needs four different modes, and shows little in them. */
  readonly fitPoisson?: boolean;
  /** Relative standard uncertainty of Poisson's ratio as given, where it is not fitted: what it leaves open stands in the spread of the moduli. */
  readonly poissonScatter?: number;
}

export interface FittedConstant {
  readonly value: number;
  /** Relative standard uncertainty, from the taps' own uncertainty or from the misfit, whichever is larger. */
  readonly uncertainty: number;
  /** The part of it that does not come from the uncertainty of the readings: misfit beyond that, and Poisson's ratio where it is not known. */
  readonly spread: number;
  /** d ln constant / d ln frequency, one per tap. */
  readonly gains: readonly number[];
}

export interface FittedWood {
  readonly wood: OrthotropicWood;
  readonly eAlong: FittedConstant;
  readonly eAcross: FittedConstant;
  readonly shearInPlane: FittedConstant;
  readonly poisson?: FittedConstant;
  /** Computed over measured frequency, less one, per tap. */
  readonly misfits: readonly number[];
}

export type FitResult =
  | { readonly ok: true; readonly fitted: FittedWood }
  | { readonly ok: false; readonly stopped: boolean; readonly problems: readonly TopProblem[] };

type Fitted = 'eAlong' | 'eAcross' | 'shearInPlane' | 'poisson';

const STEPS = 16;
const NODES = 420;
const FINE_NODES = 1100;

/** Fits E along, E across and G (and ν if asked) to the taps. Every constant needs a mode that shows it: 2, 0 for E along, 0, 2 for E across, 1, 1 for G. */
export function fitTaps(solver: TopSolver, test: TapTest, shouldStop: () => boolean = () => false): FitResult {
  const refused = (path: string, message: string): FitResult => ({
    ok: false,
    stopped: false,
    problems: [{ severity: 'error', path, message }],
  });
  const names: Fitted[] = ['eAlong', 'eAcross', 'shearInPlane', ...(test.fitPoisson ? (['poisson'] as const) : [])];
  const wrong = problemWith(test, names.length);
  if (wrong) return refused(...wrong);
  const weights = test.taps.map(({ frequency, uncertainty = 0.005 * frequency }) => frequency / uncertainty);
  const wanted = Math.min(24, 4 + Math.max(6, 2 * test.taps.length));
  let wood = firstGuess(test);
  /** Limit of a fine mesh over this mesh, per tap; known once the first fit stands. */
  let limit: readonly number[] | undefined;
  for (let step = 0; step < STEPS; step++) {
    const heard = hear(solver, test, wood, wanted, NODES, shouldStop);
    if (!heard.ok) return heard;
    const misfits = heard.frequencies.map((f, i) => (f * (limit?.[i] ?? 1)) / test.taps[i]!.frequency - 1);
    const slopes = slopesOf(heard.solution, names, heard.at);
    const normal = normalEquations(slopes, misfits, weights);
    const moved = solveDense(normal.matrix, normal.right);
    const inverse = moved && inverseOf(normal.matrix);
    if (!moved || !inverse) return refused('taps', 'The taps do not tell all of the constants apart.');
    const still = moved.every((change) => Math.abs(change) < (limit ? 1e-5 : 1e-2));
    if (still && limit) {
      const scatter = test.fitPoisson ? 0 : (test.poissonScatter ?? 0);
      const poisson =
        scatter > 0 ? slopesOf(heard.solution, ['poisson'], heard.at).map(([slope]) => slope! * scatter) : [];
      return { ok: true, fitted: report({ wood, names, slopes, poisson, misfits, weights, inverse }) };
    }
    if (still) {
      const fine = hear(solver, test, wood, wanted, FINE_NODES, shouldStop);
      if (!fine.ok) return fine;
      limit = heard.frequencies.map((f, i) => extrapolated(f, heard.elements, fine.frequencies[i]!, fine.elements) / f);
      continue;
    }
    for (let k = 0; k < names.length; k++) {
      const name = names[k]!;
      const change = Math.max(-0.5, Math.min(0.5, -moved[k]!));
      wood = { ...wood, [name]: wood[name] * Math.exp(change) };
    }
  }
  return refused('taps', 'No wood fits these taps: one of them is probably another mode than it is said to be.');
}

type Heard =
  | {
      readonly ok: true;
      readonly solution: TopSolution;
      readonly at: readonly number[];
      readonly frequencies: readonly number[];
      readonly elements: number;
    }
  | Exclude<FitResult, { ok: true }>;

/** The plate's modes that the taps name. */
function hear(
  solver: TopSolver,
  test: TapTest,
  wood: OrthotropicWood,
  modes: number,
  nodes: number,
  shouldStop: () => boolean,
): Heard {
  const result = solver.solve(modelOf(test, wood), { modes, nodes, shouldStop });
  if (!result.ok) return result;
  const { solution } = result;
  const at = labelledModes(
    solution,
    test.taps.map(({ mode }) => mode),
  );
  const unseen = at.indexOf(-1);
  if (unseen >= 0) {
    const message = 'This mode is not among the lowest modes of such a plate: check which one was heard.';
    return { ok: false, stopped: false, problems: [{ severity: 'error', path: `taps.${unseen}`, message }] };
  }
  const frequencies = at.map((mode) => solution.modes[mode]!.frequency);
  return { ok: true, solution, at, frequencies, elements: solution.mesh.quads.length / 4 };
}

/** The error falls with the square of the element's size, that is with one over their number (Richardson's extrapolation). */
function extrapolated(coarse: number, few: number, fine: number, many: number): number {
  return (many * fine - few * coarse) / (many - few);
}

function modelOf({ length, width, thickness }: TapTest, wood: OrthotropicWood): TopModel {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    plate: { wood, thickness, grain: 0 },
    edge: { kind: 'free' },
  };
}

function problemWith(
  { length, width, thickness, taps }: TapTest,
  constants: number,
): readonly [string, string] | undefined {
  const sizes = { length, width, thickness };
  for (const [name, value] of Object.entries(sizes)) {
    if (!(Number.isFinite(value) && value > 0))
      return [name, `The ${name} of the tapped plate must be more than zero.`];
  }
  const bad = taps.findIndex(
    ({ frequency, uncertainty = 1 }) => !(frequency > 0 && uncertainty > 0 && Number.isFinite(frequency + uncertainty)),
  );
  if (bad >= 0) return [`taps.${bad}`, 'A tapped frequency and its uncertainty must be more than zero.'];
  const different = new Set(taps.map(({ mode }) => `${mode.along} ${mode.across}`)).size;
  if (different < constants)
    return ['taps', `${constants} different modes are needed to find ${constants} constants; there are ${different}.`];
  return undefined;
}

/** The closed forms, where the modes they need were tapped. */
function firstGuess({ length, width, thickness, wood, taps }: TapTest): OrthotropicWood {
  const heard = (along: number, across: number): number | undefined =>
    taps.find(({ mode }) => mode.along === along && mode.across === across)?.frequency;
  const scale = wood.density / thickness ** 2;
  const long = heard(2, 0);
  const cross = heard(0, 2);
  const twist = heard(1, 1);
  return {
    ...wood,
    eAlong: long ? 0.946 * scale * long ** 2 * length ** 4 : wood.eAlong,
    eAcross: cross ? 0.946 * scale * cross ** 2 * width ** 4 : wood.eAcross,
    shearInPlane: twist ? 0.822 * scale * twist ** 2 * length ** 2 * width ** 2 : wood.shearInPlane,
  };
}

/** ∂ ln f / ∂ ln constant, one row per tap. */
function slopesOf(solution: TopSolution, names: readonly Fitted[], at: readonly number[]): number[][] {
  const parameters = names.map((quantity): TopParameter => ({ part: 'plate', quantity }));
  const found = sensitivities(solution, parameters);
  return at.map((mode) =>
    found.map(({ frequencies, value }) => (frequencies[mode]! * value) / solution.modes[mode]!.frequency),
  );
}

function normalEquations(
  slopes: readonly (readonly number[])[],
  misfits: readonly number[],
  weights: readonly number[],
): { matrix: number[][]; right: number[] } {
  const n = slopes[0]!.length;
  const matrix = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const right = new Array<number>(n).fill(0);
  slopes.forEach((row, i) => {
    const w = weights[i]! ** 2;
    for (let p = 0; p < n; p++) {
      right[p]! += w * row[p]! * misfits[i]!;
      for (let q = 0; q < n; q++) matrix[p]![q]! += w * row[p]! * row[q]!;
    }
  });
  return { matrix, right };
}

function inverseOf(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const columns = matrix.map((_, k) =>
    solveDense(
      matrix,
      matrix.map((__, i) => Number(i === k)),
    ),
  );
  return columns.every((column) => column !== undefined) ? columns : undefined;
}

interface Fit {
  readonly wood: OrthotropicWood;
  readonly names: readonly Fitted[];
  /** d ln frequency / d ln constant, one row per tap. */
  readonly slopes: readonly (readonly number[])[];
  /** What the scatter of Poisson's ratio does to each frequency, relative; empty where it is fitted or known. */
  readonly poisson: readonly number[];
  readonly misfits: readonly number[];
  /** One over the relative standard uncertainty, by tap. */
  readonly weights: readonly number[];
  /** Of the normal equations. */
  readonly inverse: readonly (readonly number[])[];
}

function report({ wood, names, slopes, poisson, misfits, weights, inverse }: Fit): FittedWood {
  const spare = misfits.length - names.length;
  const misfit = spare > 0 ? misfits.reduce((sum, each, i) => sum + (each * weights[i]!) ** 2, 0) / spare : 0;
  const constant = (name: Fitted): FittedConstant => {
    const row = inverse[names.indexOf(name)]!;
    const gains = slopes.map((slope, i) => weights[i]! ** 2 * slope.reduce((sum, each, q) => sum + row[q]! * each, 0));
    const readings = gains.reduce((sum, gain, i) => sum + (gain / weights[i]!) ** 2, 0);
    const unknown = gains.reduce((sum, gain, i) => sum + gain * (poisson[i] ?? 0), 0) ** 2;
    const uncertainty = Math.sqrt(Math.max(1, misfit) * readings + unknown);
    return { value: wood[name], uncertainty, spread: Math.sqrt(uncertainty ** 2 - readings), gains };
  };
  return {
    wood,
    eAlong: constant('eAlong'),
    eAcross: constant('eAcross'),
    shearInPlane: constant('shearInPlane'),
    poisson: names.includes('poisson') ? constant('poisson') : undefined,
    misfits,
  };
}
