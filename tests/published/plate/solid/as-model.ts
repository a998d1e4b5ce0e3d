/** A top of the solid-element set as the solver reads it. */
import type { Edge, OrthotropicWood, Point, TopModel } from '../../../../language/mechanics/plate/index.js';
import { patchCorners, type PointMm, type SolidEdge, type SolidTop, type SolidWood, type Woods } from './inputs.js';

export function asModel(
  top: SolidTop,
  woods: Woods,
  load: { readonly couple: number; readonly shear: number },
): TopModel {
  const { plate, hole_mm: hole, load: strings } = top;
  return {
    outline: top.outline_mm.map(metres),
    holes: hole && [{ centre: metres([hole.x, hole.y]), diameter: hole.diameter / 1000 }],
    plate: {
      wood: woodOf(woods[plate.wood]),
      thickness: plate.taper
        ? {
            kind: 'edge-taper',
            centre: plate.thickness_mm / 1000,
            edge: plate.taper.edge_mm / 1000,
            width: plate.taper.width_mm / 1000,
          }
        : plate.thickness_mm / 1000,
      grain: 0,
    },
    braces: top.braces.map(({ name, wood, from_mm, to_mm, width_mm, height_mm: height }) => ({
      name,
      axis: [metres(from_mm), metres(to_mm)],
      wood: woodOf(woods[wood]),
      profile: 'rectangular',
      width: width_mm / 1000,
      height:
        typeof height === 'number' ? height / 1000 : height.map(([at, h]) => ({ at: at / 1000, height: h / 1000 })),
    })),
    patches: top.patches.map((patch) => ({
      name: patch.name,
      outline: patchCorners(patch).map(metres),
      wood: woodOf(woods[patch.wood]),
      thickness: patch.thickness_mm / 1000,
      grain: (patch.grain_deg * Math.PI) / 180,
      side: patch.side,
    })),
    edge: EDGES[top.edge],
    crossing: top.crossing,
    load: strings && { patch: strings.patch, ...load },
  };
}

const EDGES: Readonly<Record<SolidEdge, Edge>> = {
  free: { kind: 'free' },
  hinged: { kind: 'hinged', inPlane: 'held' },
  'hinged, free in plane': { kind: 'hinged', inPlane: 'free' },
  clamped: { kind: 'clamped' },
};

const metres = ([x, y]: PointMm): Point => [x / 1000, y / 1000];

function woodOf(w: SolidWood): OrthotropicWood {
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
