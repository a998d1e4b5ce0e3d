/**
 * Constrained Delaunay triangulation. The Delaunay triangulation itself is the `delaunator` library's; the wanted edges are
 * recovered by flipping the edges that cross them (S.W. Sloan, A fast algorithm for generating constrained Delaunay
 * triangulations, Computers & Structures 47, 1993, 441–450). Meshes here have a few hundred points, so each wanted edge
 * looks at all edges.
 */
import Delaunator from 'delaunator';

export interface Triangulation {
  /** Three corners per triangle, counter-clockwise. */
  readonly corners: Int32Array;
  /** For each side (corner i to the next corner of its triangle): the same side in the neighbour, or −1. */
  readonly twins: Int32Array;
  /** 1 for each side that is one of the wanted edges. */
  readonly wanted: Uint8Array;
}

/** `edges`: pairs of point indices that must be sides; they may meet only at points. Undefined when one cannot be recovered. */
export function triangulate(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  edges: readonly (readonly [number, number])[],
): Triangulation | undefined {
  const coordinates = new Float64Array(2 * x.length);
  for (let i = 0; i < x.length; i++) {
    coordinates[2 * i] = x[i]!;
    coordinates[2 * i + 1] = y[i]!;
  }
  const delaunay = new Delaunator(coordinates);
  const net: Net = {
    x,
    y,
    // Delaunator calls its order counter-clockwise for y downward: turn the triangles round for y upward.
    corners: Int32Array.from(delaunay.triangles),
    twins: Int32Array.from(delaunay.halfedges),
    wanted: new Uint8Array(delaunay.triangles.length),
  };
  if (net.corners.length === 0) return undefined;
  if (orientation(net, net.corners[0]!, net.corners[1]!, net.corners[2]!) < 0) turnRound(net);
  for (const [a, b] of edges) if (!recover(net, a, b)) return undefined;
  restoreDelaunay(net);
  return net;
}

interface Net extends Triangulation {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}

const next = (side: number): number => (side % 3 === 2 ? side - 2 : side + 1);
const previous = (side: number): number => (side % 3 === 0 ? side + 2 : side - 1);

function turnRound(net: Net): void {
  const { corners, twins } = net;
  for (let t = 0; t < corners.length; t += 3) {
    const corner = corners[t + 1]!;
    corners[t + 1] = corners[t + 2]!;
    corners[t + 2] = corner;
    const twin = twins[t]!;
    twins[t] = twins[t + 2]!;
    twins[t + 2] = twin;
  }
  // Sides 0 and 2 of every triangle changed places, so the numbers they are known by changed too.
  for (let side = 0; side < twins.length; side++) {
    const twin = twins[side]!;
    if (twin >= 0) twins[side] = twin % 3 === 1 ? twin : twin % 3 === 0 ? twin + 2 : twin - 2;
  }
}

function orientation({ x, y }: Net, a: number, b: number, c: number): number {
  return (x[b]! - x[a]!) * (y[c]! - y[a]!) - (y[b]! - y[a]!) * (x[c]! - x[a]!);
}

/** Takes the first and the last of the crossing sides in turn, so that flipping cannot run in a circle. */
function recover(net: Net, a: number, b: number): boolean {
  for (let attempt = 0; attempt < 200; attempt++) {
    let crossing = -1;
    for (let side = 0; side < net.corners.length; side++) {
      const p = net.corners[side]!;
      const q = net.corners[next(side)]!;
      if ((p === a && q === b) || (p === b && q === a)) {
        mark(net, side);
        return true;
      }
      if (p === a || p === b || q === a || q === b || net.twins[side]! < side) continue;
      const crosses =
        orientation(net, p, q, a) * orientation(net, p, q, b) < 0 &&
        orientation(net, a, b, p) * orientation(net, a, b, q) < 0;
      if (crosses && !net.wanted[side] && convex(net, side))
        crossing = crossing < 0 || attempt % 2 === 1 ? side : crossing;
    }
    if (crossing < 0) return false;
    flip(net, crossing);
  }
  return false;
}

function mark(net: Net, side: number): void {
  net.wanted[side] = 1;
  const twin = net.twins[side]!;
  if (twin >= 0) net.wanted[twin] = 1;
}

function convex(net: Net, side: number): boolean {
  const twin = net.twins[side]!;
  const a = net.corners[side]!;
  const b = net.corners[next(side)]!;
  const c = net.corners[previous(side)]!;
  const d = net.corners[previous(twin)]!;
  return orientation(net, d, b, c) > 0 && orientation(net, c, a, d) > 0;
}

/** Replaces the side a–b between triangles a b c and b a d by c–d. */
function flip(net: Net, side: number): void {
  const { corners, twins, wanted } = net;
  const twin = twins[side]!;
  const bc = next(side);
  const ca = previous(side);
  const ad = next(twin);
  const db = previous(twin);
  const c = corners[ca]!;
  const d = corners[db]!;
  const outer = { bc: twins[bc]!, ad: twins[ad]!, bcWanted: wanted[bc]!, adWanted: wanted[ad]! };
  // Triangle of `side` becomes d–c… : sides (side: a→d), (bc: d→c), (ca: c→a); the other: (twin: b→c), (ad: c→d), (db: d→b).
  corners[bc] = d;
  corners[ad] = c;
  link(net, side, outer.ad, outer.adWanted);
  link(net, twin, outer.bc, outer.bcWanted);
  link(net, bc, ad, 0);
}

function link(net: Net, side: number, twin: number, wanted: number): void {
  net.twins[side] = twin;
  net.wanted[side] = wanted;
  if (twin >= 0) {
    net.twins[twin] = side;
    net.wanted[twin] = wanted;
  }
}

function restoreDelaunay(net: Net): void {
  for (let pass = 0; pass < 20; pass++) {
    let flips = 0;
    for (let side = 0; side < net.corners.length; side++) {
      if (net.twins[side]! < side || net.wanted[side] || !convex(net, side)) continue;
      if (oppositeAngles(net, side) > Math.PI + 1e-9) {
        flip(net, side);
        flips++;
      }
    }
    if (flips === 0) return;
  }
}

/** Sum of the two angles that look at a side; above π, the side is not Delaunay. */
function oppositeAngles(net: Net, side: number): number {
  const twin = net.twins[side]!;
  const a = net.corners[side]!;
  const b = net.corners[next(side)]!;
  return angle(net, net.corners[previous(side)]!, a, b) + angle(net, net.corners[previous(twin)]!, a, b);
}

function angle({ x, y }: Net, at: number, a: number, b: number): number {
  const ax = x[a]! - x[at]!;
  const ay = y[a]! - y[at]!;
  const bx = x[b]! - x[at]!;
  const by = y[b]! - y[at]!;
  return Math.atan2(Math.abs(ax * by - ay * bx), ax * bx + ay * by);
}
