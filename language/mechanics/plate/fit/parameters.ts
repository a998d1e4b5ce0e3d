/** The sizes and wood constants of a model, each as something that can be changed a little. */
import type { Brace, HoleRing, OrthotropicWood, Patch, Plate, ThicknessMap, TopModel } from '../model.js';

export type WoodConstant = keyof OrthotropicWood;

export const WOOD_CONSTANTS: readonly WoodConstant[] = [
  'eAlong',
  'eAcross',
  'poisson',
  'shearInPlane',
  'shearAlong',
  'shearAcross',
  'density',
];

/** `thickness` and `height` of a map or of stations mean all of its values alike. */
export type TopParameter =
  | { readonly part: 'plate'; readonly quantity: 'thickness' | 'dome' | WoodConstant }
  | { readonly part: 'brace'; readonly index: number; readonly quantity: 'width' | 'height' | WoodConstant }
  | { readonly part: 'patch'; readonly index: number; readonly quantity: 'thickness' | WoodConstant }
  | { readonly part: 'ring'; readonly index: number; readonly quantity: 'thickness' | 'width' | WoodConstant }
  | { readonly part: 'film'; readonly quantity: 'massPerArea' | 'stiffness' }
  | { readonly part: 'riding'; readonly index: number; readonly quantity: 'mass' }
  | { readonly part: 'edge'; readonly quantity: 'rotation' }
  | { readonly part: 'load'; readonly quantity: 'couple' | 'shear' };

/** Every parameter of the top itself; without wood constants only its dimensions. */
export function parametersOf(model: TopModel, wood = true): readonly TopParameter[] {
  const constants = wood ? WOOD_CONSTANTS : [];
  const list: TopParameter[] = (['thickness', ...constants] as const).map((quantity) => ({ part: 'plate', quantity }));
  if (model.plate.dome !== undefined) list.push({ part: 'plate', quantity: 'dome' });
  model.braces?.forEach((_, index) =>
    (['width', 'height', ...constants] as const).forEach((quantity) => list.push({ part: 'brace', index, quantity })),
  );
  model.patches?.forEach((_, index) =>
    (['thickness', ...constants] as const).forEach((quantity) => list.push({ part: 'patch', index, quantity })),
  );
  model.rings?.forEach((_, index) =>
    (['thickness', 'width', ...constants] as const).forEach((quantity) => list.push({ part: 'ring', index, quantity })),
  );
  if (model.edge.kind === 'elastic') list.push({ part: 'edge', quantity: 'rotation' });
  return list;
}

/** Typical value, for the size of a small change: the greatest of a map or of stations. */
export function valueOf(model: TopModel, parameter: TopParameter): number {
  switch (parameter.part) {
    case 'edge':
      return model.edge.kind === 'elastic' ? model.edge.rotation : 0;
    case 'load':
      return model.load?.[parameter.quantity] ?? 0;
    case 'film':
      return model.film?.[parameter.quantity] ?? 0;
    case 'riding':
      return model.masses?.[parameter.index]?.mass ?? 0;
    case 'plate': {
      const { plate } = model;
      if (parameter.quantity === 'dome') return plate.dome ?? 0;
      return parameter.quantity === 'thickness' ? greatest(plate.thickness) : plate.wood[parameter.quantity];
    }
    case 'brace': {
      const brace = model.braces![parameter.index]!;
      if (parameter.quantity === 'width') return brace.width;
      if (parameter.quantity !== 'height') return brace.wood[parameter.quantity];
      return typeof brace.height === 'number' ? brace.height : Math.max(...brace.height.map(({ height }) => height));
    }
    case 'patch': {
      const patch = model.patches![parameter.index]!;
      return parameter.quantity === 'thickness' ? patch.thickness : patch.wood[parameter.quantity];
    }
    case 'ring': {
      const ring = model.rings![parameter.index]!;
      if (parameter.quantity === 'width') return ring.width;
      return parameter.quantity === 'thickness' ? ring.thickness : ring.wood[parameter.quantity];
    }
  }
}

