/**
 * Turns outlines, braces and patches into a planar graph: vertices, and edges that meet only at vertices. What lies closer
 * together than a tolerance is drawn together, so that no sliver is left for the mesh.
 */
import type { ClosedCurve } from './curve.js';
import type { Layout } from './mesh-lines.js';
import type { Point } from '../model.js';
import { crossing } from './polygon.js';
import { shortEndsOf, type ShortEnd } from './short-ends.js';

export interface GraphVertex {
  x: number;
  y: number;
  /** 0 outline, 1… holes, −1 none */
  readonly curve: number;
  /** Distance along that curve, m */
  readonly s: number;
  /** Patch whose drawing-in moves this vertex, or −1, and the movement per metre of it. */
  readonly patch: number;
  readonly mx: number;
  readonly my: number;
}

export interface GraphEdge {
  readonly a: number;
  readonly b: number;
  /** 0 outline, 1… holes, −1 inside the plate */
  readonly curve: number;
  /** Braces that run along this edge. */
  readonly braces: readonly number[];
}

export interface PlanarGraph {
  readonly vertices: readonly GraphVertex[];
  readonly edges: readonly GraphEdge[];
  /** Vertex loops of the drawn-together patch footprints, in the order of the layout's patches. */
  readonly patchLoops: readonly (readonly number[])[];
  readonly shortEnds: readonly ShortEnd[];
  /** Braces over a hole: the vertices at its rim where each span begins and ends. */
  readonly spans: readonly {
    readonly brace: number;
    readonly from: number;
    readonly to: number;
    readonly points: readonly Point[];
  }[];
}

/** Around a hole the plate bends most sharply: nodes stand closer by this factor. */
export const HOLE_SPACING = 0.6;
/** … and on coarse meshes too a hole has this many sides, each divided once more: with fewer the second mode falls by 1 %. */
const HOLE_SIDES = 18;

/** m: rims of patches that lie on each other, such as a bridge and its plate, are one when closer than this. */
const PATCHES_APART = 0;

interface Segment {
  readonly a: number;
  readonly b: number;
  readonly curve: number;
  readonly brace: number;
  readonly patch: number;
}

/** `spacing`: wished length of edges on the curves, m; `tolerance`: what is closer than this is one, m. Undefined when lines still cross after being drawn together. */
export function planarGraph(layout: Layout, spacing: number, tolerance: number): PlanarGraph | undefined {
  const vertices: GraphVertex[] = [];
  const segments: Segment[] = [];
  const curves = [layout.outline, ...layout.holes];
  const shortEnds = shortEndsOf(layout).filter(
    ({ gap, size }) => gap >= tolerance && size <= 0.95 * spacing && size >= 0.25 * spacing,
  );
  curves.forEach((curve, index) => {
    const own = shortEnds.filter((end) => end.curve === index);
    const ring = ringOf(curve, layout, own, spacing, tolerance).map((s) => {
      const [x, y] = curve.at(s);
      return vertices.push({ x, y, curve: index, s, patch: -1, mx: 0, my: 0 }) - 1;
    });
    ring.forEach((a, i) => segments.push({ a, b: ring[(i + 1) % ring.length]!, curve: index, brace: -1, patch: -1 }));
  });

  for (const { patch, corners, mitres } of layout.patches) {
    const loop = corners.map((p, i) =>
      vertexAt(vertices, p, tolerance, { patch, mx: mitres[i]![0], my: mitres[i]![1] }),
    );
    loop.forEach((a, i) => segments.push({ a, b: loop[(i + 1) % loop.length]!, curve: -1, brace: -1, patch }));
  }
  for (const { brace, points } of layout.ribs) {
    const line = points.map((p) => vertexAt(vertices, p, tolerance));
    line.slice(1).forEach((b, i) => segments.push({ a: line[i]!, b, curve: -1, brace, patch: -1 }));
  }

  const parted = apart(vertices, segments, tolerance);
  if (!parted) return undefined;
  // Only now, when it is known where lines cross: a foot beside a crossing would bend the line that crosses there.
  addSteps(vertices, shortEnds);
  addFeet(vertices, parted, layout.holes, spacing, tolerance);
  const footed = apart(vertices, parted, tolerance);
  if (!footed) return undefined;
  const graph = graphOf(onCurves(vertices, footed, curves), footed, layout.patches.length, layout.braces);
  return { ...graph, shortEnds, spans: spansOf(graph.vertices, layout) };
}

