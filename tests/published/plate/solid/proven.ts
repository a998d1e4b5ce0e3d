/**
 * Proof of the deck writer: blanks and a hinged rectangle against closed form and known solutions, and one braced top of the older
 * set, whose meshes were made by another mesher. Deviations are kept in `tops.json`.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { PointMm, SolidBrace, SolidTop, Woods } from './inputs.js';

interface OlderSet {
  readonly materials: Woods;
  readonly outline: { readonly dense_polyline_mm: readonly PointMm[] };
  readonly cases: Readonly<Record<string, { readonly reference: readonly number[] }>> & {
    readonly f_static_string_load: { readonly reference: Record<'couple' | 'full', { readonly rot_deg: number }> };
  };
}

// Found from the project's folder, where scripts are run: bundled, this file lies elsewhere.
const older = JSON.parse(readFileSync(resolve('tests/published/data/braced-top-cases.json'), 'utf8')) as OlderSet;

export const woods: Woods = older.materials;

export interface ProvenCase {
  readonly top: SolidTop;
  readonly spacing: number;
  /** Hz */
  readonly frequencies: readonly number[];
  /** Degrees under the couple, and under the whole load. */
  readonly rotation?: { readonly couple: number; readonly full: number };
  /** Share by which the solution may differ. */
  readonly within: number;
}

const rectangle = (
  name: string,
  length: number,
  width: number,
  thickness: number,
  edge: SolidTop['edge'],
): SolidTop => ({
  name,
  about: `spruce rectangle ${length} × ${width} × ${thickness} mm, grain along its length, ${edge}`,
  outline_mm: [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ],
  plate: { wood: 'spruce', thickness_mm: thickness },
  braces: [],
  patches: [],
  edge,
  crossing: 'solid',
});

const brace = (name: string, from: PointMm, to: PointMm, width: number, height: number): SolidBrace => ({
  name,
  wood: 'spruce',
  from_mm: from,
  to_mm: to,
  width_mm: width,
  height_mm: height,
});

const braced = (edge: SolidTop['edge']): SolidTop => ({
  name: `older braced top, ${edge}`,
  about: 'X, tone bar, bridge plate and bridge',
  outline_mm: olderOutline(),
  hole_mm: { x: 335, y: 0, diameter: 100 },
  plate: { wood: 'spruce', thickness_mm: 2.8 },
  braces: [
    brace('X1', [104, 173.4], [354, -113.7], 8, 14),
    brace('X2', [104, -173.4], [354, 113.7], 8, 14),
    brace('tone bar', [115, -120], [41, 119], 6, 10),
  ],
  patches: [
    {
      name: 'bridge plate',
      wood: 'rosewood',
      x_mm: [130, 180],
      y_mm: [-75, 75],
      thickness_mm: 2.5,
      grain_deg: 90,
      side: 'under',
    },
    { name: 'bridge', wood: 'ebony', x_mm: [141, 169], y_mm: [-75, 75], thickness_mm: 9, grain_deg: 90, side: 'over' },
  ],
  edge,
  crossing: 'solid',
  load: { patch: 'bridge', tension_N: 730, height_mm: 12 },
});

/** Half outline from tail to neck, mirrored. */
function olderOutline(): PointMm[] {
  const half = older.outline.dense_polyline_mm;
  const mirrored = half
    .slice(1, -1)
    .reverse()
    .map(([x, y]): PointMm => [x, y]);
  return [...half.map(([x, y]): PointMm => [x, -y]), ...mirrored];
}

const known = (name: string): readonly number[] => older.cases[name]!.reference;
const { couple, full } = older.cases.f_static_string_load.reference;

export const provenCases: readonly ProvenCase[] = [
  {
    top: rectangle('free blank', 360, 300, 3.5, 'free'),
    spacing: 30,
    frequencies: known('b3_free_blank'),
    within: 0.002,
  },
  {
    top: rectangle('hinged rectangle', 400, 300, 2.8, 'hinged'),
    spacing: 30,
    frequencies: known('c1_hinged_rectangle'),
    within: 0.003,
  },
  {
    top: braced('hinged'),
    spacing: 22,
    frequencies: known('e1_guitar_hinged_braced'),
    rotation: { couple: couple.rot_deg, full: full.rot_deg },
    within: 0.01,
  },
  { top: braced('clamped'), spacing: 22, frequencies: known('e3_guitar_clamped_braced'), within: 0.01 },
];
