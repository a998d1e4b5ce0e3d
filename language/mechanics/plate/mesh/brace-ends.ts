/**
 * A brace pushes on the plate over its whole width, and the square end of a brace holds the plate level across it. Drawn as a line without
 * width it would dent the plate at its end, the more so the finer the mesh: 1 to 2 % too low for the first modes of an X-braced top.
 * So the plate ahead of an end counts as rigid over the width of the brace and a quarter of it in length; each quadrilateral
 * is stiffened by what it shares with that place. (The quarter is our own choice, by the solid-element tops
 * under tests/published/plate/solid: with twice of it first modes come out about 1 % higher, and the third of the fan-strutted one 4 % too high.)
 */
import { AT_MASS, LAMINATE_SIZE } from '../element/laminate.js';
import type { TopMesh } from './mesh.js';
import type { Point, TopModel } from '../model.js';
import { signedArea } from './polygon.js';

export interface EndHold {
  readonly quad: number;
  /** Share of its area that is held. */
  readonly share: number;
}

const REACH = 1 / 4;
const MOST = 0.9;

export function endHolds(model: TopModel, mesh: TopMesh, x: Float64Array, y: Float64Array): readonly EndHold[] {
  const held = new Map<number, number>();
  const longest = longestSide(mesh, x, y);
  for (const { node, inner, brace } of openEnds(mesh)) {
    const { width } = model.braces![brace]!;
    const length = Math.hypot(x[node]! - x[inner]!, y[node]! - y[inner]!);
    const c = (x[node]! - x[inner]!) / length;
    const s = (y[node]! - y[inner]!) / length;
    for (let quad = 0; quad < mesh.quads.length / 4; quad++) {
      // One corner tells most of them apart at once: no quadrilateral reaches farther than twice the longest side.
      const corner = mesh.quads[4 * quad]!;
      const near = width + 2 * longest;
      if (Math.abs(x[corner]! - x[node]!) > near || Math.abs(y[corner]! - y[node]!) > near) continue;
      if (far(mesh.quads, quad, node, x, y, width)) continue;
      // x ahead of the end, y to its left.
      const local = Array.from(mesh.quads.subarray(4 * quad, 4 * quad + 4), (k): Point => {
        const [dx, dy] = [x[k]! - x[node]!, y[k]! - y[node]!];
        return [c * dx + s * dy, c * dy - s * dx];
      });
      const common = clipped(local, REACH * width, width / 2);
      if (common.length < 3) continue;
      const share = signedArea(common) / signedArea(local);
      if (share > 1e-6) held.set(quad, Math.min(MOST, (held.get(quad) ?? 0) + share));
    }
  }
  return [...held].map(([quad, share]) => ({ quad, share }));
}

function longestSide({ quads }: TopMesh, x: Float64Array, y: Float64Array): number {
  let most = 0;
  for (let i = 0; i < quads.length; i++) {
    const [a, b] = [quads[i]!, quads[(i & ~3) + ((i + 1) & 3)]!];
    most = Math.max(most, (x[b]! - x[a]!) ** 2 + (y[b]! - y[a]!) ** 2);
  }
  return Math.sqrt(most);
}

/** Stiffens the laminate rows (each of these quadrilaterals has a row of its own). */
export function holdEnds(holds: readonly EndHold[], laminateOf: Int32Array, rows: Float64Array): void {
  for (const { quad, share } of holds) {
    const at = laminateOf[quad]! * LAMINATE_SIZE;
    for (let k = at; k < at + AT_MASS; k++) rows[k]! /= 1 - share;
  }
}

/** Ends of braces that lie neither on the outline nor on the rim of a hole. */
function openEnds(mesh: TopMesh): { node: number; inner: number; brace: number }[] {
  const { ribs, ribBrace, rimSides, holeSides, quads } = mesh;
  const edge = new Set<number>();
  for (const sides of [rimSides, holeSides]) {
    for (let e = 0; e < sides.length; e += 2) {
      edge.add(quads[4 * sides[e]! + sides[e + 1]!]!).add(quads[4 * sides[e]! + ((sides[e + 1]! + 1) & 3)]!);
    }
  }
  const pieces = new Map<string, number[]>();
  ribs.forEach((node, i) => {
    const key = `${ribBrace[i >> 1]!} ${node}`;
    pieces.set(key, [...(pieces.get(key) ?? []), i]);
  });
  return [...pieces.values()].flatMap(([i, second]) => {
    const node = ribs[i!]!;
    return second !== undefined || edge.has(node) ? [] : [{ node, inner: ribs[i! ^ 1]!, brace: ribBrace[i! >> 1]! }];
  });
}

/** Whether all corners lie on one side of the square of twice the width around a node, so that nothing is shared. */
function far(quads: Int32Array, quad: number, node: number, x: Float64Array, y: Float64Array, width: number): boolean {
  let [left, right, below, above] = [true, true, true, true];
  for (let k = 4 * quad; k < 4 * quad + 4; k++) {
    const dx = x[quads[k]!]! - x[node]!;
    const dy = y[quads[k]!]! - y[node]!;
    left &&= dx < -width;
    right &&= dx > width;
    below &&= dy < -width;
    above &&= dy > width;
  }
  return left || right || below || above;
}

/** The part of a convex polygon within 0 ≤ x ≤ `ahead`, |y| ≤ `half` (I.E. Sutherland & G.W. Hodgman, 1974). */
function clipped(polygon: readonly Point[], ahead: number, half: number): readonly Point[] {
  let left = polygon;
  for (const inside of [
    ([px]: Point) => px,
    ([px]: Point) => ahead - px,
    ([, py]: Point) => half - py,
    ([, py]: Point) => half + py,
  ]) {
    left = left.flatMap((p, i) => {
      const q = left[(i + 1) % left.length]!;
      const [dp, dq] = [inside(p), inside(q)];
      const kept: Point[] = dp >= 0 ? [p] : [];
      if (dp * dq < 0) {
        const t = dp / (dp - dq);
        kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]);
      }
      return kept;
    });
  }
  return left;
}