function spansOf(vertices: readonly GraphVertex[], { spans }: Layout): PlanarGraph['spans'] {
  const onRim = ([x, y]: Point): number => {
    let best = -1;
    let least = Infinity;
    vertices.forEach((v, i) => {
      const distance = Math.hypot(v.x - x, v.y - y);
      if (v.curve > 0 && distance < least) [best, least] = [i, distance];
    });
    return best;
  };
  return spans.flatMap(({ brace, points }) => {
    const [from, to] = [onRim(points[0]!), onRim(points[points.length - 1]!)];
    return from < 0 || from === to ? [] : [{ brace, from, to, points }];
  });
}

/** Divides segments until they meet at vertices only; undefined when that does not end. */
function apart(vertices: GraphVertex[], segments: readonly Segment[], tolerance: number): Segment[] | undefined {
  let parts = [...segments];
  for (let pass = 0; pass < 5; pass++) {
    parts = parts.filter(({ a, b }) => a !== b);
    const crossed = addCrossings(vertices, parts, tolerance);
    const before = parts.length;
    parts = parts.flatMap((segment) => splitAtVertices(vertices, segment, tolerance));
    if (!crossed && parts.length === before) return parts;
  }
  return undefined;
}

/** A vertex drawn onto an outline or a hole's rim belongs to that curve and lies on it. */
function onCurves(
  vertices: GraphVertex[],
  segments: readonly Segment[],
  curves: readonly ClosedCurve[],
): GraphVertex[] {
  const placed = [...vertices];
  for (const { a, curve } of segments) {
    if (curve < 0 || placed[a]!.curve >= 0) continue;
    const { s } = curves[curve]!.nearest(placed[a]!.x, placed[a]!.y);
    const [x, y] = curves[curve]!.at(s);
    placed[a] = { x, y, curve, s, patch: -1, mx: 0, my: 0 };
  }
  return placed;
}

function graphOf(
  vertices: GraphVertex[],
  segments: readonly Segment[],
  patchCount: number,
  braces: number,
): Omit<PlanarGraph, 'shortEnds' | 'spans'> {
  const edges = new Map<number, { a: number; b: number; curve: number; braces: number[] }>();
  const patchLoops: number[][] = Array.from({ length: patchCount }, () => []);
  for (const { a, b, curve, brace, patch } of segments) {
    const key = Math.min(a, b) * vertices.length + Math.max(a, b);
    let edge = edges.get(key);
    if (!edge) edges.set(key, (edge = { a, b, curve, braces: [] }));
    else if (curve >= 0 && edge.curve < 0) edges.set(key, (edge = { a, b, curve, braces: edge.braces }));
    if (brace >= 0 && !edge.braces.includes(brace)) edge.braces.push(brace);
    if (patch >= 0) patchLoops[patch]!.push(a);
  }
  // What was drawn onto the outline is a brace's end bent aside, and stiffens nothing there.
  const cleared = [...edges.values()].map((edge) =>
    edge.curve === 0 ? { ...edge, braces: edge.braces.filter((line) => line >= braces) } : edge,
  );
  return { vertices, edges: cleared, patchLoops };
}

