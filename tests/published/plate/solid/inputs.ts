/** What describes one top of the solid-element set: as it stands in `tops.json`, in mm, GPa-free SI moduli and N. */

export type PointMm = readonly [number, number];

/** Nine constants: L along the grain, R across it in the plane, T through the thickness. ν_ij: strain along j for a load along i. */
export interface SolidWood {
  readonly E_L_Pa: number;
  readonly E_R_Pa: number;
  readonly E_T_Pa: number;
  readonly nu_LR: number;
  readonly nu_LT: number;
  readonly nu_RT: number;
  readonly G_LR_Pa: number;
  readonly G_LT_Pa: number;
  readonly G_RT_Pa: number;
  readonly rho_kg_m3: number;
}

export type WoodName = 'spruce' | 'rosewood' | 'ebony';
/** `crossing`: the block in which two braces cross when both run through, stiff along both. */
export type Woods = Readonly<Record<WoodName | 'crossing', SolidWood>>;

/** A straight brace with a rectangular section under the plate, grain along itself. */
export interface SolidBrace {
  readonly name: string;
  readonly wood: WoodName;
  readonly from_mm: PointMm;
  readonly to_mm: PointMm;
  readonly width_mm: number;
  /** One height, or [distance from the first point, height] in order; even in between. */
  readonly height_mm: number | readonly PointMm[];
}

/** A rectangular block over or under the plate; several on one side lie on each other in the order given. */
export interface SolidPatch {
  readonly name: string;
  readonly wood: WoodName;
  readonly x_mm: readonly [number, number];
  readonly y_mm: readonly [number, number];
  readonly thickness_mm: number;
  /** Degrees from x. */
  readonly grain_deg: number;
  readonly side: 'over' | 'under';
}

/**
 * All at the mid-plane of the outline. `hinged`: u = v = w = 0; `hinged, free in plane`: w = 0 alone (in the static
 * case with three single supports against rigid motion); `clamped`: u = v = 0 through the thickness and w = 0 at the mid-plane, so that the thickness may change.
 */
export type SolidEdge = 'free' | 'hinged' | 'hinged, free in plane' | 'clamped';

export interface SolidTop {
  readonly name: string;
  readonly about: string;
  /** Closed, counter-clockwise, x from tail to neck; first point not repeated. */
  readonly outline_mm: readonly PointMm[];
  readonly hole_mm?: { readonly x: number; readonly y: number; readonly diameter: number };
  readonly plate: {
    readonly wood: WoodName;
    readonly thickness_mm: number;
    /** Thinner towards the outline: `edge_mm` there, rising evenly to `thickness_mm` at `width_mm` from it; the mid-plane stays flat. */
    readonly taper?: { readonly edge_mm: number; readonly width_mm: number };
  };
  readonly braces: readonly SolidBrace[];
  readonly patches: readonly SolidPatch[];
  readonly edge: SolidEdge;
  /** `solid`: one block of the wood `crossing`. `half-lap`: the earlier brace keeps its glued half there, the later one its free half. */
  readonly crossing: 'solid' | 'half-lap';
  /** Strings that pull toward the neck, `height_mm` above the plate's upper face, on the named patch. */
  readonly load?: { readonly patch: string; readonly tension_N: number; readonly height_mm: number };
}

/** mm: height of a brace `at` mm from its first point. */
export function braceHeight({ height_mm: height }: SolidBrace, at: number): number {
  if (typeof height === 'number') return height;
  const after = height.findIndex(([s]) => s >= at);
  if (after <= 0) return height[after < 0 ? height.length - 1 : 0]![1];
  const [[s0, h0], [s1, h1]] = [height[after - 1]!, height[after]!];
  return h0 + ((h1 - h0) * (at - s0)) / (s1 - s0);
}

/** The rectangle of a patch, counter-clockwise. */
export function patchCorners({ x_mm: [x0, x1], y_mm: [y0, y1] }: SolidPatch): readonly PointMm[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}
