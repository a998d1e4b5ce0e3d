/** A model on a mesh: where its nodes are, what each element is made of, what each brace piece is. Cheap to make anew when a size changes. */
import { endHolds, holdEnds, type EndHold } from '../mesh/brace-ends.js';
import { closedCurve } from '../mesh/curve.js';
import { LAMINATE_SIZE, laminate, type WoodLayer } from '../element/laminate.js';
import { patchInset, withoutRepeats } from '../mesh/mesh-lines.js';
import type { TopMesh } from '../mesh/mesh.js';
import type { Brace, Point, TopModel } from '../model.js';
import { counterClockwise, crossing, signedArea } from '../mesh/polygon.js';
import { RIB_SIZE, heightAt, ribPiece, shearFactorOf, type LapZone } from '../element/rib-section.js';
import { ringCovers, type RingCover, sameRings, thinned } from './hole-rings.js';
import { ridingOn, type Riding } from './riding.js';
import { softenRim } from '../element/rim-twist.js';
import { crossForce, stiffenBeside } from '../element/under-brace.js';
import { thicknessAt } from '../element/thickness-map.js';

export interface DiscreteTop {
  readonly model: TopModel;
  readonly mesh: TopMesh;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** m, height of the dome at each node, all the same where the plate is flat */
  readonly z: Float64Array;
  /** m, plate thickness per node */
  readonly thickness: Float64Array;
  /** Laminate rows, `LAMINATE_SIZE` numbers each, and the row of each quadrilateral. */
  readonly laminates: Float64Array;
  readonly laminateOf: Int32Array;
  /** The same rows without what braces do to them. */
  readonly bare: Float64Array;
  /** N/m: what each brace piece holds across it, see `under-brace.ts`. */
  readonly cross: Float64Array;
  /** `RIB_SIZE` numbers per brace piece. */
  readonly ribs: Float64Array;
  /** What rides on the plate, by quadrilateral. */
  readonly riding: Riding;
  /** What the square ends of braces hold, and the widths of the braces for which that is so. */
  readonly holds: readonly EndHold[];
  readonly widths: readonly number[];
  /** What of each quadrilateral the rings around holes cover. */
  readonly covers: readonly RingCover[];
  /** N·m/rad per m along the rim */
  readonly rimSpring: number;
}

/** Puts the model's sizes on the mesh. The model must be checked, and the mesh made for its plan. `like`: a top of the same mesh, of which what is the same is taken. */
export function discreteTop(model: TopModel, mesh: TopMesh, like?: DiscreteTop): DiscreteTop {
  const { x, y } = placed(model, mesh, like);
  const near = like?.x === x ? like : undefined;
  const widths = (model.braces ?? []).map(({ width }) => width);
  const isAlike = near?.widths.every((width, i) => width === widths[i]);
  const holds = near && isAlike ? near.holds : endHolds(model, mesh, x, y);
  const isKept = near && samePlate(near.model, model) && sameQuads(near.holds, holds);
  const glued = isKept ? near : gluedTop(model, mesh, x, y, near, holds);
  const { thickness, laminateOf, bare } = glued;
  const laminates = bare.slice();
  const cross = new Float64Array(mesh.ribBrace.length);
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    const index = mesh.ribBrace[r]!;
    const brace = model.braces![index]!;
    const [a, b] = [mesh.ribs[2 * r]!, mesh.ribs[2 * r + 1]!];
    cross[r] =
      near?.model.braces![index] === brace
        ? near.cross[r]!
        : crossForce(brace, heightAt(brace.height, alongAxis(brace.axis, (x[a]! + x[b]!) / 2, (y[a]! + y[b]!) / 2)));
    stiffenBeside(mesh, x, y, r, brace, cross[r]!, (thickness[a]! + thickness[b]!) / 2, laminateOf, laminates);
  }
  holdEnds(holds, laminateOf, laminates);
  return {
    model,
    mesh,
    x,
    y,
    z: near && model.plate.dome === near.model.plate.dome ? near.z : domed(model, x, y),
    holds,
    covers: glued.covers,
    widths,
    thickness,
    bare,
    laminates,
    laminateOf,
    cross,
    ribs: ribRows(model, mesh, x, y, thickness, near),
    riding: near && model.masses === near.model.masses ? near.riding : ridingOn(model, mesh, x, y),
    rimSpring: rimSpringOf(model),
  };
}

type GluedTop = Pick<DiscreteTop, 'thickness' | 'covers' | 'bare' | 'laminateOf'>;

/** Whether everything but braces and loads is the same in both: what they are built of is shared then, not copied. */
function samePlate(a: TopModel, b: TopModel): boolean {
  return (
    a.plate === b.plate && a.patches === b.patches && a.rings === b.rings && a.film === b.film && a.edge === b.edge
  );
}

