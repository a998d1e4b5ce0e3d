/** The mesh of a top: quadrilaterals that follow its outline, holes, braces and patches. */
import type { ClosedCurve } from './curve.js';
import { layoutOf, type Layout } from './mesh-lines.js';
import { addInterior } from './interior.js';
import type { Point, TopModel } from '../model.js';
import { planarGraph, type GraphVertex, type PlanarGraph } from './planar-graph.js';
import { contains } from './polygon.js';
import { divide, pairTriangles, quadQuality, type Division, type Facet } from './quadrilaterals.js';
import { divisions, sizeField, type SizeAt } from './sizing.js';
import { smooth } from './smoothing.js';
import { triangulate } from './triangulation.js';

export interface TopMesh {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Four nodes per quadrilateral, counter-clockwise. */
  readonly quads: Int32Array;
  /** Per quadrilateral, bit i set when patch i covers it. */
  readonly patchesOf: Int32Array;
  /** Two nodes per piece of a brace, in order along it. */
  readonly ribs: Int32Array;
  /** Brace of each piece. */
  readonly ribBrace: Int32Array;
  /** Quadrilaterals on the two sides of each piece, −1 for none. */
  readonly ribSides: Int32Array;
  /** Nodes on the lines on which the plate rests. */
  readonly rested: Int32Array;
  /** Two nodes per side of the outline; holes are not in it. */
  readonly rim: Int32Array;
  /** Sides of the outline and then of the holes that have plate on one side only: quadrilateral and side number (0: first to second corner). */
  readonly rimSides: Int32Array;
  readonly holeSides: Int32Array;
  /** Per node, the patch that moves it when drawn in further, or −1; and the movement per metre. */
  readonly movedBy: Int32Array;
  readonly moveX: Float64Array;
  readonly moveY: Float64Array;
  /** Inset of each patch for which `x`, `y` hold, m. */
  readonly insets: Float64Array;
  /** Least sine of a corner: 1 rectangle, above 0 everywhere. */
  readonly worstCorner: number;
}

export type MeshResult = { readonly mesh: TopMesh } | { readonly failure: string };

/** A mesh whose corners are all opener than this is taken at once; otherwise the most open of a few is, if it is open enough. */
const OPEN = 0.12;
const OPEN_ENOUGH = 0.02;

/**
 * `spacing`: wished distance between neighbouring nodes, m. The same model and spacing always give the same mesh. Lines closer than
 * about a millimetre are drawn together; where that leaves a corner too narrow, more is, or the spacing changes a little.
 */
export function meshTop(model: TopModel, spacing: number): MeshResult {
  const coarse = 2 * spacing;
  const layout = layoutOf(model, 0.2 * coarse);
  const least = Math.min(0.0015, 0.12 * coarse);
  let best: MeshResult | undefined;
  for (const [share, tolerance] of [
    [1, least],
    [0.94, least],
    [1, 2 * least],
    [0.9, 2 * least],
    [1, 0.12 * coarse],
    [0.9, 0.2 * coarse],
    [1, 0.3 * coarse],
  ] as const) {
    const made = attempt(layout, share * coarse, tolerance);
    if ('failure' in made) best ??= made;
    else if (made.mesh.worstCorner > OPEN) return made;
    else if (!best || 'failure' in best || made.mesh.worstCorner > best.mesh.worstCorner) best = made;
  }
  if (best && 'mesh' in best && best.mesh.worstCorner < OPEN_ENOUGH)
    return { failure: 'The plan has a corner or a gap too narrow to be divided.' };
  return best!;
}

function attempt(layout: Layout, coarse: number, tolerance: number): MeshResult {
  const graph = planarGraph(layout, coarse, tolerance);
  if (!graph) return { failure: 'The lines of the plan lie too close together to be told apart.' };
  const sizeAt = sizeField(graph, coarse);
  const skeleton = subdivided(graph, layout, sizeAt);
  const x = skeleton.vertices.map((v) => v.x);
  const y = skeleton.vertices.map((v) => v.y);
  addInterior(x, y, { edges: skeleton.edges, shortEnds: graph.shortEnds }, layout, coarse, sizeAt);
  const net = triangulate(
    x,
    y,
    skeleton.edges.map(({ a, b }) => [a, b] as const),
  );
  if (!net) return { failure: 'The plan could not be divided: some of its lines cross where they should not.' };
  const ring = curveLoops(skeleton);
  const triangles = net.corners.length / 3;
  const kept = new Uint8Array(triangles);
  for (let t = 0; t < triangles; t++) {
    const [cx, cy] = middleOf(x, y, net.corners.subarray(3 * t, 3 * t + 3));
    kept[t] = Number(contains(ring[0]!, cx, cy) && !ring.slice(1).some((hole) => contains(hole, cx, cy)));
  }
  const facets = pairTriangles(x, y, net, kept);
  return finish(x, y, facets, skeleton, layout, graph);
}

interface Skeleton {
  readonly vertices: GraphVertex[];
  readonly edges: PlanarGraph['edges'];
}

