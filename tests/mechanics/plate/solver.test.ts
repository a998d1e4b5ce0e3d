/** The solver as a whole: what it remembers must not be seen in its answers. */
import { expect, test } from 'vitest';
import {
  changed,
  TopSolver,
  type TopModel,
  type TopParameter,
  type TopSolution,
} from '../../../language/mechanics/plate/index.js';
import { blank, guitarCases, HELD } from '../../published/plate/reference-tops.js';
import { variedTop } from './varied-top.js';

const model = guitarCases.e1_guitar_hinged_braced!.model;
const solution = (solver: TopSolver, top: TopModel, quickly = false): TopSolution => {
  const result = quickly ? solver.resolve(top) : solver.solve(top);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.solution;
};
const frequencies = ({ modes }: TopSolution): readonly number[] => modes.map(({ frequency }) => frequency);

test('after other tops and other sizes, the answer is that of a fresh start to the last digit', () => {
  const used = new TopSolver();
  solution(used, variedTop);
  solution(used, changed(model, { part: 'plate', quantity: 'thickness' }, 2e-4));
  solution(used, changed(model, { part: 'patch', index: 1, quantity: 'thickness' }, 1e-3));
  const [a, b] = [solution(used, model), solution(new TopSolver(), model)];
  expect(frequencies(a)).toEqual(frequencies(b));
  expect(a.statics).toEqual(b.statics);
});

const small: readonly (readonly [string, TopParameter, number])[] = [
  ['plate 0.1 mm thicker', { part: 'plate', quantity: 'thickness' }, 1e-4],
  ['plate 0.1 mm thinner', { part: 'plate', quantity: 'thickness' }, -1e-4],
  ['brace 1 mm higher', { part: 'brace', index: 0, quantity: 'height' }, 1e-3],
  ['bridge 0.2 mm thicker', { part: 'patch', index: 1, quantity: 'thickness' }, 2e-4],
  ['plate 5 % denser', { part: 'plate', quantity: 'density' }, 20],
  ['plate 5 % stiffer along', { part: 'plate', quantity: 'eAlong' }, 5.75e8],
];

const domed: TopModel = { ...model, plate: { ...model.plate, dome: 8 } };
const either = small.flatMap(([name, parameter, step]) => [
  [`flat, ${name}`, model, changed(model, parameter, step)] as const,
  [`domed, ${name}`, domed, changed(domed, parameter, step)] as const,
]);
const flatter: TopModel = { ...domed, plate: { ...domed.plate, dome: 8.1 } };

test.each([...either, ['dome 8.1 m for 8 m', domed, flatter] as const])(
  'the quick answer for %s is within 1 in 10,000 of the full one',
  (_name, from, other) => {
    const solver = new TopSolver();
    const before = solution(solver, from);
    const quick = solution(solver, other, true);
    const full = solution(new TopSolver(), other);
    full.modes.forEach(({ frequency }, i) => {
      expect(Math.abs(quick.modes[i]!.frequency / frequency - 1)).toBeLessThan(1e-4);
    });
    expect(Math.abs(quick.statics!.rotation / full.statics!.rotation - 1)).toBeLessThan(1e-4);
    expect(Math.abs(full.modes[0]!.frequency - before.modes[0]!.frequency)).toBeGreaterThan(0.01);
  },
);

test('a change too large for the quick answer is solved in full', () => {
  const solver = new TopSolver();
  solution(solver, model);
  const other = changed(model, { part: 'plate', quantity: 'thickness' }, 1.5e-3);
  expect(frequencies(solution(solver, other, true))).toEqual(frequencies(solution(new TopSolver(), other)));
});

test('asked to stop, it stops and says so', () => {
  for (const after of [0, 1, 2, 5]) {
    let asked = 0;
    const result = new TopSolver().solve(model, { shouldStop: () => asked++ >= after });
    expect(result).toMatchObject({ ok: false, stopped: true });
  }
});

test('a cached top takes less than 1 MB', () => {
  const solver = new TopSolver();
  const { state } = solution(solver, model);
  const seen = new Set<unknown>();
  /** Bytes of every typed array and eight for every number reachable from a value. */
  const bytes = (value: unknown): number => {
    if (typeof value !== 'object' || value === null || seen.has(value)) return 0;
    seen.add(value);
    if (ArrayBuffer.isView(value)) return value.byteLength;
    return Object.values(value).reduce((sum: number, each) => sum + (typeof each === 'number' ? 8 : bytes(each)), 0);
  };
  expect(bytes(state.unknowns) + bytes(state.top.mesh) + bytes(state)).toBeLessThan(1e6);
});

test('an edge spring goes from hinged to clamped', () => {
  const first = (edge: TopModel['edge']): number =>
    frequencies(solution(new TopSolver(), { ...blank(0.4, 0.3, 0.0028, edge) }))[0]!;
  const hinged = first(HELD);
  const clamped = first({ kind: 'clamped' });
  const sprung = [0, 1, 30, 1000, 1e7].map((rotation) => first({ kind: 'elastic', inPlane: 'held', rotation }));
  expect(sprung[0]! / hinged).toBeCloseTo(1, 10);
  sprung.slice(1).forEach((f, i) => {
    expect(f).toBeGreaterThan(sprung[i]!);
  });
  expect(sprung[4]! / clamped).toBeCloseTo(1, 2);
});

test('the mass is that of plate, braces and patches', () => {
  const { mass, area } = solution(new TopSolver(), model);
  const bridge = 1100 * 0.028 * 0.15 * 0.009;
  const bridgePlate = 830 * 0.05 * 0.15 * 0.0025;
  const braces = 400 * (2 * 0.008 * 0.014 * Math.hypot(0.25, 0.2871) + 0.006 * 0.01 * Math.hypot(0.074, 0.239));
  // Where the two braces cross, the block is one.
  const block = 400 * 0.008 * 0.008 * 0.014;
  expect(mass / (400 * 0.0028 * area + bridge + bridgePlate + braces - block)).toBeCloseTo(1, 2);
});

test('effective mass and stiffness at the bridge give the frequency back', () => {
  for (const { frequency, bridge } of solution(new TopSolver(), model).modes) {
    if (!bridge) continue;
    expect(Math.sqrt(bridge.effectiveStiffness / bridge.effectiveMass) / (2 * Math.PI) / frequency).toBeCloseTo(1, 9);
    expect(bridge.mobility * Math.sqrt(bridge.effectiveStiffness * bridge.effectiveMass)).toBeCloseTo(1, 9);
  }
});
