/** The mesh of a top: quadrilaterals that follow its outline, holes, braces and patches. */
import type { ClosedCurve } from './curve.js';
import { layoutOf, type Layout } from './mesh-lines.js';
import { addInterior } from './interior.js';
import type { Point, TopModel } from '../model.js';
import { planarGraph, type GraphVertex, type PlanarGraph } from './planar-graph.js';
import { isMeshedMirrored, mirroredMesh, mirroredPlan } from './mirrored.js';
import { contains, crossing, signedArea } from './polygon.js';
import { divide, pairTriangles, quadQuality, type Division, type Facet } from './quadrilaterals.js';
import { divisions, sizeField, type SizeAt } from './sizing.js';
import { smooth } from './smoothing.js';
import type { TopMesh } from './top-mesh.js';
import { triangulate, type Triangulation } from './triangulation.js';

export type { TopMesh } from './top-mesh.js';

export type MeshResult = { readonly mesh: TopMesh } | { readonly failure: string };

/** Points closer than this share of the plate's size are one: a few tenths of a millimetre on a guitar. */
const TOGETHER = 1e-3;

/**
 * `spacing`: wished distance between neighbouring nodes, m. The same model and spacing always give the same mesh, and what counts as one
 * point never depends on how well the mesh turns out: a small change of plan changes little.
 */
export function meshTop(model: TopModel, spacing: number): MeshResult {
  if (isMeshedMirrored(model)) {
    const made = meshPlan(mirroredPlan(model), spacing);
    return 'failure' in made ? made : { mesh: mirroredMesh(made.mesh) };
  }
  return meshPlan(model, spacing);
}

