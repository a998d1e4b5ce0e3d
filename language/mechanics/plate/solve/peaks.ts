/**
 * The lowest point in front of the bridge and the highest behind it, wherever in an element it lies: along each side w bends by
 * what the turns of its ends differ by, however much the plate shears (linked interpolation; F. Auricchio & R.L. Taylor,
 * Comput. Methods Appl. Mech. Eng. 117, 1994, from memory). Neighbours share what their side does: the surface is one piece, and its lowest
 * point moves smoothly, also where another node comes to move most. It is a weighted sum of movements and turns of four
 * corners, whose weights are also its slope.
 */
import type { SolvedState } from '../solution.js';

/** Movement and turns of each node. */
export interface Bent {
  readonly w: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
}

/** Weights on the movement w of some nodes, and on their turns βx and βy. */
export interface Peak {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
  readonly turnsX: readonly number[];
  readonly turnsY: readonly number[];
}

/** Absent where nothing sinks or rises. `centre`: of the bridge along the load's direction; absent: the whole plate counts. */
export function peaksOf(
  state: Pick<SolvedState, 'top' | 'model'>,
  bent: Bent,
  centre: number | undefined,
): { readonly dip?: Peak; readonly belly?: Peak } {
  return { dip: peakOf(state, bent, centre, 1), belly: peakOf(state, bent, centre, -1) };
}

export function valueOfPeak({ nodes, weights, turnsX, turnsY }: Peak, { w, bx, by }: Bent): number {
  return nodes.reduce((sum, n, i) => sum + weights[i]! * w[n]! + turnsX[i]! * bx[n]! + turnsY[i]! * by[n]!, 0);
}

/** Corners of the reference square, in the order of a quadrilateral's nodes. */
const XI = [-1, 1, 1, -1];
const ETA = [-1, -1, 1, 1];
/** Points a side at which an element is looked at before the lowest are followed down. */
const SAMPLES = 5;
/** How many elements are followed, and to what step of the reference square. */
const FOLLOWED = 6;
const FINEST = 1e-4;
/** An element is looked at where a corner moves this share of what the node does that moves most. */
const WORTH = 0.7;

interface Found {
  readonly quad: number;
  readonly xi: number;
  readonly eta: number;
  readonly height: number;
}

/** `sign`: 1 for the lowest point ahead of the centre, −1 for the highest behind it. */
function peakOf(
  { top, model }: Pick<SolvedState, 'top' | 'model'>,
  bent: Bent,
  centre: number | undefined,
  sign: 1 | -1,
): Peak | undefined {
  const c = Math.cos(model.load?.direction ?? 0);
  const s = Math.sin(model.load?.direction ?? 0);
  const { x, y } = top;
  const { quads } = top.mesh;
  const counts = (px: number, py: number): boolean => centre === undefined || sign * (c * px + s * py - centre) > 0;
  let most = 0;
  for (const node of quads) if (counts(x[node]!, y[node]!)) most = Math.min(most, sign * bent.w[node]!);
  if (most === 0) return undefined;

  const shape = new Float64Array(12);
  const place = new Float64Array(2);
  const heightAt = (quad: number, xi: number, eta: number): number => {
    linked(x, y, quads, quad, xi, eta, shape, place);
    if (!counts(place[0]!, place[1]!)) return Infinity;
    let sum = 0;
    for (let k = 0; k < 4; k++) {
      const n = quads[4 * quad + k]!;
      sum += shape[3 * k]! * bent.w[n]! + shape[3 * k + 1]! * bent.bx[n]! + shape[3 * k + 2]! * bent.by[n]!;
    }
    return sign * sum;
  };
  const found: Found[] = [];
  for (let quad = 0; quad < quads.length / 4; quad++) {
    let low = 0;
    for (let k = 4 * quad; k < 4 * quad + 4; k++) low = Math.min(low, sign * bent.w[quads[k]!]!);
    if (low > WORTH * most) continue;
    let best: Found = { quad, xi: 0, eta: 0, height: Infinity };
    for (let i = 0; i < SAMPLES * SAMPLES; i++) {
      const xi = -1 + (2 * (i % SAMPLES)) / (SAMPLES - 1);
      const eta = -1 + (2 * Math.floor(i / SAMPLES)) / (SAMPLES - 1);
      const height = heightAt(quad, xi, eta);
      if (height < best.height) best = { quad, xi, eta, height };
    }
    found.push(best);
  }
  found.sort((a, b) => a.height - b.height);
  const lowest = found
    .slice(0, FOLLOWED)
    .map((start) => followed(start, heightAt))
    .reduce((least, one) => (one.height < least.height ? one : least));
  linked(x, y, quads, lowest.quad, lowest.xi, lowest.eta, shape, place);
  const of = (which: number): number[] => [0, 1, 2, 3].map((k) => shape[3 * k + which]!);
  return {
    nodes: Array.from(quads.subarray(4 * lowest.quad, 4 * lowest.quad + 4)),
    weights: of(0),
    turnsX: of(1),
    turnsY: of(2),
  };
}

/** Downhill within the element, by ever smaller steps. */
function followed(start: Found, heightAt: (quad: number, xi: number, eta: number) => number): Found {
  let { xi, eta, height } = start;
  for (let step = 1 / (SAMPLES - 1); step > FINEST; step /= 2) {
    for (let moved = true; moved;) {
      moved = false;
      for (const [dx, dy] of [
        [step, 0],
        [-step, 0],
        [0, step],
        [0, -step],
      ] as const) {
        const [nx, ny] = [Math.min(1, Math.max(-1, xi + dx)), Math.min(1, Math.max(-1, eta + dy))];
        const next = heightAt(start.quad, nx, ny);
        if (next < height) [xi, eta, height, moved] = [nx, ny, next, true];
      }
    }
  }
  return { quad: start.quad, xi, eta, height };
}

/** Weights on w, βx, βy of each corner at a point of the reference square, and where that point lies. */
function linked(
  x: Float64Array,
  y: Float64Array,
  quads: Int32Array,
  quad: number,
  xi: number,
  eta: number,
  out: Float64Array,
  place: Float64Array,
): void {
  out.fill(0);
  place.fill(0);
  for (let k = 0; k < 4; k++) {
    const [i, j] = [quads[4 * quad + k]!, quads[4 * quad + ((k + 1) & 3)]!];
    const level = ((1 + XI[k]! * xi) * (1 + ETA[k]! * eta)) / 4;
    out[3 * k] = level;
    place[0]! += level * x[i]!;
    place[1]! += level * y[i]!;
    // 1 in the middle of the side from this corner to the next, 0 on the others.
    const side = k & 1 ? ((1 - eta * eta) * (1 + XI[k]! * xi)) / 2 : ((1 - xi * xi) * (1 + ETA[k]! * eta)) / 2;
    const [dx, dy] = [x[j]! - x[i]!, y[j]! - y[i]!];
    const next = 3 * ((k + 1) & 3);
    out[3 * k + 1]! -= (side * dx) / 8;
    out[3 * k + 2]! -= (side * dy) / 8;
    out[next + 1]! += (side * dx) / 8;
    out[next + 2]! += (side * dy) / 8;
  }
}