/** Divides every edge to the wished length, those on curves along their curve. */
function subdivided(graph: PlanarGraph, layout: Layout, sizeAt: SizeAt): Skeleton {
  const vertices = [...graph.vertices];
  const curves = [layout.outline, ...layout.holes];
  const edges = graph.edges.flatMap((edge) => {
    const p = vertices[edge.a]!;
    const q = vertices[edge.b]!;
    const curve = edge.curve < 0 ? undefined : curves[edge.curve]!;
    const way = curve && (((q.s - p.s) % curve.length) + curve.length) % curve.length;
    const placed = (t: number): GraphVertex => {
      if (!curve) return between(p, q, t);
      const s = p.s + t * way!;
      const [x, y] = curve.at(s);
      return { x, y, curve: edge.curve, s: s % curve.length, patch: -1, mx: 0, my: 0 };
    };
    const parts = divisions(
      way ?? Math.hypot(q.x - p.x, q.y - p.y),
      (t) => {
        const { x, y } = placed(t);
        return [x, y];
      },
      sizeAt,
    );
    const chain = [edge.a, ...parts.map((t) => vertices.push(placed(t)) - 1), edge.b];
    return chain.slice(1).map((b, i) => ({ ...edge, a: chain[i]!, b }));
  });
  return { vertices, edges };
}

function between(p: GraphVertex, q: GraphVertex, t: number): GraphVertex {
  const moved = p.patch === q.patch && p.patch >= 0;
  return {
    x: p.x + t * (q.x - p.x),
    y: p.y + t * (q.y - p.y),
    curve: -1,
    s: 0,
    patch: moved ? p.patch : -1,
    mx: moved ? p.mx + t * (q.mx - p.mx) : 0,
    my: moved ? p.my + t * (q.my - p.my) : 0,
  };
}

/** The outline and the holes as polygons of graph vertices. */
function curveLoops({ vertices, edges }: Skeleton): Point[][] {
  const loops: Point[][] = [];
  const members: Map<number, number>[] = [];
  for (const { a, b, curve } of edges) if (curve >= 0) (members[curve] ??= new Map()).set(a, b);
  for (const following of members) {
    const first = following.keys().next().value!;
    const loop: Point[] = [];
    let at = first;
    do {
      loop.push([vertices[at]!.x, vertices[at]!.y]);
      at = following.get(at) ?? first;
    } while (at !== first && loop.length <= following.size);
    loops.push(loop);
  }
  return loops;
}

function middleOf(x: ArrayLike<number>, y: ArrayLike<number>, nodes: ArrayLike<number>): Point {
  let sx = 0;
  let sy = 0;
  for (let i = 0; i < nodes.length; i++) {
    sx += x[nodes[i]!]!;
    sy += y[nodes[i]!]!;
  }
  return [sx / nodes.length, sy / nodes.length];
}

function finish(
  cornersX: readonly number[],
  cornersY: readonly number[],
  facets: readonly Facet[],
  skeleton: Skeleton,
  layout: Layout,
  graph: PlanarGraph,
): MeshResult {
  const division = divide(facets, cornersX.length);
  const count = cornersX.length + division.sides.length + facets.length;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  x.set(cornersX);
  y.set(cornersY);
  const movedBy = new Int32Array(count).fill(-1);
  const moveX = new Float64Array(count);
  const moveY = new Float64Array(count);
  const free = new Uint8Array(count).fill(1);
  skeleton.vertices.forEach((v, i) => {
    free[i] = 0;
    movedBy[i] = v.patch;
    moveX[i] = v.mx;
    moveY[i] = v.my;
  });
  division.sides.forEach(([a, b], i) => {
    const node = cornersX.length + i;
    x[node] = (x[a]! + x[b]!) / 2;
    y[node] = (y[a]! + y[b]!) / 2;
  });
  facets.forEach((facet, i) => {
    const node = cornersX.length + division.sides.length + i;
    [x[node], y[node]] = middleOf(x, y, facet);
  });

  const curves = [layout.outline, ...layout.holes];
  const rim: number[] = [];
  const rested: number[] = [];
  const ribs: number[] = [];
  const ribBrace: number[] = [];
  const curveSides: { a: number; b: number; curve: number; s: number; t: number }[] = [];
  for (const { a, b, curve, braces } of skeleton.edges) {
    const node = division.middle(a, b);
    if (node === undefined) return { failure: 'The plan could not be divided along all of its lines.' };
    free[node] = 0;
    const p = skeleton.vertices[a]!;
    const q = skeleton.vertices[b]!;
    if (curve >= 0) {
      const length = curves[curve]!.length;
      const way = (((q.s - p.s) % length) + length) % length;
      const s = p.s + way / 2;
      [x[node], y[node]] = curves[curve]!.at(s);
      curveSides.push({ a, b: node, curve, s: p.s, t: s }, { a: node, b, curve, s, t: p.s + way });
      if (curve === 0) rim.push(a, node, node, b);
    } else {
      const half = between(p, q, 0.5);
      movedBy[node] = half.patch;
      moveX[node] = half.mx;
      moveY[node] = half.my;
    }
    for (const brace of braces) {
      if (brace >= layout.braces) {
        rested.push(a, node, b);
        continue;
      }
      ribs.push(a, node, node, b);
      ribBrace.push(brace, brace);
    }
  }
  bulge(x, y, curveSides, curves);
  smooth(x, y, division.quads, free, 6);

  const patchesOf = coverage(division, x, y, graph);
  let worstCorner = 1;
  for (let at = 0; at < division.quads.length; at += 4) {
    worstCorner = Math.min(worstCorner, quadQuality(x, y, division.quads, at));
  }
  return {
    mesh: {
      x,
      y,
      quads: division.quads,
      patchesOf,
      ribs: Int32Array.from(ribs),
      ribBrace: Int32Array.from(ribBrace),
      ribSides: besidePieces(division.quads, ribs, count),
      rested: Int32Array.from(rested),
      rim: Int32Array.from(rim),
      rimSides: sidesOn(division.quads, curveSides, (curve) => curve === 0),
      holeSides: sidesOn(division.quads, curveSides, (curve) => curve > 0),
      movedBy,
      moveX,
      moveY,
      insets: Float64Array.from(layout.patches, (p) => p.inset),
      worstCorner,
    },
  };
}

