/** What `tops.json` holds. */
import type { LoadCase } from './deck.js';
import type { PointMm, SolidTop, Woods } from './inputs.js';

export interface SolidFile {
  readonly about: string;
  readonly program: string;
  readonly woods: Woods;
  readonly proof: readonly Proof[];
  readonly tops: readonly SolidResult[];
}

/** A case that was known before, solved with the same deck writer. */
export interface Proof {
  readonly name: string;
  readonly about: string;
  readonly nodes: number;
  readonly known_Hz: readonly number[];
  readonly frequencies_Hz: readonly number[];
  readonly off_pct: readonly number[];
  readonly rotation_deg?: Readonly<Record<string, number>>;
  readonly rotationOff_pct?: Readonly<Record<string, number>>;
}

export interface SolidResult extends SolidTop {
  readonly mass_kg: number;
  readonly area_m2: number;
  /** Places at which shapes are given. */
  readonly grid_mm: readonly PointMm[];
  /** Coarse to fine. */
  readonly meshes: readonly SolvedMesh[];
  readonly reference: {
    /** Ascending on the finest mesh. */
    readonly modes: readonly SolidMode[];
    readonly statics: Readonly<Partial<Record<LoadCase['name'], SolidStatics>>>;
  };
}

export interface SolvedMesh {
  /** Side of the triangles that were divided; sides of the bricks are about half of it. */
  readonly spacing_mm: number;
  readonly plateBricks: number;
  readonly bricks: number;
  readonly nodes: number;
  /** Run time of the program on one core. */
  readonly seconds: number;
  /** In the order of the reference's modes. */
  readonly frequencies_Hz: readonly number[];
  /** MAC of each shape with that of the finest mesh. */
  readonly likeness: readonly number[];
  readonly rotation_deg?: Readonly<Record<string, number>>;
}

export interface SolidMode {
  /** Limit over the meshes. */
  readonly frequency_Hz: number;
  readonly uncertainty_pct: number;
  /** Of the finest mesh, for a mode scaled to unit modal mass: ∫ φ dA, m²/√kg … */
  readonly volumeDisplacement_m2: number;
  /** … effective modal mass for movement up, kg … */
  readonly effectiveMassUp_kg: number;
  /** … mean of φ over the loaded block, 1/√kg … */
  readonly bridge: number;
  /** … φ at the grid places, 1/√kg. */
  readonly shape: readonly number[];
}

export interface SolidStatics {
  readonly shear_N: number;
  /** Couple of the pressure on the block's upper face. */
  readonly coupleOnBlock_Nm: number;
  /** Limits over the meshes. */
  readonly rotation_deg: number;
  readonly rotationMiddleLine_deg: number;
  readonly uncertainty_pct: number;
  readonly dip_mm: number;
  readonly belly_mm: number;
  /** w at the grid places, finest mesh. */
  readonly shape_mm: readonly number[];
}