/** Whether the same quadrilaterals have rows of their own for what ends of braces hold. */
function sameQuads(a: readonly EndHold[], b: readonly EndHold[]): boolean {
  return a.length === b.length && a.every(({ quad }, i) => quad === b[i]!.quad);
}

function rimSpringOf({ edge }: TopModel): number {
  return edge.kind === 'elastic' ? edge.rotation : 0;
}

/** Plate, patches, rings and film, before what braces do to them. */
function gluedTop(
  model: TopModel,
  mesh: TopMesh,
  x: Float64Array,
  y: Float64Array,
  near: DiscreteTop | undefined,
  holds: readonly EndHold[],
): GluedTop {
  const thickness = thicknesses(model, x, y);
  const quads = mesh.quads.length / 4;
  const laminateOf = new Int32Array(quads);
  const rows: number[] = [];
  /** Row by the patches above and below, then by thickness. */
  const known = new Map<number, Map<number, number>>();
  const shares = massShares(model, mesh, x, y);
  const covers = near && sameRings(near.covers, model) ? near.covers : ringCovers(model, mesh, x, y);
  const row = new Float64Array(LAMINATE_SIZE);
  const softened = [
    { sides: model.edge.kind === 'clamped' ? new Int32Array(0) : mesh.rimSides, spring: rimSpringOf(model) },
    { sides: mesh.holeSides, spring: 0 },
  ];
  const own = new Uint8Array(quads);
  for (const { quad } of holds) own[quad] = 1;
  for (const { sides } of softened) for (let i = 0; i < sides.length; i += 2) own[sides[i]!] = 1;
  for (const quad of mesh.ribSides) if (quad >= 0) own[quad] = 1;
  for (let q = 0; q < quads; q++) {
    let h = 0;
    for (let k = 0; k < 4; k++) h += thickness[mesh.quads[4 * q + k]!]! / 4;
    const bits = mesh.patchesOf[q]!;
    const ringed = covers.some((cover) => cover.shares[q]! > 0);
    const alike = known.get(bits) ?? new Map<number, number>();
    let index = ringed ? undefined : alike.get(h);
    if (index === undefined) {
      index = rows.length / LAMINATE_SIZE;
      const layers = layersOf(model, bits, h, shares);
      if (ringed) addRings(model, covers, q, layers);
      const uncoated = (model.patches ?? []).some(({ side }, i) => side === 'over' && bits & (1 << i));
      laminate(layers, model.plate.grain, row, 0, uncoated ? undefined : model.film);
      for (const value of row) rows.push(value);
      if (!ringed) known.set(bits, alike.set(h, index));
    }
    if (own[q] && !ringed) {
      // On the rim, beside a brace or ahead of its end it has a row of its own, to be changed in that direction.
      const from = index * LAMINATE_SIZE;
      index = rows.length / LAMINATE_SIZE;
      for (let k = 0; k < LAMINATE_SIZE; k++) rows.push(rows[from + k]!);
    }
    laminateOf[q] = index;
  }
  const bare = Float64Array.from(rows);
  for (const { sides, spring } of softened) softenRim(mesh, x, y, sides, laminateOf, bare, spring);
  return { thickness, covers, laminateOf, bare };
}

function thicknesses({ plate, outline }: TopModel, x: Float64Array, y: Float64Array): Float64Array {
  const map = plate.thickness;
  if (typeof map === 'number') return new Float64Array(x.length).fill(map);
  const curve = closedCurve(withoutRepeats(outline));
  return Float64Array.from(x, (px, i) => thicknessAt(map, curve, px, y[i]!));
}

/** Heights on a sphere, to the second order, about the middle of the plan. */
function domed({ outline, plate: { dome } }: TopModel, x: Float64Array, y: Float64Array): Float64Array {
  if (dome === undefined) return new Float64Array(x.length);
  const middle = (axis: 0 | 1): number => {
    const places = outline.map((point) => point[axis]);
    return (Math.min(...places) + Math.max(...places)) / 2;
  };
  const [mx, my] = [middle(0), middle(1)];
  return x.map((px, i) => -((px - mx) ** 2 + (y[i]! - my) ** 2) / (2 * dome));
}

/** Node places, with the rims of patches drawn in as far as their thickness asks. */
function placed(model: TopModel, mesh: TopMesh, like: DiscreteTop | undefined): { x: Float64Array; y: Float64Array } {
  const x = mesh.x.slice();
  const y = mesh.y.slice();
  const further = (model.patches ?? []).map(
    ({ outline, thickness }, i) => patchInset(counterClockwise(withoutRepeats(outline)), thickness) - mesh.insets[i]!,
  );
  for (let i = 0; i < x.length; i++) {
    const patch = mesh.movedBy[i]!;
    if (patch < 0) continue;
    x[i]! += further[patch]! * mesh.moveX[i]!;
    y[i]! += further[patch]! * mesh.moveY[i]!;
  }
  return like && same(x, like.x) && same(y, like.y) ? like : { x, y };
}

