/** Finds what cannot be solved in a model, before anything is computed: one plain sentence each, with its place. */
import { closedCurve } from './mesh/curve.js';
import { holeOutline, onPlate, withoutRepeats } from './mesh/mesh-lines.js';
import { PLATE_LIMITS } from './limits.js';
import type { Patch, Point, ThicknessMap, TopModel, TopProblem } from './model.js';
import { contains, crossesItself, crossing, distanceToRim, signedArea } from './mesh/polygon.js';
import { validateBrace, validateBraceLines } from './validate-braces.js';
import { validateRiding, validateRings } from './validate-riding.js';
import { above, Findings, finitePoints, validateWood } from './validate-parts.js';

const MOST_POINTS = 4000;
const MOST_PATCHES = 30;

/**
 * Errors keep the solver from starting; warnings (a brace cut at the edge) do not. Never throws.
 *
 * Where things lie: outline, holes, braces' lines, patches' outlines, supports. Independent of sizes and wood.
 */
export function validatePlan(model: TopModel): readonly TopProblem[] {
  const found = new Findings();
  const outline = validateOutline(found, 'outline', 'outline', model.outline);
  const holes = (model.holes ?? []).map((hole, i) => {
    const path = `holes.${i}`;
    if (!('outline' in hole)) {
      if (!finitePoints([hole.centre])) {
        found.error(path, 'The place of the soundhole is not a number.');
        return;
      }
      if (!above(found, `${path}.diameter`, 'diameter of the soundhole', hole.diameter)) return undefined;
    }
    return validateOutline(found, path, 'soundhole', holeOutline(hole));
  });
  if (outline) {
    holes.forEach((hole, i) => {
      if (hole) validateHole(found, `holes.${i}`, hole, outline, holes.slice(0, i));
    });
    validatePatches(
      found,
      model,
      outline,
      holes.filter((hole) => hole !== undefined),
    );
    validateRests(found, model, outline);
  }
  validateBraceLines(found, model, outline !== undefined && !found.failed);
  return found.list;
}

/** How large, thick and stiff things are, and what loads them. */
export function validateSizes(model: TopModel): readonly TopProblem[] {
  const found = new Findings();
  validatePlate(found, model);
  (model.braces ?? []).forEach((brace, i) => validateBrace(found, brace, `braces.${i}`));
  (model.patches ?? []).forEach((patch, i) => validatePatch(found, patch, `patches.${i}`));
  validateRings(found, model);
  validateRiding(found, model);
  validateEdge(found, model);
  validateLoad(found, model);
  return found.list;
}

/** m: least thickness anywhere. */
export function thinnest(map: ThicknessMap): number {
  if (typeof map === 'number') return map;
  if (map.kind === 'edge-taper') return Math.min(map.centre, map.edge);
  return Math.min(...map.points.map(({ thickness }) => thickness));
}

function validateOutline(
  found: Findings,
  path: string,
  what: string,
  points: readonly Point[],
): readonly Point[] | undefined {
  if (!finitePoints(points)) {
    found.error(path, `A point of the ${what} is not a number.`);
    return;
  }
  const polygon = withoutRepeats(points);
  if (polygon.length < 3) {
    found.error(path, `The ${what} needs at least three points.`);
    return;
  }
  if (polygon.length > MOST_POINTS) {
    found.error(path, `The ${what} has ${polygon.length} points; ${MOST_POINTS} are plenty.`);
    return;
  }
  if (crossesItself(polygon)) {
    found.error(path, `The ${what} crosses itself.`);
    return;
  }
  const area = Math.abs(signedArea(polygon));
  if (!(area > 1e-6)) {
    found.error(path, `The ${what} encloses next to nothing.`);
    return;
  }
  if (!(area < 1e4)) {
    found.error(path, `The ${what} is larger than any instrument.`);
    return;
  }
  return polygon;
}

