/** The mesher: every plan gives convex quadrilaterals that keep its areas and follow its lines, or a plain refusal. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { TopSolver, type Brace, type TopModel } from '../../../language/mechanics/plate/index.js';
import { holeOutline } from '../../../language/mechanics/plate/mesh/mesh-lines.js';
import { meshTop, type TopMesh } from '../../../language/mechanics/plate/mesh/mesh.js';
import { contains, signedArea } from '../../../language/mechanics/plate/mesh/polygon.js';
import { quadQuality } from '../../../language/mechanics/plate/mesh/quadrilaterals.js';
import { validateTop } from './validate-top.js';
import { guitarCases, guitarOutline, guitarTop, HELD, xBraces } from '../../published/plate/reference-tops.js';
import { variedTop } from './varied-top.js';

const made = (model: TopModel, spacing: number): TopMesh => {
  const result = meshTop(model, spacing);
  if ('failure' in result) throw new Error(result.failure);
  return result.mesh;
};
const worst = ({ x, y, quads }: TopMesh): number => {
  let least = 1;
  for (let at = 0; at < quads.length; at += 4) least = Math.min(least, quadQuality(x, y, quads, at));
  return least;
};
const areaOf = ({ x, y, quads }: TopMesh): number => {
  let sum = 0;
  for (let q = 0; q < quads.length; q += 4) {
    sum += signedArea([0, 1, 2, 3].map((k) => [x[quads[q + k]!]!, y[quads[q + k]!]!] as const));
  }
  return sum;
};

const models = {
  ...Object.fromEntries(Object.entries(guitarCases).map(([name, { model }]) => [name, model])),
  varied: variedTop,
};

test.each(Object.entries(models))('%s: convex everywhere, area within 0.2 %%, braces whole', (_name, model) => {
  for (const spacing of [0.011, 0.014, 0.018, 0.022]) {
    const mesh = made(model, spacing);
    // Edges of two parts that lie a millimetre or two apart are both followed, so that corners may be narrow; accuracy is tested elsewhere.
    expect(worst(mesh)).toBeGreaterThan(0.01);
    const hole = Math.abs(signedArea(holeOutline(model.holes![0]!)));
    expect(areaOf(mesh) / (Math.abs(signedArea(model.outline)) - hole)).toBeCloseTo(1, 2.5);
    model.braces?.forEach(({ axis }, index) => {
      const [a, b] = [axis[0]!, axis[axis.length - 1]!];
      let length = 0;
      mesh.ribBrace.forEach((brace, r) => {
        const [p, q] = [mesh.ribs[2 * r]!, mesh.ribs[2 * r + 1]!];
        if (brace === index) length += Math.hypot(mesh.x[q]! - mesh.x[p]!, mesh.y[q]! - mesh.y[p]!);
      });
      expect(length / Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(1, 2);
    });
  }
});

test('the same plan gives the same mesh to the last digit', () => {
  const [a, b] = [made(variedTop, 0.016), made(structuredClone(variedTop), 0.016)];
  expect(a).toEqual(b);
});

test('every side lies between at most two quadrilaterals, and the plate is in one piece', () => {
  const { quads } = made(variedTop, 0.016);
  const sides = new Map<string, number>();
  for (let i = 0; i < quads.length; i++) {
    const [a, b] = [quads[i]!, quads[(i & ~3) + ((i + 1) & 3)]!];
    const key = `${Math.min(a, b)} ${Math.max(a, b)}`;
    sides.set(key, (sides.get(key) ?? 0) + 1);
  }
  expect(Math.max(...sides.values())).toBe(2);
  const nodes = new Set(quads).size;
  // Vertices − sides + faces of a plate with one hole is 0.
  expect(nodes - sides.size + quads.length / 4).toBe(0);
});

test('random braces, wherever they cross, end or run off: convex, or refused with a sentence', () => {
  const place = fc.tuple(
    fc.double({ min: 0, max: 0.49, noNaN: true }),
    fc.double({ min: -0.2, max: 0.2, noNaN: true }),
  );
  const brace = fc.tuple(place, place).map(([from, to]): Brace => ({ ...xBraces[0]!, axis: [from, to] }));
  fc.assert(
    fc.property(fc.array(brace, { minLength: 1, maxLength: 7 }), fc.constantFrom(0.014, 0.02), (braces, spacing) => {
      const model = guitarTop(HELD, { braces });
      if (validateTop(model).some(({ severity }) => severity === 'error')) return;
      const result = meshTop(model, spacing);
      if ('failure' in result) expect(result.failure).toMatch(/^The plan .*\.$|^The lines .*\.$/);
      else expect(worst(result.mesh)).toBeGreaterThan(0);
    }),
    { numRuns: 60 },
  );
});

test('ends of braces a little short of the outline are divided as they are; each step shorter is softer', () => {
  const { axis } = xBraces[0]!;
  const [[x0, y0], [x1, y1]] = [axis[0]!, axis[1]!];
  const length = Math.hypot(x1 - x0, y1 - y0);
  const [c, s] = [(x1 - x0) / length, (y1 - y0) / length];
  // From the X's lower end outward to the outline.
  let reach = 0;
  while (contains(guitarOutline, x0 - reach * c, y0 - reach * s)) reach += 0.0001;
  const frequencies = [0, 0.001, 0.002, 0.003, 0.004, 0.005, 0.008].map((gap) => {
    const end = reach - gap;
    const braces = xBraces.map((brace, i): Brace => {
      const side = i === 0 ? 1 : -1;
      return { ...brace, axis: [[x0 - end * c, side * (y0 - end * s)], brace.axis[1]!] };
    });
    const result = new TopSolver().solve(guitarTop(HELD, { braces }), { modes: 1, nodes: 600 });
    if (!result.ok) throw new Error(`${gap}: ${JSON.stringify(result.problems)}`);
    return result.solution.modes[0]!.frequency;
  });
  for (let k = 1; k < frequencies.length; k++) expect(frequencies[k]!).toBeLessThan(1.003 * frequencies[k - 1]!);
  expect(frequencies.at(-1)! / frequencies[0]!).toBeGreaterThan(0.97);
  expect(frequencies.at(-1)! / frequencies[0]!).toBeLessThan(0.997);
});