function besidePieces(quads: Int32Array, ribs: readonly number[], nodes: number): Int32Array {
  const sides = new Map<number, number>();
  for (let i = 0; i < quads.length; i++) sides.set(quads[i]! * nodes + quads[(i & ~3) + ((i + 1) & 3)]!, i >> 2);
  const found = new Int32Array(ribs.length);
  for (let k = 0; k < ribs.length; k += 2) {
    found[k] = sides.get(ribs[k]! * nodes + ribs[k + 1]!) ?? -1;
    found[k + 1] = sides.get(ribs[k + 1]! * nodes + ribs[k]!) ?? -1;
  }
  return found;
}

/** Quadrilateral and side number of the sides on chosen curves. */
function sidesOn(
  quads: Int32Array,
  curveSides: readonly { readonly a: number; readonly b: number; readonly curve: number }[],
  chosen: (curve: number) => boolean,
): Int32Array {
  const after = new Map<number, number[]>();
  for (const { a, b, curve } of curveSides) {
    if (!chosen(curve)) continue;
    for (const [p, q] of [
      [a, b],
      [b, a],
    ] as const)
      after.set(p, [...(after.get(p) ?? []), q]);
  }
  const found: number[] = [];
  for (let i = 0; i < quads.length; i++) {
    const next = quads[(i & ~3) + ((i + 1) & 3)]!;
    if (after.get(quads[i]!)?.includes(next)) found.push(i >> 2, i & 3);
  }
  return Int32Array.from(found);
}

/** Moves nodes on curves outward by the mean gap between the straight side and the curve, so that the polygon keeps the curve's area. */
function bulge(
  x: Float64Array,
  y: Float64Array,
  sides: readonly { a: number; b: number; curve: number; s: number; t: number }[],
  curves: readonly ClosedCurve[],
): void {
  const shiftX = new Map<number, number>();
  const shiftY = new Map<number, number>();
  const add = (node: number, dx: number, dy: number): void => {
    shiftX.set(node, (shiftX.get(node) ?? 0) + dx / 2);
    shiftY.set(node, (shiftY.get(node) ?? 0) + dy / 2);
  };
  for (const { a, b, curve, s, t } of sides) {
    const dx = x[b]! - x[a]!;
    const dy = y[b]! - y[a]!;
    const length = Math.hypot(dx, dy);
    let gap = 0;
    for (let k = 1; k < 8; k++) {
      const [px, py] = curves[curve]!.at(s + ((t - s) * k) / 8);
      gap += ((px - x[a]!) * dy - (py - y[a]!) * dx) / length / 8;
    }
    for (const node of [a, b]) add(node, (gap * dy) / length, (-gap * dx) / length);
  }
  const corner = curves.map((curve) => curve.corners.map((s) => curve.at(s)));
  for (const [node, dx] of shiftX) {
    const sharp = corner.some((points) => points.some((p) => Math.hypot(p[0] - x[node]!, p[1] - y[node]!) < 1e-9));
    if (sharp) continue;
    x[node]! += dx;
    y[node]! += shiftY.get(node)!;
  }
}

function coverage(division: Division, x: Float64Array, y: Float64Array, graph: PlanarGraph): Int32Array {
  const loops = graph.patchLoops.map((loop) => loop.map((v): Point => [graph.vertices[v]!.x, graph.vertices[v]!.y]));
  const bits = division.facets.map((facet) => {
    const [cx, cy] = middleOf(x, y, facet);
    return loops.reduce((sum, loop, i) => (loop.length > 2 && contains(loop, cx, cy) ? sum | (1 << i) : sum), 0);
  });
  return division.facetOf.map((facet) => bits[facet]!);
}
