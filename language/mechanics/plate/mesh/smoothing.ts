/** Moves free nodes for better-shaped quadrilaterals; never accepts a move that makes the worst one around a node worse. */
import { quadQuality } from './quadrilaterals.js';

/** Changes `x`, `y` of the nodes with `free[i] = 1`. A few sweeps in fixed order, so the result is the same every time. */
export function smooth(x: Float64Array, y: Float64Array, quads: Int32Array, free: Uint8Array, sweeps: number): void {
  const around = quadsAround(quads, x.length);
  for (let sweep = 0; sweep < sweeps; sweep++) {
    for (let node = 0; node < x.length; node++) {
      if (!free[node]) continue;
      const own = around.list.subarray(around.start[node], around.start[node + 1]);
      let sx = 0;
      let sy = 0;
      let weight = 0;
      for (const quad of own) {
        const at = 4 * quad;
        let k = 0;
        while (quads[at + k] !== node) k++;
        const a = quads[at + ((k + 1) & 3)]!;
        const b = quads[at + ((k + 3) & 3)]!;
        const c = quads[at + ((k + 2) & 3)]!;
        // Where this node would make a parallelogram of the quadrilateral, averaged with the plain mean of the neighbours.
        sx += 0.5 * (x[a]! + x[b]! - x[c]!) + 0.25 * (x[a]! + x[b]!);
        sy += 0.5 * (y[a]! + y[b]! - y[c]!) + 0.25 * (y[a]! + y[b]!);
        weight++;
      }
      if (weight === 0) continue;
      move(x, y, quads, own, node, sx / weight, sy / weight);
    }
  }
}

function move(
  x: Float64Array,
  y: Float64Array,
  quads: Int32Array,
  own: Int32Array,
  node: number,
  toX: number,
  toY: number,
): void {
  const oldX = x[node]!;
  const oldY = y[node]!;
  const before = worst(x, y, quads, own);
  for (const share of [1, 0.5, 0.25]) {
    x[node] = oldX + share * (toX - oldX);
    y[node] = oldY + share * (toY - oldY);
    const after = worst(x, y, quads, own);
    if (after >= before || after > 0.85) return;
  }
  x[node] = oldX;
  y[node] = oldY;
}

function worst(x: Float64Array, y: Float64Array, quads: Int32Array, own: Int32Array): number {
  let least = 1;
  for (const quad of own) least = Math.min(least, quadQuality(x, y, quads, 4 * quad));
  return least;
}

function quadsAround(quads: Int32Array, nodes: number): { readonly start: Int32Array; readonly list: Int32Array } {
  const start = new Int32Array(nodes + 1);
  for (const node of quads) start[node + 1]!++;
  for (let i = 0; i < nodes; i++) start[i + 1]! += start[i]!;
  const fill = start.slice();
  const list = new Int32Array(quads.length);
  for (let i = 0; i < quads.length; i++) list[fill[quads[i]!]!++] = i >> 2;
  return { start, list };
}