function meshPlan(model: TopModel, spacing: number): MeshResult {
  const layout = layoutOf(model);
  const together = TOGETHER * Math.sqrt(signedArea(layout.outline.points));
  let made = attempt(layout, 2 * spacing, together);
  // Only a plan that could not be divided at all is drawn together further: refusing it would help nobody.
  for (const more of [3, 8]) {
    if ('mesh' in made && made.mesh.worstCorner > 0) return made;
    made = attempt(layout, 2 * spacing, more * together);
  }
  return made;
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
  const kept = trianglesOnWood(x, y, net, skeleton);
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

/** 1 for each triangle between outline and holes: found for one, and handed on to all that no curve parts from it. */
function trianglesOnWood(
  x: readonly number[],
  y: readonly number[],
  { corners, twins }: Triangulation,
  skeleton: Skeleton,
): Uint8Array {
  const loops = curveLoops(skeleton);
  const count = x.length;
  const onCurve = new Set<number>();
  for (const { a, b, curve } of skeleton.edges) {
    if (curve >= 0) onCurve.add(Math.min(a, b) * count + Math.max(a, b));
  }
  const kept = new Uint8Array(corners.length / 3);
  const seen = new Uint8Array(kept.length);
  for (let first = 0; first < kept.length; first++) {
    if (seen[first]) continue;
    const [cx, cy] = middleOf(x, y, corners.subarray(3 * first, 3 * first + 3));
    const wood = contains(loops[0]!, cx, cy) && !loops.slice(1).some((hole) => contains(hole, cx, cy));
    const waiting = [first];
    seen[first] = 1;
    while (waiting.length > 0) {
      const t = waiting.pop()!;
      kept[t] = Number(wood);
      for (let side = 3 * t; side < 3 * t + 3; side++) {
        const twin = twins[side]!;
        const other = (twin / 3) | 0;
        if (twin < 0 || seen[other]) continue;
        const a = corners[side]!;
        const b = corners[side % 3 === 2 ? side - 2 : side + 1]!;
        if (onCurve.has(Math.min(a, b) * count + Math.max(a, b))) continue;
        seen[other] = 1;
        waiting.push(other);
      }
    }
  }
  return kept;
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
  const bars = spanBars(graph, cornersX.length + division.sides.length + facets.length);
  const count = cornersX.length + division.sides.length + facets.length + bars.points.length;
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

  bars.points.forEach(([px, py], i) => {
    const node = count - bars.points.length + i;
    [x[node], y[node]] = [px, py];
    free[node] = 0;
  });

  const curves = [layout.outline, ...layout.holes];
  const rim: number[] = [];
  const rested: number[] = [];
  const ribs: number[] = [];
  const ribBrace: number[] = [];
  /** From the middle of a side to the middle of its curve. */
  const bows = new Map<number, Point>();
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
      const [cx, cy] = curves[curve]!.at(s);
      bows.set(node, [cx - x[node]!, cy - y[node]!]);
      [x[node], y[node]] = [cx, cy];
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
  for (const { brace, nodes } of bars.chains) {
    nodes.slice(1).forEach((b, i) => {
      ribs.push(nodes[i]!, b);
      ribBrace.push(brace);
    });
  }
  bulge(x, y, curveSides, curves, division.quads, bows);
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

interface SpanBars {
  /** Places of nodes of their own, where a span bends or crosses another. */
  readonly points: readonly Point[];
  readonly chains: readonly { readonly brace: number; readonly nodes: readonly number[] }[];
}

/** Braces over a hole as bars between its rims; two that cross there are joined. `first`: number of the first node of their own. */
function spanBars({ spans, vertices }: PlanarGraph, first: number): SpanBars {
  const points: Point[] = [];
  const add = (p: Point): number => first + points.push(p) - 1;
  const place = (node: number): Point => {
    if (node >= first) return points[node - first]!;
    return [vertices[node]!.x, vertices[node]!.y];
  };
  const chains = spans.map(({ brace, from, to, points: way }) => ({
    brace,
    nodes: [from, ...way.slice(1, -1).map(add), to],
  }));
  chains.forEach((one, i) => {
    for (const other of chains.slice(0, i)) {
      if (other.brace === one.brace) continue;
      for (let k = 0; k + 1 < one.nodes.length; k++) {
        for (let m = 0; m + 1 < other.nodes.length; m++) {
          const [a, b] = [place(one.nodes[k]!), place(one.nodes[k + 1]!)];
          const hit = crossing(a, b, place(other.nodes[m]!), place(other.nodes[m + 1]!));
          if (!hit || hit.t <= 0 || hit.t >= 1 || hit.s <= 0 || hit.s >= 1) continue;
          const node = add([a[0] + hit.t * (b[0] - a[0]), a[1] + hit.t * (b[1] - a[1])]);
          one.nodes.splice(k + 1, 0, node);
          other.nodes.splice(m + 1, 0, node);
          k++;
          break;
        }
      }
    }
  });
  return { points, chains };
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
  quads: Int32Array,
  bows: ReadonlyMap<number, Point>,
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
  const share = new Map<number, number>();
  for (const node of shiftX.keys()) {
    const sharp = corner.some((points) => points.some((p) => Math.hypot(p[0] - x[node]!, p[1] - y[node]!) < 1e-9));
    share.set(node, sharp ? 0 : 1);
  }
  const place = (node: number, by: number): void => {
    x[node]! += by * shiftX.get(node)!;
    y[node]! += by * shiftY.get(node)!;
  };
  for (const [node, by] of share) place(node, by);
  // From here on the middles of sides give way as a whole: bow and all.
  for (const [node, [dx, dy]] of bows) {
    shiftX.set(node, shiftX.get(node)! + dx);
    shiftY.set(node, shiftY.get(node)! + dy);
  }
  // Beside a brace that all but touches the curve there may be no room for it.
  for (let round = 0; round < 4; round++) {
    for (let at = 0; at < quads.length; at += 4) {
      if (quadQuality(x, y, quads, at) > FLAT) continue;
      for (let k = at; k < at + 4; k++) {
        const by = share.get(quads[k]!) ?? 0;
        if (by === 0) continue;
        const less = round < 3 ? by / 2 : 0;
        place(quads[k]!, less - by);
        share.set(quads[k]!, less);
      }
    }
  }
}

/** Sine of a corner that is as good as none. */
const FLAT = 0.02;

function coverage(division: Division, x: Float64Array, y: Float64Array, graph: PlanarGraph): Int32Array {
  const loops = graph.patchLoops.map((loop) => loop.map((v): Point => [graph.vertices[v]!.x, graph.vertices[v]!.y]));
  const bits = division.facets.map((facet) => {
    const [cx, cy] = middleOf(x, y, facet);
    return loops.reduce((sum, loop, i) => (loop.length > 2 && contains(loop, cx, cy) ? sum | (1 << i) : sum), 0);
  });
  return division.facetOf.map((facet) => bits[facet]!);
}