/** Distances along a curve for its vertices: corners, ends of braces on it, points beside what lies close to it, and an even division between. */
function ringOf(
  curve: ClosedCurve,
  layout: Layout,
  shortEnds: readonly ShortEnd[],
  spacing: number,
  tolerance: number,
): number[] {
  const step =
    curve === layout.outline
      ? Math.min(spacing, curve.length / 8)
      : Math.min(HOLE_SPACING * spacing, Math.max(curve.length / HOLE_SIDES, 0.35 * spacing), curve.length / 8);
  const marks: number[] = [...curve.corners];
  const apart = (s: number, distance: number): boolean =>
    marks.every((m) => {
      const d = Math.abs(m - s);
      return Math.min(d, curve.length - d) >= distance;
    });
  const beside: { s: number; distance: number }[] = [];
  for (const { points } of layout.ribs) {
    for (const end of [points[0]!, points[points.length - 1]!]) {
      const near = curve.nearest(end[0], end[1]);
      // What lies between a curve and its chord needs a vertex beside it, or it would be cut off.
      if (near.distance < Math.max(tolerance, CLOSE * step) && apart(near.s, tolerance)) marks.push(near.s);
      else beside.push(near);
    }
  }
  for (const way of [0, 1, -1]) {
    for (const { s, size } of shortEnds) {
      const at = (s + way * size + curve.length) % curve.length;
      if (apart(at, 0.5 * size)) marks.push(at);
    }
  }
  for (const { corners } of layout.patches) for (const p of corners) beside.push(curve.nearest(p[0], p[1]));
  for (const { points } of layout.ribs) {
    for (let i = 1; i < points.length; i++) {
      const near = closestApproach(curve, points[i - 1]!, points[i]!);
      if (near) beside.push(near);
    }
  }
  beside.sort((p, q) => p.distance - q.distance);
  for (const { s, distance } of beside) {
    if (distance < 0.7 * step && apart(s, distance < CLOSE * step ? tolerance : 0.6 * step)) marks.push(s);
  }
  if (marks.length === 0) marks.push(0);
  marks.sort((p, q) => p - q);
  return marks.flatMap((from, i) => {
    const to = i + 1 < marks.length ? marks[i + 1]! : marks[0]! + curve.length;
    const pieces = Math.max(1, Math.round((to - from) / step));
    return Array.from({ length: pieces }, (_, k) => from + ((to - from) * k) / pieces);
  });
}

/** Share of the division of a curve within which something lies close to it: more than its chords are away from it. */
const CLOSE = 0.1;

/** The first short step of a brace from its short end. */
function addSteps(vertices: GraphVertex[], shortEnds: readonly ShortEnd[]): void {
  for (const { end, along, size } of shortEnds) {
    const x = end[0] + size * along[0];
    const y = end[1] + size * along[1];
    const taken = vertices.some((v) => v.curve < 0 && Math.hypot(v.x - x, v.y - y) < 0.6 * size);
    if (!taken) vertices.push({ x, y, curve: -1, s: 0, patch: -1, mx: 0, my: 0 });
  }
}

/** Where a straight line, away from its ends, comes closest to a curve. */
function closestApproach(
  curve: ClosedCurve,
  a: Point,
  b: Point,
): { readonly s: number; readonly distance: number; readonly foot: Point } | undefined {
  const samples = 24;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const near = (t: number): { s: number; distance: number; foot: Point } => {
    const foot: Point = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    return { ...curve.nearest(foot[0], foot[1]), foot };
  };
  let best = 0;
  let least = Infinity;
  for (let k = 0; k <= samples; k++) {
    const { distance } = near(k / samples);
    if (distance < least) [best, least] = [k, distance];
  }
  if (best === 0 || best === samples) return undefined;
  let [low, high] = [(best - 1) / samples, (best + 1) / samples];
  for (let step = 0; step < 60 && (high - low) * length > 1e-6; step++) {
    const [one, other] = [low + 0.382 * (high - low), low + 0.618 * (high - low)];
    if (near(one).distance < near(other).distance) high = other;
    else low = one;
  }
  return near((low + high) / 2);
}

/** Puts vertices on braces opposite to what they pass closely: corners of patches, ends of other braces, rims of holes. */
function addFeet(
  vertices: GraphVertex[],
  segments: readonly Segment[],
  holes: readonly ClosedCurve[],
  spacing: number,
  tolerance: number,
): void {
  const near = 0.6 * spacing;
  const corners = vertices.length;
  for (const { a, b, brace } of segments) {
    if (brace < 0) continue;
    const from = vertices[a]!;
    const to = vertices[b]!;
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const squared = dx * dx + dy * dy;
    const feet: Point[] = [];
    for (let v = 0; v < corners; v++) {
      const { x, y, curve } = vertices[v]!;
      if (v === a || v === b || curve >= 0) continue;
      const t = ((x - from.x) * dx + (y - from.y) * dy) / squared;
      const away = Math.abs((x - from.x) * dy - (y - from.y) * dx) / Math.sqrt(squared);
      if (t > 0 && t < 1 && away > tolerance && away < near) feet.push([from.x + t * dx, from.y + t * dy]);
    }
    for (const hole of holes) {
      const approach = closestApproach(hole, [from.x, from.y], [to.x, to.y]);
      if (approach && approach.distance < near) feet.push(approach.foot);
    }
    for (const [x, y] of feet) {
      // Not where the brace has a vertex already: its ends, a crossing, an earlier foot.
      const taken = vertices.some(
        (v) =>
          v.curve < 0 &&
          Math.hypot(v.x - x, v.y - y) < 0.45 * spacing &&
          Math.abs((v.x - from.x) * dy - (v.y - from.y) * dx) < tolerance * Math.sqrt(squared),
      );
      if (!taken) vertices.push({ x, y, curve: -1, s: 0, patch: -1, mx: 0, my: 0 });
    }
  }
}

