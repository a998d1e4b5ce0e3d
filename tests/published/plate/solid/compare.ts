/** Our solver beside the solid-element solutions of one top: modes matched by shape, rotation of the bridge. */
import { valueAt, type TopSolution } from '../../../../language/mechanics/plate/index.js';
import { mac, matched } from './agreement.js';
import { asModel } from './as-model.js';
import type { SolidFile, SolidResult } from './results.js';
import { solved } from '../solved.js';

export interface ComparedMode {
  /** Hz, limit of the solid elements. */
  readonly solid: number;
  /** Hz */
  readonly ours: number;
  /** MAC of the two shapes. */
  readonly likeness: number;
}

export interface ComparedTop {
  readonly nodes: number;
  /** The first six of the solid elements, ascending. */
  readonly modes: readonly ComparedMode[];
  /** Rotation of the bridge, degrees, by load case. */
  readonly rotations: readonly { readonly load: string; readonly solid: number; readonly ours: number }[];
}

const COMPARED = 6;
/** More of our own than are compared, so that a mode out of order is still found. */
const OURS = 9;

export function compareTop(top: SolidResult, woods: SolidFile['woods'], nodes: number): ComparedTop {
  const { modes, statics } = top.reference;
  // Both cases have the couple of the strings about the plate's upper face; in the second it comes partly from the shear on the block.
  const couple = (top.load!.tension_N * top.load!.height_mm) / 1000;
  const cases = Object.entries(statics).map(([name, { shear_N: shear, rotation_deg }]) => ({
    name,
    load: { shear, couple },
    rotation: rotation_deg,
  }));
  const solution = solved(asModel(top, woods, cases[0]!.load), { nodes, modes: OURS });
  const shapes = solution.modes.map(({ shape }) => sampled(solution, shape, top.grid_mm));
  const wanted = modes.map(({ shape }) => shape);
  const order = matched(wanted, shapes);
  return {
    nodes: solution.mesh.x.length,
    modes: modes.slice(0, COMPARED).map(({ frequency_Hz: solid }, i) => {
      const found = order[i]!;
      return { solid, ours: solution.modes[found]!.frequency, likeness: mac(wanted[i]!, shapes[found]!) };
    }),
    rotations: cases.map(({ name, load, rotation }, i) => {
      const { statics: own } = i === 0 ? solution : solved(asModel(top, woods, load), { nodes, modes: 0 });
      return { load: name, solid: rotation, ours: (own!.rotation * 180) / Math.PI };
    }),
  };
}

function sampled({ mesh }: TopSolution, shape: Float64Array, grid: SolidResult['grid_mm']): number[] {
  return grid.map(([x, y]) => {
    const value = valueAt(mesh, shape, [x / 1000, y / 1000]);
    if (value === undefined) throw new Error(`The place ${x}, ${y} mm lies off our mesh.`);
    return value;
  });
}
