/**
 * A braced plate of the recipe as the solver wants it: outline, soundhole, thickness, wood, braces, bridge and bridge
 * plate, and the pull of the strings. The edge is held in the plane, and hinged unless the recipe says how stiffly the
 * rim keeps it from turning: real tops lie between hinged and clamped.
 */
import { taken } from './taken.js';
import { braceHeight } from '../../mechanics/braces/brace-height.js';
import type { Brace as CarvedBrace } from '../../mechanics/braces/carved-brace.js';
import { bodyRing } from '../../mechanics/body/cutaway-outline.js';
import { soundholeEdge } from '../../mechanics/body/soundhole.js';
import type {
  Brace,
  HoleRing,
  OrthotropicWood,
  Patch,
  Plate,
  Point,
  TopModel,
  TopParameter,
  WoodConstant,
} from '../../mechanics/plate/index.js';
import type { PlateParameter, PlateTask } from '../evaluation/analyst.js';
import type { Ask } from '../evaluation/evaluation.js';
import { braceOf, woodPath } from './brace-quantities.js';
import { BRIDGE, BRIDGE_PLATE } from './layout/bridge-place.js';
import { hasHolePatch } from './glued-parts.js';
import { braceLineOf } from './layout/brace-line.js';
import { bodyOf } from './layout/outline.js';
import { soundholeIfAny } from './layout/soundhole.js';
import { tucked } from './layout/tucked.js';
import { thicknessMap } from './plate-thickness.js';
import { ridingOn } from './riding.js';

type PlateName = 'top' | 'back';

/** Points along each side of the outline: close enough that a chord misses the curve by less than 0.2 mm. */
const POINTS_A_SIDE = 40;

export function plateTask(ask: Ask, plate: PlateName): PlateTask {
  return ask.shared(`${plate} for the solver`, plate === 'top' ? topTask : backTask);
}

const topTask = (ask: Ask) => makeTask(ask, 'top');
const backTask = (ask: Ask) => makeTask(ask, 'back');

function makeTask(ask: Ask, plate: PlateName): PlateTask {
  const parameters: PlateParameter[] = [];
  const root = rootOf(plate);
  const patches = plate === 'top' ? patchesOf(ask, parameters) : [];
  const rings = plate === 'top' && hasHolePatch(ask) ? [holePatch(ask, parameters)] : [];
  const riding = ridingOn(ask, plate);
  parameters.push(...riding.parameters);
  const outline = outlineOf(ask);
  const model: TopModel = {
    outline,
    holes: plate === 'top' ? holesOf(ask) : [],
    plate: plateOf(ask, plate, parameters),
    braces: ask.members(root).map((member, i) => braceIn(ask, outline, { plate, member, place: i }, parameters)),
    patches,
    ...(rings.length > 0 ? { rings } : {}),
    ...(riding.masses.length > 0 ? { masses: riding.masses } : {}),
    ...(riding.film ? { film: riding.film } : {}),
    edge: edgeOf(ask, plate, parameters),
    load: patches.length > 0 ? loadOf(ask, parameters) : undefined,
  };
  return { model, parameters, key: JSON.stringify([model, parameters.map(({ path }) => path)]) };
}

function outlineOf(ask: Ask): Point[] {
  return bodyRing(bodyOf(ask), POINTS_A_SIDE).map(([x, y]): Point => [rounded(x), rounded(y)]);
}

/** To the micrometre: what differs by less is the same plate. */
function rounded(metres: number): number {
  return Math.round(metres * 1e6) / 1e6;
}

function holesOf(ask: Ask): TopModel['holes'] {
  const hole = soundholeIfAny(ask);
  if (!hole) return [];
  const isRound = hole.shape === 'oval' && hole.along === hole.across;
  return [isRound ? { centre: hole.centre, diameter: hole.along } : { outline: soundholeEdge(hole) }];
}

