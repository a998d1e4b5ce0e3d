/** The lines a mesh has to follow: outline, holes, what is inside of each brace, and the stiff footprint of each patch. */
import { closedCurve, type ClosedCurve } from './curve.js';
import type { Hole, Point, TopModel } from '../model.js';
import { contains, counterClockwise, crossing, inwardMitres } from './polygon.js';

export interface RibLine {
  /** Index of the brace; counted on from the braces, of the line on which the plate rests. */
  readonly brace: number;
  /** The part of the line that lies on the plate, in order. */
  readonly points: readonly Point[];
}

export interface PatchLine {
  readonly patch: number;
  /** Corners of the stiff footprint, counter-clockwise. */
  readonly corners: readonly Point[];
  /** Movement of each corner per metre by which the footprint is drawn in. */
  readonly mitres: readonly Point[];
  /** m, how far `corners` are drawn in from the glued outline. */
  readonly inset: number;
}

export interface Layout {
  readonly outline: ClosedCurve;
  readonly holes: readonly ClosedCurve[];
  readonly ribs: readonly RibLine[];
  /** Where a brace goes on over a hole, from rim to rim. */
  readonly spans: readonly RibLine[];
  /** How many braces the model has; lines numbered from here on are rests. */
  readonly braces: number;
  readonly patches: readonly PatchLine[];
}

/** Share of a glued block's thickness by which its stiff footprint lies inside its glued one: the rim of a thick block carries no bending stress. */
const DRAWN_IN = 1 / 3;

/** m, how far the stiff footprint of a patch of this `thickness` lies inside the glued one; never so far that little of a narrow patch is left. */
export function patchInset(outline: readonly Point[], thickness: number): number {
  return Math.min(thickness * DRAWN_IN, narrowestWidth(outline) / 4);
}

/**
 * The thickness for which the mesh of a patch is drawn: one per millimetre step, so that a small change of thickness moves a few nodes of
 * the same mesh instead of making another one. The steps change at .7 mm, away from usual thicknesses.
 */
export function meshedThickness(thickness: number): number {
  return Math.max(0.0005, (Math.floor(thickness * 1000 + 0.3) + 0.2) / 1000);
}

/** Lines of a checked model. Braces are cut at the outline; over a hole they go on as spans. */
export function layoutOf(model: TopModel): Layout {
  const outline = closedCurve(fromItsFirst(withoutRepeats(model.outline)));
  const holes = (model.holes ?? []).map((hole) => closedCurve(fromItsFirst(withoutRepeats(holeOutline(hole)))));
  const lines = [
    ...(model.braces ?? []).map(({ axis }) => axis),
    ...(model.rests ?? []).map(({ from, to }): readonly Point[] => [from, to]),
  ];
  const cut = lines.map((axis) => insidePieces(axis, outline, holes));
  // In the order of where they lie, so that the order in which braces are given changes nothing.
  const ribs = cut
    .flatMap(({ pieces }, brace) => pieces.map((points) => ({ brace, points })))
    .sort((a, b) => comesBefore(lowestOf(a.points), lowestOf(b.points)));
  const braces = model.braces?.length ?? 0;
  const spans = cut.slice(0, braces).flatMap((each, brace) => each.spans.map((points) => ({ brace, points })));
  const patches = (model.patches ?? []).map((patch, index) => {
    const glued = counterClockwise(withoutRepeats(patch.outline));
    const mitres = inwardMitres(glued);
    const inset = patchInset(glued, meshedThickness(patch.thickness));
    const corners = glued.map((p, i): Point => [p[0] + inset * mitres[i]![0], p[1] + inset * mitres[i]![1]]);
    return { patch: index, corners, mitres, inset };
  });
  return { outline, holes, ribs, spans, braces, patches };
}

function comesBefore(a: Point, b: Point): number {
  return a[0] - b[0] || a[1] - b[1];
}

function lowestOf(points: readonly Point[]): Point {
  return points.reduce((least, p) => (comesBefore(p, least) < 0 ? p : least));
}

/** The same closed polygon, counter-clockwise and begun where it lies lowest in x. */
function fromItsFirst(polygon: readonly Point[]): readonly Point[] {
  const points = counterClockwise(polygon);
  const first = points.indexOf(lowestOf(points));
  return [...points.slice(first), ...points.slice(0, first)];
}

