/** The points and lines that a plan must keep: curves, strips with their cuts, and the sides of patches. */
import type { ClosedCurve } from '../../../../language/mechanics/plate/mesh/curve.js';
import { patchCorners, type PointMm, type SolidTop } from './inputs.js';
import { cutsOf, longSides, meeting, stripOf, type Line, type Strip } from './strips.js';

export class Skeleton {
  readonly points: PointMm[] = [];
  readonly edges: (readonly [number, number])[] = [];
  /** Points of outline and holes, in order, with their distance along the curve. */
  readonly rings: (readonly { readonly point: number; readonly s: number }[])[] = [];
  private readonly known = new Set<string>();

  constructor(top: SolidTop, curves: readonly ClosedCurve[], spacing: number) {
    const strips = top.braces.map(stripOf);
    const patchSides = top.patches.map(patchCorners).flatMap(sidesOf);
    strips.forEach((strip, i) => this.addStrip(strip, top, strips, patchSides, i, spacing));
    for (const side of patchSides) this.addPatchSide(side, strips, patchSides, spacing);
    const inner = [...this.points];
    for (const curve of curves) this.addRing(curve, inner, spacing);
  }

  private addStrip(
    strip: Strip,
    top: SolidTop,
    strips: readonly Strip[],
    patchSides: readonly Line[],
    index: number,
    spacing: number,
  ): void {
    const others = [...strips.filter((other) => other !== strip).flatMap(longSides), ...patchSides];
    const rungs = cutsOf(strip, top.braces[index]!, others, spacing).map(([r, l]) => {
      const [right, left] = longSides(strip);
      return [this.point(along(right, r / strip.length)), this.point(along(left, l / strip.length))] as const;
    });
    rungs.forEach(([r, l], k) => {
      this.edge(r, l);
      const before = rungs[k - 1];
      if (before) {
        this.edge(before[0], r);
        this.edge(before[1], l);
      }
    });
  }

  private addPatchSide(side: Line, strips: readonly Strip[], patchSides: readonly Line[], spacing: number): void {
    const length = Math.hypot(side[1][0] - side[0][0], side[1][1] - side[0][1]);
    const marks = [0, 1];
    for (const strip of strips) for (const long of longSides(strip)) marks.push(...[meeting(side, long)?.t ?? 0]);
    for (const other of patchSides) {
      marks.push(meeting(side, other)?.t ?? 0);
      for (const corner of other) marks.push(placeOn(side, corner) ?? 0);
    }
    marks.sort((p, q) => p - q);
    const apart = marks.filter((t, i) => i === 0 || (t - marks[i - 1]!) * length > 1e-6);
    for (let i = 1; i < apart.length; i++) {
      const [from, to] = [apart[i - 1]!, apart[i]!];
      const within = strips.some(({ corners }) => inside(corners, along(side, (from + to) / 2)));
      const pieces = within ? 1 : Math.max(1, Math.round(((to - from) * length) / spacing));
      const chain = Array.from({ length: pieces + 1 }, (_, k) =>
        this.point(along(side, from + ((to - from) * k) / pieces)),
      );
      for (let k = 1; k < chain.length; k++) this.edge(chain[k - 1]!, chain[k]!);
    }
  }

  /** Corners of the curve, places beside what lies close to it, and an even division between. */
  private addRing(curve: ClosedCurve, inner: readonly PointMm[], spacing: number): void {
    const marks = [...curve.corners];
    const close = inner
      .map(([x, y]) => curve.nearest(x, y))
      .filter(({ distance }) => distance < 0.8 * spacing)
      .sort((p, q) => p.distance - q.distance);
    for (const { s, distance } of close) {
      const room = Math.min(0.5 * spacing, Math.max(0.6 * distance, 5));
      const free = marks.every((m) => {
        const d = Math.abs(m - s);
        return Math.min(d, curve.length - d) >= room;
      });
      if (free) marks.push(s);
    }
    if (marks.length === 0) marks.push(0);
    marks.sort((p, q) => p - q);
    const places = marks.flatMap((from, i) => {
      const to = i + 1 < marks.length ? marks[i + 1]! : marks[0]! + curve.length;
      const pieces = Math.max(marks.length > 1 ? 1 : 8, Math.round((to - from) / spacing));
      return Array.from({ length: pieces }, (_, k) => (from + ((to - from) * k) / pieces) % curve.length);
    });
    const ring = places.map((s) => ({ point: this.point(curve.at(s)), s }));
    ring.forEach(({ point }, i) => this.edge(point, ring[(i + 1) % ring.length]!.point));
    this.rings.push(ring);
  }

  private point(p: PointMm): number {
    const found = this.points.findIndex(([x, y]) => Math.hypot(x - p[0], y - p[1]) < 1e-4);
    return found >= 0 ? found : this.points.push(p) - 1;
  }

  private edge(a: number, b: number): void {
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    if (a === b || this.known.has(key)) return;
    this.known.add(key);
    this.edges.push([a, b]);
  }
}

const along = ([a, b]: Line, t: number): PointMm => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];

function sidesOf(corners: readonly PointMm[]): Line[] {
  return corners.map((a, i): Line => [a, corners[(i + 1) % corners.length]!]);
}

/** Where on a line a point lies, as part of its length; undefined when it lies beside. */
function placeOn([a, b]: Line, [x, y]: PointMm): number | undefined {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const length = Math.hypot(dx, dy);
  const t = ((x - a[0]) * dx + (y - a[1]) * dy) / length ** 2;
  const off = Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / length;
  return off < 1e-6 && t >= 0 && t <= 1 ? t : undefined;
}

function inside(corners: readonly PointMm[], [x, y]: PointMm): boolean {
  return sidesOf(corners).every(([a, b]) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]) > 1e-9);
}
