/**
 * What the top solver reads: one plate with its hole, braces and patches, as plain numbers in SI.
 *
 * Axes: x and y in the plane of the plate (x by convention from tail to neck), z upward, away from the braces. Lengths in m,
 * moduli in Pa, densities in kg/m³, angles in radians from the x axis, forces in N.
 */
import type { GabledShape, Profile } from '../braces/sections.js';

/** `[x, y]`, m. */
export type Point = readonly [number, number];

/** Wood as a plate or brace feels it: L along the grain, R across it in the plane, T through the thickness. */
export interface OrthotropicWood {
  /** E_L, Pa */
  readonly eAlong: number;
  /** E_R, Pa */
  readonly eAcross: number;
  /** ν_LR: strain across for a load along. ν_RL follows from reciprocity. 0 ≤ ν < √(E_L/E_R). */
  readonly poisson: number;
  /** G_LR, in the plane of the plate, Pa */
  readonly shearInPlane: number;
  /** G_LT, Pa: shear of the cross-section when the plate bends along the grain */
  readonly shearAlong: number;
  /** G_RT, Pa: rolling shear, very low in softwoods and known to tens of percent only */
  readonly shearAcross: number;
  /** kg/m³ */
  readonly density: number;
}

/** One thickness, or thinner towards the outline: `edge` at the outline, rising evenly to `centre` at `width` from it, or at chosen points. */
export type ThicknessMap =
  | number
  | { readonly kind: 'edge-taper'; readonly centre: number; readonly edge: number; readonly width: number }
  | { readonly kind: 'points'; readonly points: readonly { readonly at: Point; readonly thickness: number }[] };

export interface Plate {
  readonly wood: OrthotropicWood;
  readonly thickness: ThicknessMap;
  /** Direction of the grain, radians from the x axis. */
  readonly grain: number;
  /** m: radius of the sphere the plate is domed to, away from the braces and shallow; absent: flat. */
  readonly dome?: number;
}

/** A height at a distance from the brace's first point; between stations the height changes evenly. */
export interface HeightStation {
  readonly at: number;
  readonly height: number;
}

/** A brace glued under the plate, its grain along its length. */
export interface Brace {
  readonly name: string;
  /** Two or more points of the centre line. What lies outside the plate or over the hole is cut off. */
  readonly axis: readonly Point[];
  readonly wood: OrthotropicWood;
  readonly profile: Profile;
  readonly gable?: GabledShape;
  readonly width: number;
  /** One height, or stations from the first point on. */
  readonly height: number | readonly HeightStation[];
}

/** Something flat glued on the plate (a bridge) or under it (a bridge plate). */
export interface Patch {
  readonly name: string;
  readonly outline: readonly Point[];
  readonly wood: OrthotropicWood;
  readonly thickness: number;
  readonly grain: number;
  readonly side: 'over' | 'under';
}

/** A flat ring glued under the plate around a hole, from its edge outwards. */
export interface HoleRing {
  readonly name: string;
  /** Index of the hole. */
  readonly hole: number;
  /** m */
  readonly width: number;
  readonly wood: OrthotropicWood;
  readonly thickness: number;
  readonly grain: number;
}

/** Something small that rides on the plate without stiffening it: a pickup, a preamp, a weight of a test. */
export interface RidingMass {
  readonly name?: string;
  /** m */
  readonly x: number;
  readonly y: number;
  /** kg */
  readonly mass: number;
  /** m: spread evenly over a disc of this radius; absent: a point. */
  readonly radius?: number;
}

/** A coat on the upper face, everywhere but under what is glued there. */
export interface Film {
  /** kg/m² */
  readonly massPerArea: number;
  /** N/m: E t / (1 − ν²) of the coat, alike in every direction; absent: unknown, and counted as none. */
  readonly stiffness?: number;
}

/** How the rim holds the plate. `hinged` and `elastic` hold the mid-surface against moving up and down. */
export type Edge =
  | { readonly kind: 'free' }
  | { readonly kind: 'hinged'; readonly inPlane: 'held' | 'free' }
  | { readonly kind: 'clamped' }
  /** `rotation`: stiffness against turning about the edge, N·m/rad per m of edge. */
  | { readonly kind: 'elastic'; readonly inPlane: 'held' | 'free'; readonly rotation: number };

export type Hole = { readonly centre: Point; readonly diameter: number } | { readonly outline: readonly Point[] };

/** What the strings do to the bridge, and for trials an even pressure or single forces. */
export interface Load {
  /** The patch that carries couple and shear; its rotation is reported. */
  readonly patch?: string;
  /** Direction in which the strings pull, radians from x; 0 is toward the neck. */
  readonly direction?: number;
  /** N·m about the plate's upper face, tipping the bridge in `direction`: string tension × height above the top. */
  readonly couple?: number;
  /** N, along `direction`, at the plate's upper face. */
  readonly shear?: number;
  /** N/m², upward, over the whole plate. */
  readonly pressure?: number;
  readonly forces?: readonly { readonly at: Point; readonly force: number }[];
}

export interface TopModel {
  /** Closed outline, three or more points, either direction, first point not repeated. */
  readonly outline: readonly Point[];
  readonly holes?: readonly Hole[];
  readonly plate: Plate;
  readonly braces?: readonly Brace[];
  readonly patches?: readonly Patch[];
  readonly rings?: readonly HoleRing[];
  readonly masses?: readonly RidingMass[];
  readonly film?: Film;
  readonly edge: Edge;
  /** Straight lines on which the plate rests: there it cannot move up or down, and turns freely. */
  readonly rests?: readonly { readonly from: Point; readonly to: Point }[];
  readonly load?: Load;
  /** Where two braces cross. `half-lap`: each keeps half its height there, the rest is cross-grain; `solid`: both run through. Absent: half-lap. */
  readonly crossing?: 'half-lap' | 'solid';
}

/** What is wrong with a model, for the finding that the caller makes of it. */
export interface TopProblem {
  readonly severity: 'error' | 'warning';
  /** Where in the model: `outline`, `holes.0`, `plate.thickness`, `braces.2.axis`, … */
  readonly path: string;
  /** One sentence for a guitar maker. */
  readonly message: string;
}