/** m of a brace's line on wood, over holes between two rims, and over a hole where it ends. */
export function lengthsOf(model: TopModel, axis: readonly Point[]): { wood: number; spans: number; hanging: number } {
  const outline = closedCurve(withoutRepeats(model.outline));
  const holes = (model.holes ?? []).map((hole) => closedCurve(withoutRepeats(holeOutline(hole))));
  const { pieces, spans } = insidePieces(axis, outline, holes);
  const total = (lines: readonly (readonly Point[])[]): number => lines.reduce((sum, line) => sum + lengthOf(line), 0);
  const within = insidePieces(axis, outline, []).pieces;
  const [wood, over] = [total(pieces), total(spans)];
  return { wood, spans: over, hanging: Math.max(0, total(within) - wood - over) };
}

export function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    length += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
  }
  return length;
}

/** The closed outline of a hole; a round one as 72 points of equal area. */
export function holeOutline(hole: Hole): readonly Point[] {
  if ('outline' in hole) return hole.outline;
  const sides = 72;
  const step = (2 * Math.PI) / sides;
  const radius = (hole.diameter / 2) * Math.sqrt(step / Math.sin(step));
  return Array.from({ length: sides }, (_, i): Point => [
    hole.centre[0] + radius * Math.cos(i * step),
    hole.centre[1] + radius * Math.sin(i * step),
  ]);
}

/** Whether a point lies on the plate's wood. */
export function onPlate(x: number, y: number, outline: ClosedCurve, holes: readonly ClosedCurve[]): boolean {
  return contains(outline.points, x, y) && !holes.some((hole) => contains(hole.points, x, y));
}

/** Drops points that repeat their neighbour, a repeated closing point too. */
export function withoutRepeats(polygon: readonly Point[]): readonly Point[] {
  const apart = (a: Point, b: Point): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) > 1e-7;
  const kept = polygon.filter((p, i) => i === 0 || apart(p, polygon[i - 1]!));
  while (kept.length > 1 && !apart(kept[0]!, kept[kept.length - 1]!)) kept.pop();
  return kept;
}

/** What of a brace lies on wood, and where it bridges a hole between two such pieces. */
function insidePieces(
  axis: readonly Point[],
  outline: ClosedCurve,
  holes: readonly ClosedCurve[],
): { readonly pieces: readonly Point[][]; readonly spans: readonly Point[][] } {
  const pieces: Point[][] = [];
  const spans: Point[][] = [];
  let open: Point[] | undefined;
  /** Over a hole since a piece ended at its rim. */
  let over: Point[] | undefined;
  for (let i = 0; i + 1 < axis.length; i++) {
    const a = axis[i]!;
    const b = axis[i + 1]!;
    const cuts = [0, ...cutsOf(a, b, outline, holes), 1];
    for (let k = 0; k + 1 < cuts.length; k++) {
      const from = cuts[k]!;
      const to = cuts[k + 1]!;
      if (to - from < 1e-9) continue;
      const along = (t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      const mid = along((from + to) / 2);
      if (onPlate(mid[0], mid[1], outline, holes)) {
        if (over) spans.push(over);
        over = undefined;
        if (open) open.push(along(to));
        else pieces.push((open = [along(from), along(to)]));
      } else {
        const aboveHole = contains(outline.points, mid[0], mid[1]);
        if (aboveHole && (open || over)) over = [...(over ?? [along(from)]), along(to)];
        else over = undefined;
        open = undefined;
      }
    }
  }
  return { pieces, spans };
}

function cutsOf(a: Point, b: Point, outline: ClosedCurve, holes: readonly ClosedCurve[]): number[] {
  const cuts: number[] = [];
  for (const { points } of [outline, ...holes]) {
    for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
      const hit = crossing(a, b, points[j]!, points[i]!);
      if (hit) cuts.push(hit.t);
    }
  }
  return cuts.sort((p, q) => p - q);
}

function narrowestWidth(polygon: readonly Point[]): number {
  let narrowest = Infinity;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [ax, ay] = polygon[j]!;
    const [bx, by] = polygon[i]!;
    const length = Math.hypot(bx - ax, by - ay);
    if (length === 0) continue;
    let reach = 0;
    for (const [px, py] of polygon) {
      reach = Math.max(reach, Math.abs((bx - ax) * (py - ay) - (by - ay) * (px - ax)) / length);
    }
    narrowest = Math.min(narrowest, reach);
  }
  return narrowest;
}