/** Shallow: not steeper than about one in four at the edge. */
function validateDome(found: Findings, dome: number | undefined, across: number, edge: TopModel['edge']): void {
  if (dome === undefined) return;
  if (!(dome > 2 * across)) found.error('plate.dome', 'The dome of the top is too steep for its size.');
  if (!(dome < 1e6)) found.error('plate.dome', 'The radius of the dome is not a number; leave it out for a flat top.');
  if (edge.kind === 'free') found.error('plate.dome', 'A domed top with a free edge is not worked out.');
}

function validatePlate(found: Findings, { plate, outline, edge }: TopModel): void {
  validateDome(found, plate.dome, Math.sqrt(Math.abs(signedArea(outline))), edge);
  validateWood(found, 'plate.wood', 'top', plate.wood);
  if (!Number.isFinite(plate.grain)) found.error('plate.grain', 'The direction of the grain is not a number.');
  const map = plate.thickness;
  const path = 'plate.thickness';
  const values: readonly number[] =
    typeof map === 'number'
      ? [map]
      : map.kind === 'edge-taper'
        ? [map.centre, map.edge]
        : map.points.map(({ thickness }) => thickness);
  if (values.length === 0) {
    found.error(path, 'The thickness of the top is given at no point.');
    return;
  }
  if (values.length > PLATE_LIMITS.mapPoints) {
    found.error(path, `No more than ${PLATE_LIMITS.mapPoints} points of a thickness map can be solved.`);
    return;
  }
  if (!values.every((value) => above(found, path, 'thickness of the top', value))) return;
  if (typeof map !== 'number') {
    if (map.kind === 'edge-taper' && !(map.width >= 0 && Number.isFinite(map.width))) {
      found.error(path, 'The width of the thinned edge is not a number above zero.');
      return;
    }
    if (map.kind === 'points' && !finitePoints(map.points.map(({ at }) => at))) {
      found.error(path, 'A place where the thickness is given is not a number.');
      return;
    }
  }
  const across = Math.sqrt(Math.abs(signedArea(outline)));
  if (Math.max(...values) > 0.2 * across)
    found.error(path, 'The top is too thick for its size to be taken as a plate.');
  if (Math.min(...values) < 1e-5 * across) found.error(path, 'The top is thinner than paper could be at this size.');
}

function validateHole(
  found: Findings,
  path: string,
  hole: readonly Point[],
  outline: readonly Point[],
  others: readonly (readonly Point[] | undefined)[],
): void {
  const inside = hole.filter(([x, y]) => contains(outline, x, y)).length;
  if (inside === 0) {
    found.error(path, 'The soundhole lies outside the outline.');
    return;
  }
  const gap = Math.min(...hole.map(([x, y]) => distanceToRim(outline, x, y)));
  if (inside < hole.length || gap < 1e-3 * Math.sqrt(Math.abs(signedArea(outline)))) {
    found.error(path, 'The soundhole cuts the outline.');
    return;
  }
  for (const other of others) {
    if (!other) continue;
    const overlap = hole.some(([x, y]) => contains(other, x, y)) || other.some(([x, y]) => contains(hole, x, y));
    if (overlap) found.error(path, 'Two soundholes overlap.');
  }
}

