/** The tops of the CalculiX reference set as models for the solver. */
import { readFileSync } from 'node:fs';
import type {
  Brace,
  Edge,
  OrthotropicWood,
  Patch,
  Point,
  ThicknessMap,
  TopModel,
} from '../../../language/mechanics/plate/index.js';

interface ReferenceWood {
  readonly E_L_Pa: number;
  readonly E_R_Pa: number;
  readonly nu_LR: number;
  readonly G_LR_Pa: number;
  readonly G_LT_Pa: number;
  readonly G_RT_Pa: number;
  readonly rho_kg_m3: number;
}

export interface ReferenceCase {
  readonly inputs: Record<string, number | string>;
  readonly meshes: Record<string, { readonly f?: readonly number[] }>;
  readonly reference: readonly number[];
  readonly uncertainty_pct: number;
}

interface ReferenceFile {
  readonly materials: Record<'spruce' | 'rosewood' | 'ebony', ReferenceWood>;
  readonly outline: { readonly dense_polyline_mm: readonly (readonly [number, number])[] };
  readonly cases: Record<string, ReferenceCase> & {
    readonly f_static_string_load: {
      readonly reference: Record<
        'couple' | 'full',
        {
          readonly rot_deg: number;
          readonly max_mm: number;
          readonly min_mm: number;
          /** mm: place of the lowest node; movement along the centre line by station. */
          readonly min_at: readonly [number, number];
          readonly centreline_w_mm: Readonly<Record<string, number>>;
        }
      >;
      readonly couple_hinged_free_in_plane: { readonly rot_deg: number };
      readonly couple_without_braces: { readonly rot_deg: number };
    };
  };
}

/** CalculiX 2.20 solutions with all inputs (quadratic shells and solids, three or more meshes each). */
export const reference = JSON.parse(
  readFileSync('tests/published/data/braced-top-cases.json', 'utf8'),
) as ReferenceFile;

export const spruce = woodOf(reference.materials.spruce);
const rosewood = woodOf(reference.materials.rosewood);
const ebony = woodOf(reference.materials.ebony);

const upper = reference.outline.dense_polyline_mm.map(([x, y]): Point => [x / 1000, y / 1000]);
/** Half outline from tail to neck, mirrored about the centre line. */
export const guitarOutline: readonly Point[] = [
  ...upper,
  ...upper
    .slice(1, -1)
    .reverse()
    .map(([x, y]): Point => [x, -y]),
];

const mm = (points: readonly (readonly [number, number])[]): readonly Point[] =>
  points.map(([x, y]) => [x / 1000, y / 1000]);

const brace = (
  name: string,
  from: readonly [number, number],
  to: readonly [number, number],
  width: number,
  height: number,
): Brace => ({
  name,
  axis: mm([from, to]),
  wood: spruce,
  profile: 'rectangular',
  width: width / 1000,
  height: height / 1000,
});

export const xBraces: readonly Brace[] = [
  brace('X1', [104, 173.4], [354, -113.7], 8, 14),
  brace('X2', [104, -173.4], [354, 113.7], 8, 14),
];
export const toneBar = brace('tone bar', [115, -120], [41, 119], 6, 10);

const block = (x0: number, x1: number, y: number): readonly Point[] =>
  mm([
    [x0, -y],
    [x1, -y],
    [x1, y],
    [x0, y],
  ]);
export const bridgeParts: readonly Patch[] = [
  {
    name: 'bridge plate',
    outline: block(130, 180, 75),
    wood: rosewood,
    thickness: 0.0025,
    grain: Math.PI / 2,
    side: 'under',
  },
  { name: 'bridge', outline: block(141, 169, 75), wood: ebony, thickness: 0.009, grain: Math.PI / 2, side: 'over' },
];

export const HELD: Edge = { kind: 'hinged', inPlane: 'held' };
export const LOOSE: Edge = { kind: 'hinged', inPlane: 'free' };
export const CLAMPED: Edge = { kind: 'clamped' };

export interface Parts {
  readonly braces?: readonly Brace[];
  readonly patches?: readonly Patch[];
  readonly thickness?: ThicknessMap;
}

export function guitarTop(edge: Edge, { braces = [], patches = [], thickness = 0.0028 }: Parts = {}): TopModel {
  return {
    outline: guitarOutline,
    holes: [{ centre: [0.335, 0], diameter: 0.1 }],
    plate: { wood: spruce, thickness, grain: 0 },
    braces,
    patches,
    edge,
    // The reference joins the crossing braces by a block that is stiff along both.
    crossing: 'solid',
    load: patches.length > 0 ? { patch: 'bridge', couple: 8.76 } : undefined,
  };
}

export const allParts = { braces: [...xBraces, toneBar], patches: bridgeParts };

/** Case in the file → model; braced cases first four modes within 2.5 %, unbraced within 1 %. */
export const guitarCases: Readonly<Record<string, { readonly model: TopModel; readonly braced: boolean }>> = {
  d1_guitar_hinged_unbraced: { model: guitarTop(HELD), braced: false },
  d2_guitar_clamped_unbraced: { model: guitarTop(CLAMPED), braced: false },
  g_guitar_tapered: {
    model: guitarTop(HELD, { thickness: { kind: 'edge-taper', centre: 0.0029, edge: 0.0024, width: 0.06 } }),
    braced: false,
  },
  e1_guitar_hinged_braced: { model: guitarTop(HELD, allParts), braced: true },
  e2_guitar_hinged_free_in_plane: { model: guitarTop(LOOSE, allParts), braced: true },
  e3_guitar_clamped_braced: { model: guitarTop(CLAMPED, allParts), braced: true },
  e4_X_only_hinged: { model: guitarTop(HELD, { braces: xBraces }), braced: true },
  e5_X_and_tone_bar_hinged: { model: guitarTop(HELD, { braces: [...xBraces, toneBar] }), braced: true },
  e6_bridge_and_plate_patch_only: { model: guitarTop(HELD, { patches: bridgeParts }), braced: true },
};

const statics = reference.cases.f_static_string_load;
/** What loads the bridge, the model, and the rotation in degrees. */
export const rotationCases = [
  ['couple, edge held', guitarTop(HELD, allParts), statics.reference.couple.rot_deg],
  [
    'couple and shear, edge held',
    { ...guitarTop(HELD, allParts), load: { patch: 'bridge', couple: 730 * 0.012, shear: 730 } },
    statics.reference.full.rot_deg,
  ],
  ['couple, edge free in its plane', guitarTop(LOOSE, allParts), statics.couple_hinged_free_in_plane.rot_deg],
  ['couple, no braces', guitarTop(HELD, { patches: bridgeParts }), statics.couple_without_braces.rot_deg],
] as const;

/** A free or hinged rectangular blank with the grain along x. */
export function blank(
  length: number,
  width: number,
  thickness: number,
  edge: Edge,
  wood: OrthotropicWood = spruce,
): TopModel {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    plate: { wood, thickness, grain: 0 },
    edge,
  };
}

function woodOf(w: ReferenceWood): OrthotropicWood {
  return {
    eAlong: w.E_L_Pa,
    eAcross: w.E_R_Pa,
    poisson: w.nu_LR,
    shearInPlane: w.G_LR_Pa,
    shearAlong: w.G_LT_Pa,
    shearAcross: w.G_RT_Pa,
    density: w.rho_kg_m3,
  };
}