function same(a: Float64Array, b: Float64Array): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

function layersOf(model: TopModel, bits: number, h: number, shares: readonly number[]): WoodLayer[] {
  const { wood, grain } = model.plate;
  const layers: WoodLayer[] = [{ wood, grain, from: -h / 2, to: h / 2, massShare: 1 }];
  let top = h / 2;
  let bottom = -h / 2;
  (model.patches ?? []).forEach((patch, i) => {
    if (!(bits & (1 << i))) return;
    const t = patch.thickness;
    const layer = { wood: patch.wood, grain: patch.grain, massShare: shares[i]! };
    if (patch.side === 'over') {
      layers.push({ ...layer, from: top, to: top + t });
      top += t;
    } else {
      layers.unshift({ ...layer, from: bottom - t, to: bottom });
      bottom -= t;
    }
  });
  return layers;
}

/** Under whatever is glued there already. */
function addRings({ rings = [] }: TopModel, covers: readonly RingCover[], q: number, layers: WoodLayer[]): void {
  rings.forEach(({ wood, grain, thickness }, i) => {
    const { shares, massShare } = covers[i]!;
    const share = shares[q]!;
    if (share === 0) return;
    const { from } = layers[0]!;
    layers.unshift({ wood: thinned(wood, share), grain, massShare, from: from - thickness, to: from });
  });
}

/** Glued area over stiff area of each patch, so that its whole mass is counted. */
function massShares(model: TopModel, mesh: TopMesh, x: Float64Array, y: Float64Array): number[] {
  const covered = new Float64Array(model.patches?.length ?? 0);
  for (let q = 0; q < mesh.patchesOf.length; q++) {
    const bits = mesh.patchesOf[q]!;
    if (bits === 0) continue;
    const area = quadArea(mesh, x, y, q);
    for (let i = 0; i < covered.length; i++) if (bits & (1 << i)) covered[i]! += area;
  }
  return Array.from(covered, (area, i) => (area > 0 ? Math.abs(signedArea(model.patches![i]!.outline)) / area : 1));
}

function ribRows(
  model: TopModel,
  mesh: TopMesh,
  x: Float64Array,
  y: Float64Array,
  thickness: Float64Array,
  near: DiscreteTop | undefined,
): Float64Array {
  const braces = model.braces ?? [];
  const zones = lapZones(model);
  const factors = braces.map(({ profile, gable }) => shearFactorOf(profile, gable));
  const rows = new Float64Array(mesh.ribBrace.length * RIB_SIZE);
  const old = near && sameMatter(near.thickness, thickness) ? near : undefined;
  const oldZones = old && lapZones(old.model);
  const kept = braces.map((brace, i) => old?.model.braces![i] === brace && sameZones(oldZones![i]!, zones[i]!));
  for (let r = 0; r < mesh.ribBrace.length; r++) {
    const index = mesh.ribBrace[r]!;
    if (kept[index]) {
      rows.set(old!.ribs.subarray(r * RIB_SIZE, (r + 1) * RIB_SIZE), r * RIB_SIZE);
      continue;
    }
    const a = mesh.ribs[2 * r]!;
    const b = mesh.ribs[2 * r + 1]!;
    const { axis } = braces[index]!;
    const from = alongAxis(axis, x[a]!, y[a]!);
    const to = alongAxis(axis, x[b]!, y[b]!);
    const h = (thickness[a]! + thickness[b]!) / 2;
    ribPiece(braces[index]!, factors[index]!, zones[index]!, from, to, h, rows, r * RIB_SIZE);
  }
  return rows;
}

function sameZones(a: readonly LapZone[], b: readonly LapZone[]): boolean {
  return (
    a.length === b.length &&
    a.every(({ from, to, kept, filler }, i) => {
      const other = b[i]!;
      return from === other.from && to === other.to && kept === other.kept && filler === other.filler;
    })
  );
}

/** m along the brace's centre line of the point nearest to `(x, y)`; may lie before its start or beyond its end by what the mesh moved it. */
export function alongAxis(axis: readonly Point[], x: number, y: number): number {
  let best = 0;
  let least = Infinity;
  let start = 0;
  for (let i = 0; i + 1 < axis.length; i++) {
    const [ax, ay] = axis[i]!;
    const [bx, by] = axis[i + 1]!;
    const dx = bx - ax;
    const dy = by - ay;
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    const t = Math.min(length, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / length));
    const distance = Math.hypot(x - ax - (t * dx) / length, y - ay - (t * dy) / length);
    if (distance < least) {
      least = distance;
      best = start + t;
    }
    start += length;
  }
  return best;
}