function plateOf(ask: Ask, plate: PlateName, parameters: PlateParameter[]): Plate {
  const centre = ask.number(`${plate}.thickness`);
  const edge = ask.numberIf(`${plate}.edge-thickness`);
  const map = thicknessMap(ask, plate);
  const isTapered = !map && edge !== undefined && edge !== centre;
  parameters.push(
    ...(isTapered
      ? (['centre', 'edge'] as const).map((quantity): PlateParameter => {
          const path = quantity === 'centre' ? `${plate}.thickness` : `${plate}.edge-thickness`;
          return { path, parameter: { part: 'taper', quantity } };
        })
      : map
        ? map.map(({ path }, index): PlateParameter => ({ path, parameter: { part: 'map', index } }))
        : [{ path: `${plate}.thickness`, parameter: { part: 'plate', quantity: 'thickness' } as const }]),
    ...woodParameters(`${plate}.wood`, (quantity) => ({ part: 'plate', quantity })),
  );
  return {
    wood: woodOf(ask, `${plate}.wood`),
    thickness: map
      ? { kind: 'points', points: map.map(({ point }) => point) }
      : !isTapered
        ? centre
        : { kind: 'edge-taper', centre, edge, width: taken(ask, `${plate}.edge-width`) },
    grain: taken(ask, `${plate}.grain-angle`),
    ...domeOf(ask, plate, parameters),
  };
}

/** The dome stiffens a plate much as an arch does; unsaid, the plate is flat. */
function domeOf(ask: Ask, plate: PlateName, parameters: PlateParameter[]): { readonly dome?: number } {
  const path = `body.${plate}-radius`;
  const dome = ask.numberIf(path);
  if (dome === undefined) return {};
  parameters.push({ path, parameter: { part: 'plate', quantity: 'dome' } });
  return { dome };
}

function edgeOf(ask: Ask, plate: PlateName, parameters: PlateParameter[]): TopModel['edge'] {
  const path = `${plate}.rim-stiffness`;
  const rotation = ask.numberIf(path);
  if (rotation === undefined) return { kind: 'hinged', inPlane: 'held' };
  parameters.push({ path, parameter: { part: 'edge', quantity: 'rotation' } });
  return { kind: 'elastic', inPlane: 'held', rotation };
}

function woodOf(ask: Ask, wood: string): OrthotropicWood {
  return {
    eAlong: ask.number(`${wood}.modulus.along`),
    eAcross: ask.number(`${wood}.modulus.across`),
    poisson: ask.number(`${wood}.poisson`),
    shearInPlane: ask.number(`${wood}.modulus.twist`),
    shearAlong: ask.number(`${wood}.modulus.through-shear`),
    shearAcross: ask.number(`${wood}.modulus.rolling-shear`),
    density: ask.number(`${wood}.density`),
  };
}

const WOOD_PATHS: readonly (readonly [path: string, constant: WoodConstant])[] = [
  ['modulus.along', 'eAlong'],
  ['modulus.across', 'eAcross'],
  ['modulus.twist', 'shearInPlane'],
  ['modulus.through-shear', 'shearAlong'],
  ['modulus.rolling-shear', 'shearAcross'],
  ['density', 'density'],
];

function woodParameters(wood: string, parameter: (constant: WoodConstant) => TopParameter): PlateParameter[] {
  return WOOD_PATHS.map(([path, constant]) => ({ path: `${wood}.${path}`, parameter: parameter(constant) }));
}

function rootOf(plate: PlateName) {
  return plate === 'top' ? 'bracing' : 'back-bracing';
}

function braceIn(
  ask: Ask,
  outline: readonly Point[],
  { plate, member, place }: { readonly plate: PlateName; readonly member: string; readonly place: number },
  parameters: PlateParameter[],
): Brace {
  const root = rootOf(plate);
  const at = (word: string) => `${root}.${member}.${word}`;
  const wood = woodPath(ask, root, plate, member);
  const carved = braceOf(ask, root, member);
  const { points } = braceLineOf(ask, root, member);
  const line = ask.word(at('ends')) === 'free' ? { points, before: 0 } : tucked(outline, points);
  parameters.push(
    { path: at('height'), parameter: { part: 'brace', index: place, quantity: 'height' } },
    { path: at('width'), parameter: { part: 'brace', index: place, quantity: 'width' } },
    ...woodParameters(wood, (quantity) => ({ part: 'brace', index: place, quantity })),
  );
  return {
    name: member,
    axis: line.points,
    wood: woodOf(ask, wood),
    profile: carved.profile,
    gable: carved.gable,
    width: carved.width,
    height: heightsOf(carved, line.before),
  };
}