function validatePatches(
  found: Findings,
  model: TopModel,
  outline: readonly Point[],
  holes: readonly (readonly Point[])[],
): void {
  const patches = model.patches ?? [];
  if (patches.length > MOST_PATCHES) {
    found.error('patches', `No more than ${MOST_PATCHES} glued parts can be solved.`);
    return;
  }
  const rim = closedCurve(outline);
  const gaps = holes.map((hole) => closedCurve(hole));
  patches.forEach((patch, i) => {
    const path = `patches.${i}.outline`;
    const what = patch.name || 'patch';
    const shape = validateOutline(found, path, what, patch.outline);
    if (!shape) return;
    const inside = shape.filter(([x, y]) => contains(outline, x, y)).length;
    if (inside === 0) {
      found.error(path, `The ${what} lies off the top.`);
      return;
    }
    if (inside < shape.length) {
      found.error(path, `The ${what} hangs over the edge of the top.`);
      return;
    }
    const overHole =
      shape.some(([x, y]) => !onPlate(x, y, rim, gaps)) ||
      holes.some((hole) => hole.some(([x, y]) => contains(shape, x, y)));
    if (overHole) found.error(path, `The ${what} lies over the soundhole.`);
    patches.slice(0, i).forEach((other) => {
      if (other.side !== patch.side || !overlap(shape, withoutRepeats(other.outline))) return;
      found.warning(
        path,
        `The ${other.name || 'patch'} and the ${what} overlap on the same side of the top; where they do, both are counted, one on the other.`,
      );
    });
  });
}

function overlap(a: readonly Point[], b: readonly Point[]): boolean {
  const sides = (p: readonly Point[]) => p.map((at, k) => [at, p[(k + 1) % p.length]!] as const);
  return (
    a.some(([x, y]) => contains(b, x, y)) ||
    b.some(([x, y]) => contains(a, x, y)) ||
    sides(a).some(([p, q]) => sides(b).some(([r, s]) => crossing(p, q, r, s) !== undefined))
  );
}

function validatePatch(found: Findings, patch: Patch, path: string): void {
  const what = patch.name || 'patch';
  validateWood(found, `${path}.wood`, what, patch.wood);
  if (!Number.isFinite(patch.grain)) {
    found.error(`${path}.grain`, `The direction of the grain of the ${what} is not a number.`);
  }
  if (!above(found, `${path}.thickness`, `thickness of the ${what}`, patch.thickness)) return;
  if (patch.thickness > 0.5 * Math.sqrt(Math.abs(signedArea(patch.outline)))) {
    found.error(`${path}.thickness`, `The ${what} is too thick for its size to be taken as glued flat.`);
  }
}

function validateEdge(found: Findings, { edge }: TopModel): void {
  if (edge.kind === 'elastic' && !(edge.rotation >= 0 && edge.rotation < 1e9)) {
    found.error('edge.rotation', 'The stiffness of the edge against turning must be a number from zero up.');
  }
}

function validateRests(found: Findings, { rests = [], edge }: TopModel, outline: readonly Point[]): void {
  rests.forEach(({ from, to }, i) => {
    const path = `rests.${i}`;
    if (!finitePoints([from, to])) {
      found.error(path, 'A point of a support is not a number.');
      return;
    }
    const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
    const off = ![from, middle, to].some(([x, y]) => contains(outline, x, y));
    if (off || !(Math.hypot(to[0] - from[0], to[1] - from[1]) > 1e-3))
      found.error(path, 'A support does not lie under the top.');
  });
  if (edge.kind === 'free' && rests.length === 1) {
    found.error('rests', 'A top that is free at its edge needs at least two supports to rest on.');
  }
}

function validateLoad(found: Findings, model: TopModel): void {
  const { load, patches, edge } = model;
  if (!load) return;
  const values = [
    load.direction,
    load.couple,
    load.shear,
    load.pressure,
    ...(load.forces ?? []).flatMap(({ at, force }) => [...at, force]),
  ];
  if (values.some((value) => value !== undefined && !Number.isFinite(value))) {
    found.error('load', 'A load is not a number.');
    return;
  }
  const named = load.patch !== undefined && (patches ?? []).some(({ name }) => name === load.patch);
  if (load.patch !== undefined && !named)
    found.error('load.patch', `There is no part called ${load.patch} to carry the strings.`);
  if (!named && (load.couple || load.shear)) found.error('load', 'The pull of the strings needs a bridge to act on.');
  if (edge.kind === 'free' && !model.rests?.length)
    found.warning('load', 'A top that is not held anywhere cannot carry a load: only its modes are computed.');
}
