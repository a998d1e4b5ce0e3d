/** What the solver answers. SI units; shapes per node of `mesh`. */
import type { DiscreteTop } from './solve/discrete.js';
import type { TopModel, TopProblem } from './model.js';
import type { Unknowns } from './solve/degrees-of-freedom.js';

/** How a mode moves the bridge. All for the mean motion of the stiff footprint of the loaded patch. */
export interface BridgeMotion {
  /** kg: mass that, moved as the bridge is, has the mode's kinetic energy. */
  readonly effectiveMass: number;
  /** N/m: effective mass × ω². */
  readonly effectiveStiffness: number;
  /** m²: air displaced per metre of bridge movement, negative when the plate as a whole moves against the bridge. */
  readonly effectiveArea: number;
  /** 1/√(stiffness × mass), s/kg: height of the mobility at the bridge, apart from losses. */
  readonly mobility: number;
  /** rad per m of bridge movement: how much the bridge rocks in the mode. */
  readonly rocking: number;
}

export interface TopMode {
  /** Hz */
  readonly frequency: number;
  /** Movement of each node, up, scaled to unit modal mass: ∫ φ² dm = 1, 1/√kg. */
  readonly shape: Float64Array;
  /** Its slope along x and along y at each node, from the rotations; shear apart, which is little in a thin plate. 1/(m √kg). */
  readonly slopes: readonly [alongX: Float64Array, alongY: Float64Array];
  /** ∫ φ dA for that scale, m²/√kg. */
  readonly volumeDisplacement: number;
  /** Absent without a loaded patch, or when the bridge hardly moves in the mode. */
  readonly bridge?: BridgeMotion;
}

export interface TopStatics {
  /** m up, per node */
  readonly deflection: Float64Array;
  /** rad, positive leaning in the load's direction: least squares over the loaded patch; 0 without one. */
  readonly rotation: number;
  /** m: lowest point in front of the bridge's middle (negative), and highest behind it. Without a loaded patch, over the whole plate. */
  readonly dip: number;
  readonly belly: number;
}

export interface TopSolution {
  readonly modes: readonly TopMode[];
  /** Absent when the model has no load. */
  readonly statics?: TopStatics;
  readonly mesh: { readonly x: Float64Array; readonly y: Float64Array; readonly quads: Int32Array };
  /** kg: plate, braces and patches. */
  readonly mass: number;
  /** m²: plate without its holes. */
  readonly area: number;
  /** Held by the solver for sensitivities; nothing in it is for reading. */
  readonly state: SolvedState;
}

export interface SolvedState {
  readonly model: TopModel;
  readonly top: DiscreteTop;
  readonly unknowns: Unknowns;
  /** Mode vectors and their ω², in the order of elimination, unit modal mass. */
  readonly vectors: readonly Float64Array[];
  readonly squares: readonly number[];
  /** Displacement under the load, and under the unit couple that measures the rotation. */
  readonly displacement?: Float64Array;
  readonly adjoint?: Float64Array;
}

export type TopResult =
  | { readonly ok: true; readonly solution: TopSolution; readonly problems: readonly TopProblem[] }
  | { readonly ok: false; readonly stopped: boolean; readonly problems: readonly TopProblem[] };