/** Even, or sampled closely enough to follow tapers and scallops; `before` as the line is tucked into the lining. */
function heightsOf(brace: CarvedBrace, before: number): Brace['height'] {
  if (!brace.ends && !brace.scallops && !brace.stations) return brace.height;
  const heightAt = braceHeight(brace);
  const count = Math.max(8, Math.ceil(brace.length / 0.01));
  return Array.from({ length: count + 1 }, (_, i) => {
    const at = (brace.length * i) / count;
    return { at: at + before, height: heightAt(at) };
  });
}

function patchesOf(ask: Ask, parameters: PlateParameter[]): Patch[] {
  if (ask.word('bridge.wood') === undefined && ask.numberIf('bridge.length') === undefined) return [];
  const [length, width, height] = ['length', 'width', 'height'].map((side) => ask.number(`bridge.${side}`)) as [
    number,
    number,
    number,
  ];
  const wood = woodOf(ask, 'bridge.wood');
  const carried = ask.number('bridge.moving-mass') - taken(ask, 'bridge.plate.mass');
  const density = carried / (length * width * height);
  const heavier = { part: 'patch', index: 0, quantity: 'density' } as const;
  parameters.push(
    { path: 'bridge.height', parameter: { part: 'patch', index: 0, quantity: 'thickness' } },
    // What the block weighs is given: a higher one is no heavier, but less dense.
    { path: 'bridge.height', parameter: heavier, factor: -density / height },
    { path: 'bridge.moving-mass', parameter: heavier, factor: 1 / (length * width * height) },
    { path: 'bridge.plate.mass', parameter: heavier, factor: -1 / (length * width * height) },
    ...woodParameters('bridge.wood', (quantity) => ({ part: 'patch', index: 0, quantity })).filter(
      ({ path }) => path !== 'bridge.wood.density',
    ),
  );
  const bridge: Patch = {
    name: 'bridge',
    outline: ask.shared(BRIDGE.key, BRIDGE.make),
    // The block weighs what bridge, saddle, pins and pickup weigh together.
    wood: { ...wood, density },
    thickness: height,
    grain: Math.PI / 2,
    side: 'over',
  };
  const thickness = ask.numberIf('bridge.plate.thickness');
  if (thickness === undefined) return [bridge];
  parameters.push(
    { path: 'bridge.plate.thickness', parameter: { part: 'patch', index: 1, quantity: 'thickness' } },
    ...woodParameters('bridge.plate.wood', (quantity) => ({ part: 'patch', index: 1, quantity })),
  );
  const under: Patch = {
    name: 'bridge plate',
    outline: ask.shared(BRIDGE_PLATE.key, BRIDGE_PLATE.make),
    wood: woodOf(ask, 'bridge.plate.wood'),
    thickness,
    grain: Math.PI / 2 + taken(ask, 'bridge.plate.grain-angle'),
    side: 'under',
  };
  return [bridge, under];
}

function holePatch(ask: Ask, parameters: PlateParameter[]): HoleRing {
  parameters.push(
    { path: 'soundhole.patch.thickness', parameter: { part: 'ring', index: 0, quantity: 'thickness' } },
    { path: 'soundhole.patch.width', parameter: { part: 'ring', index: 0, quantity: 'width' } },
    ...woodParameters('soundhole.patch.wood', (quantity) => ({ part: 'ring', index: 0, quantity })),
  );
  return {
    name: 'patch around the soundhole',
    hole: 0,
    width: ask.number('soundhole.patch.width'),
    wood: woodOf(ask, 'soundhole.patch.wood'),
    thickness: ask.number('soundhole.patch.thickness'),
    grain: taken(ask, 'soundhole.patch.grain-angle'),
  };
}

function loadOf(ask: Ask, parameters: PlateParameter[]): TopModel['load'] {
  const tension = ask.numberIf('strings.total-tension');
  const couple = ask.numberIf('bridge.torque');
  if (tension === undefined || couple === undefined) return { patch: 'bridge' };
  parameters.push(
    { path: 'strings.total-tension', parameter: { part: 'load', quantity: 'shear' } },
    { path: 'bridge.torque', parameter: { part: 'load', quantity: 'couple' } },
  );
  return { patch: 'bridge', direction: 0, couple, shear: tension };
}
