/** Four shapes for the block iteration to start from: level, tilted both ways, twisted, each with a little of everything mixed in. */
import type { DiscreteTop } from './discrete.js';
import type { Unknowns } from './degrees-of-freedom.js';

export function startingShapes({ x, y }: DiscreteTop, { slot, pattern }: Unknowns): Float64Array {
  const [cx, sx] = middleAndReach(x);
  const [cy, sy] = middleAndReach(y);
  const shapes = new Float64Array(4 * pattern.unknowns);
  let seed = 12345;
  for (let node = 0; node < x.length; node++) {
    const s = slot[5 * node + 2]!;
    if (s < 0) continue;
    const at = pattern.first[node]! + s;
    const px = (x[node]! - cx) / sx;
    const py = (y[node]! - cy) / sy;
    const values = [1, px, py, px * py];
    values.forEach((value, k) => {
      // A fixed sequence of mixed numbers (the "minimal standard" generator, S.K. Park & K.W. Miller, Commun. ACM 31, 1988).
      seed = (seed * 16807) % 2147483647;
      shapes[4 * at + k] = value + 0.1 * (seed / 1073741823.5 - 1);
    });
  }
  return shapes;
}

function middleAndReach(values: Float64Array): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return [(low + high) / 2, (high - low) / 2 || 1];
}