/** The same model with one parameter larger by `change` (SI). */
export function changed(model: TopModel, parameter: TopParameter, change: number): TopModel {
  switch (parameter.part) {
    case 'edge': {
      const { edge } = model;
      return edge.kind === 'elastic' ? { ...model, edge: { ...edge, rotation: edge.rotation + change } } : model;
    }
    case 'load': {
      const { load } = model;
      return load
        ? { ...model, load: { ...load, [parameter.quantity]: (load[parameter.quantity] ?? 0) + change } }
        : model;
    }
    case 'film': {
      const { film } = model;
      const { quantity } = parameter;
      return film ? { ...model, film: { ...film, [quantity]: (film[quantity] ?? 0) + change } } : model;
    }
    case 'riding': {
      const masses = [...(model.masses ?? [])];
      const one = masses[parameter.index];
      if (!one) return model;
      masses[parameter.index] = { ...one, mass: one.mass + change };
      return { ...model, masses };
    }
    case 'plate': {
      return { ...model, plate: otherPlate(model.plate, parameter.quantity, change) };
    }
    case 'brace': {
      const braces = [...model.braces!];
      braces[parameter.index] = otherBrace(braces[parameter.index]!, parameter.quantity, change);
      return { ...model, braces };
    }
    case 'patch': {
      const patches = [...model.patches!];
      patches[parameter.index] = otherGlued(patches[parameter.index]!, parameter.quantity, change);
      return { ...model, patches };
    }
    case 'ring': {
      const rings = [...model.rings!];
      const ring = rings[parameter.index]!;
      rings[parameter.index] =
        parameter.quantity === 'width'
          ? { ...ring, width: ring.width + change }
          : otherGlued(ring, parameter.quantity, change);
      return { ...model, rings };
    }
  }
}

function otherGlued<T extends Patch | HoleRing>(glued: T, quantity: 'thickness' | WoodConstant, change: number): T {
  return quantity === 'thickness'
    ? { ...glued, thickness: glued.thickness + change }
    : { ...glued, wood: otherWood(glued.wood, quantity, change) };
}

function otherPlate(plate: Plate, quantity: 'thickness' | 'dome' | WoodConstant, change: number): Plate {
  if (quantity === 'thickness') return { ...plate, thickness: thicker(plate.thickness, change) };
  if (quantity !== 'dome') return { ...plate, wood: otherWood(plate.wood, quantity, change) };
  return plate.dome === undefined ? plate : { ...plate, dome: plate.dome + change };
}

function greatest(map: ThicknessMap): number {
  if (typeof map === 'number') return map;
  return map.kind === 'edge-taper'
    ? Math.max(map.centre, map.edge)
    : Math.max(...map.points.map(({ thickness }) => thickness));
}

function thicker(map: ThicknessMap, change: number): ThicknessMap {
  if (typeof map === 'number') return map + change;
  if (map.kind === 'edge-taper') return { ...map, centre: map.centre + change, edge: map.edge + change };
  return { ...map, points: map.points.map(({ at, thickness }) => ({ at, thickness: thickness + change })) };
}

/** Stations at no height (a brace tapered to nothing) stay there. */
function otherBrace(brace: Brace, quantity: 'width' | 'height' | WoodConstant, change: number): Brace {
  if (quantity === 'width') return { ...brace, width: brace.width + change };
  if (quantity !== 'height') return { ...brace, wood: otherWood(brace.wood, quantity, change) };
  const { height } = brace;
  return {
    ...brace,
    height:
      typeof height === 'number'
        ? height + change
        : height.map((station) => ({ ...station, height: station.height > 0 ? station.height + change : 0 })),
  };
}

function otherWood(wood: OrthotropicWood, quantity: WoodConstant, change: number): OrthotropicWood {
  return { ...wood, [quantity]: wood[quantity] + change };
}