/** The earlier brace of a pair keeps the glued half, the later one the free half; or both run through and share the mass. */
function lapZones(model: TopModel): LapZone[][] {
  const braces = model.braces ?? [];
  const zones: LapZone[][] = braces.map(() => []);
  const [first, second] = model.crossing === 'solid' ? (['whole', 'whole'] as const) : (['glued', 'free'] as const);
  for (let i = 0; i < braces.length; i++) {
    for (let j = i + 1; j < braces.length; j++) {
      for (const { at, along, sine } of crossingsOf(braces[i]!, braces[j]!)) {
        const half = (width: number): number => width / 2 / Math.max(sine, 0.3);
        zones[i]!.push({
          from: at - half(braces[j]!.width),
          to: at + half(braces[j]!.width),
          kept: first,
          filler: braces[j]!.wood,
        });
        zones[j]!.push({
          from: along - half(braces[i]!.width),
          to: along + half(braces[i]!.width),
          kept: second,
          filler: braces[i]!.wood,
        });
      }
    }
  }
  return zones;
}

/** Where two braces cross; where one only butts against the other there is no lap. */
function crossingsOf(p: Brace, q: Brace): { at: number; along: number; sine: number }[] {
  const found: { at: number; along: number; sine: number }[] = [];
  for (let i = 0; i + 1 < p.axis.length; i++) {
    for (let j = 0; j + 1 < q.axis.length; j++) {
      const [a, b, c, d] = [p.axis[i]!, p.axis[i + 1]!, q.axis[j]!, q.axis[j + 1]!];
      const hit = crossing(a, b, c, d);
      if (!hit) continue;
      const x = a[0] + hit.t * (b[0] - a[0]);
      const y = a[1] + hit.t * (b[1] - a[1]);
      const lengths = Math.hypot(b[0] - a[0], b[1] - a[1]) * Math.hypot(d[0] - c[0], d[1] - c[1]);
      const sine = Math.abs((b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])) / lengths;
      const at = alongAxis(p.axis, x, y);
      const along = alongAxis(q.axis, x, y);
      const through = (s: number, brace: Brace, other: number): boolean =>
        s > other / 2 && s < alongAxis(brace.axis, ...brace.axis[brace.axis.length - 1]!) - other / 2;
      if (through(at, p, q.width) && through(along, q, p.width)) found.push({ at, along, sine });
    }
  }
  return found;
}

/** m² of quadrilateral `q`. */
export function quadArea({ quads }: TopMesh, x: Float64Array, y: Float64Array, q: number): number {
  const a = quads[4 * q]!;
  const b = quads[4 * q + 1]!;
  const c = quads[4 * q + 2]!;
  const d = quads[4 * q + 3]!;
  return ((x[c]! - x[a]!) * (y[d]! - y[b]!) - (x[d]! - x[b]!) * (y[c]! - y[a]!)) / 2;
}

/** Whether quadrilateral `q` has the same corners and the same laminate in both. */
export function sameQuad(a: DiscreteTop, b: DiscreteTop, q: number): boolean {
  if (!sameCorners(a, b, q)) return false;
  const one = a.laminateOf[q]! * LAMINATE_SIZE;
  const other = b.laminateOf[q]! * LAMINATE_SIZE;
  for (let k = 0; k < LAMINATE_SIZE; k++) if (a.laminates[one + k] !== b.laminates[other + k]) return false;
  return true;
}

export function sameCorners(a: DiscreteTop, b: DiscreteTop, q: number): boolean {
  for (let k = 4 * q; k < 4 * q + 4; k++) {
    const node = a.mesh.quads[k]!;
    if (a.x[node] !== b.x[node] || a.y[node] !== b.y[node] || a.z[node] !== b.z[node]) return false;
  }
  return true;
}

/** Whether brace piece `r` is the same in both. */
export function samePiece(a: DiscreteTop, b: DiscreteTop, r: number): boolean {
  for (let k = 2 * r; k < 2 * r + 2; k++) {
    const node = a.mesh.ribs[k]!;
    if (a.x[node] !== b.x[node] || a.y[node] !== b.y[node] || a.z[node] !== b.z[node]) return false;
  }
  for (let k = r * RIB_SIZE; k < (r + 1) * RIB_SIZE; k++) if (a.ribs[k] !== b.ribs[k]) return false;
  return true;
}

/** Whether two lists hold the same numbers. */
export function sameMatter(a: Float64Array, b: Float64Array): boolean {
  return a.length === b.length && a.every((value, i) => value === b[i]);
}
