/** Two hundred random plausible tops: each is divided without refusal, and no quadrilateral is turned inside out. */
import { expect, test } from 'vitest';
import { TopSolver } from '../../../language/mechanics/plate/index.js';
import { meshTop } from '../../../language/mechanics/plate/mesh/mesh.js';
import { quadQuality } from '../../../language/mechanics/plate/mesh/quadrilaterals.js';
import { validateTop } from './validate-top.js';
import { plausibleTop } from './plausible-tops.js';

const SEEDS = Array.from({ length: 200 }, (_, k) => k + 1);

test('two hundred tops, three densities: every corner of every quadrilateral is open', { timeout: 120_000 }, () => {
  for (const seed of SEEDS) {
    const model = plausibleTop(seed);
    expect(validateTop(model).filter(({ severity }) => severity === 'error')).toEqual([]);
    const spacing = [0.012, 0.016, 0.02][seed % 3]!;
    const made = meshTop(model, spacing);
    if ('failure' in made) throw new Error(`top ${seed}: ${made.failure}`);
    const { x, y, quads } = made.mesh;
    for (let at = 0; at < quads.length; at += 4) {
      // The least sine of the corners has the sign of the least Jacobian, which is least in a corner.
      expect(quadQuality(x, y, quads, at), `top ${seed}`).toBeGreaterThan(0.002);
    }
  }
});

test(
  'every tenth of them is solved to the end, with the first mode where such tops have it',
  { timeout: 60_000 },
  () => {
    const solver = new TopSolver();
    for (const seed of SEEDS.filter((each) => each % 10 === 0)) {
      const result = solver.solve(plausibleTop(seed), { modes: 2, nodes: 450 });
      if (!result.ok) throw new Error(`top ${seed}: ${JSON.stringify(result.problems)}`);
      expect(result.solution.modes[0]!.frequency, `top ${seed}`).toBeGreaterThan(50);
      expect(result.solution.modes[0]!.frequency, `top ${seed}`).toBeLessThan(300);
    }
  },
);
