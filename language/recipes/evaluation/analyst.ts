/**
 * The analyst works out what takes tens of milliseconds: modes and statics of a braced plate. It may have an answer at
 * once (a terminal waits for it) or later (an editor never does); the questions stay the same.
 */
import type { DeflectionTest, TapTest, TopModel, TopParameter, TopProblem } from '../../mechanics/plate/index.js';

/** A plate to be solved, with the numbers of the recipe that it was made from. */
export interface PlateTask {
  readonly model: TopModel;
  /** What the slopes are wanted for: the recipe's path, and the same number's place in the model. */
  readonly parameters: readonly PlateParameter[];
  /** Tasks with the same key are the same plate. */
  readonly key: string;
}

export interface PlateParameter {
  /** As the recipe says it: `top.thickness`. */
  readonly path: string;
  /** The same number in the model; of a plate that is not even, one of the thicknesses it is told by. */
  readonly parameter: TopParameter | OneThickness;
  /** d(parameter)/d(number of the recipe) where it is not the same number; absent: 1. */
  readonly factor?: number;
}

/** Centre or edge of a plate thinned at the edge; one point of a map. */
export type OneThickness =
  { readonly part: 'taper'; readonly quantity: 'centre' | 'edge' } | { readonly part: 'map'; readonly index: number };

export type PlateAnalysis = PlateModes | { readonly ok: false; readonly problems: readonly TopProblem[] };

export interface PlateModes {
  readonly ok: true;
  readonly modes: readonly ModeFigures[];
  /** Index of the mode that moves most air with the bridge: the main top. */
  readonly main: number;
  /** rad and m under the strings; absent without a load. */
  readonly statics?: { readonly rotation: number; readonly dip: number; readonly belly: number };
  /** d(figure)/d(parameter), SI per SI, by figure and path of the recipe. */
  readonly slopes: Readonly<Record<SlopedFigure, ReadonlyMap<string, number>>>;
  /**
   * d(frequency)/d(parameter) of every mode, in the order of `modes`, SI per SI by path of the recipe. By Rayleigh's principle those of
   * the moduli are also the shares of its strain energy.
   */
  readonly frequencySlopes: readonly ReadonlyMap<string, number>[];
  /** For drawing: nodes, quadrilaterals, and the shape of each mode. */
  readonly drawing: PlateDrawing;
  /** What the solver took otherwise than it is drawn: a brace that runs beyond the plate, two parts that overlap. */
  readonly warnings: readonly TopProblem[];
}

/**
 * Figures of the main mode and of the static case, with slopes for every thickness, height, width, mass, modulus and pull.
 * Places (of braces, of the bridge, of the outline) have none: moving one makes another mesh, whose own scatter is as large
 * as what a millimetre does.
 */
export type SlopedFigure = 'frequency' | 'effectiveMass' | 'effectiveArea' | 'rotation' | 'dip' | 'belly';

export interface ModeFigures {
  /** Hz */
  readonly frequency: number;
  /** kg, m²: as seen at the bridge, or, on a plate without one, at its point of largest movement. */
  readonly effectiveMass: number;
  readonly effectiveArea: number;
  /** s/kg */
  readonly mobility: number;
  /** m²/√kg: air pushed by the shape as it is drawn, which has unit modal mass. */
  readonly volume: number;
}

export interface PlateDrawing {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly quads: Int32Array;
  readonly shapes: readonly Float32Array[];
  /** How each shape slopes at the nodes, along x and along y. */
  readonly slopes: readonly (readonly [alongX: Float32Array, alongY: Float32Array])[];
}

/** A piece of wood whose moduli are to be fitted to what was read on it. */
export interface WoodTask {
  readonly test: ({ readonly kind: 'taps' } & TapTest) | ({ readonly kind: 'deflection' } & DeflectionTest);
  /** Tasks with the same key are the same test. */
  readonly key: string;
}

export type WoodFit =
  | {
      readonly ok: true;
      readonly along?: FittedModulus;
      readonly across?: FittedModulus;
      readonly twist?: FittedModulus;
    }
  | { readonly ok: false; readonly problems: readonly TopProblem[] };

export interface FittedModulus {
  /** Pa */
  readonly value: number;
  /** Relative standard uncertainty beside that of the readings: how far they disagree with one another, and what was not fitted. */
  readonly spread: number;
  /** d ln modulus / d ln reading, in the order of the taps; absent for a deflection. */
  readonly gains?: readonly number[];
}

export type SolverTask = PlateTask | WoodTask;
export type SolverAnswer = PlateAnalysis | WoodFit;

/** Either gives the answer if it is there; otherwise the work is begun and the answer comes later. */
export interface Analyst {
  analysis(task: PlateTask): PlateAnalysis | undefined;
  fit(task: WoodTask): WoodFit | undefined;
  /**
   * What stays the same while nothing has been answered since and nothing asked for was dropped: so long, what was pending
   * still is. Absent when nothing is ever pending for long.
   */
  round?(): unknown;
}

/** For evaluations that are never asked about modes. */
export const NO_ANALYST: Analyst = { analysis: () => undefined, fit: () => undefined };