function vertexAt(
  vertices: GraphVertex[],
  p: Point,
  tolerance: number,
  moved: { patch: number; mx: number; my: number } = { patch: -1, mx: 0, my: 0 },
): number {
  let found = -1;
  let least = tolerance;
  for (let i = 0; i < vertices.length; i++) {
    const d = Math.hypot(vertices[i]!.x - p[0], vertices[i]!.y - p[1]);
    if (d < least) {
      least = d;
      found = i;
    }
  }
  return found >= 0 ? found : vertices.push({ x: p[0], y: p[1], curve: -1, s: 0, ...moved }) - 1;
}

/** Puts a vertex on every crossing of two segments that share none yet; says whether there was one. */
function addCrossings(vertices: GraphVertex[], segments: readonly Segment[], tolerance: number): boolean {
  let crossed = false;
  const at = (i: number): Point => [vertices[i]!.x, vertices[i]!.y];
  for (let i = 0; i < segments.length; i++) {
    const p = segments[i]!;
    for (let j = i + 1; j < segments.length; j++) {
      const q = segments[j]!;
      if (p.a === q.a || p.a === q.b || p.b === q.a || p.b === q.b) continue;
      if (p.curve >= 0 && q.curve >= 0) continue;
      const hit = crossing(at(p.a), at(p.b), at(q.a), at(q.b));
      if (!hit) continue;
      const [ax, ay] = at(p.a);
      const [bx, by] = at(p.b);
      crossed = true;
      vertexAt(vertices, [ax + hit.t * (bx - ax), ay + hit.t * (by - ay)], tolerance, movement(vertices, p, q, hit));
    }
  }
  return crossed;
}

/** A vertex on a patch's side moves with that side. */
function movement(
  vertices: readonly GraphVertex[],
  p: Segment,
  q: Segment,
  hit: { readonly t: number; readonly s: number },
): { patch: number; mx: number; my: number } {
  const [side, t] = p.patch >= 0 ? [p, hit.t] : [q, hit.s];
  if (side.patch < 0) return { patch: -1, mx: 0, my: 0 };
  const a = vertices[side.a]!;
  const b = vertices[side.b]!;
  if (a.patch !== side.patch || b.patch !== side.patch) return { patch: -1, mx: 0, my: 0 };
  return { patch: side.patch, mx: a.mx + t * (b.mx - a.mx), my: a.my + t * (b.my - a.my) };
}

/** A segment bent through the vertices that lie within the tolerance of it. */
function splitAtVertices(vertices: readonly GraphVertex[], segment: Segment, tolerance: number): Segment[] {
  const { a, b } = segment;
  const from = vertices[a]!;
  const to = vertices[b]!;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const squared = dx * dx + dy * dy;
  const on: { v: number; t: number }[] = [];
  for (let v = 0; v < vertices.length; v++) {
    if (v === a || v === b) continue;
    const px = vertices[v]!.x - from.x;
    const py = vertices[v]!.y - from.y;
    const t = (px * dx + py * dy) / squared;
    const near = segment.patch >= 0 && vertices[v]!.patch >= 0 ? Math.max(tolerance, PATCHES_APART) : tolerance;
    if (t > 0 && t < 1 && Math.abs(px * dy - py * dx) < near * Math.sqrt(squared)) on.push({ v, t });
  }
  if (on.length === 0) return [segment];
  on.sort((p, q) => p.t - q.t);
  const chain = [a, ...on.map(({ v }) => v), b];
  return chain.slice(1).map((end, i) => ({ ...segment, a: chain[i]!, b: end }));
}
