/** Input that cannot be solved: a sentence at the right place, never an exception, a NaN or a hang. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TopSolver, type TopModel } from '../../../language/mechanics/plate/index.js';
import { validateTop } from './validate-top.js';
import { bridgeParts, guitarCases, HELD, spruce, xBraces } from '../../published/plate/reference-tops.js';
import { variedTop } from './varied-top.js';

const sound = guitarCases.e1_guitar_hinged_braced!.model;
const plate = (change: Partial<TopModel['plate']>): TopModel => ({ ...sound, plate: { ...sound.plate, ...change } });
const brace = (change: object): TopModel => ({ ...sound, braces: [{ ...xBraces[0]!, ...change }] });
const patch = (change: object): TopModel => ({ ...sound, patches: [{ ...bridgeParts[1]!, ...change }] });

const faults: readonly (readonly [string, TopModel, string])[] = [
  ['no thickness', plate({ thickness: 0 }), 'plate.thickness'],
  ['thickness not a number', plate({ thickness: NaN }), 'plate.thickness'],
  ['thickness given nowhere', plate({ thickness: { kind: 'points', points: [] } }), 'plate.thickness'],
  ['a block instead of a plate', plate({ thickness: 0.2 }), 'plate.thickness'],
  ['no stiffness', plate({ wood: { ...spruce, eAlong: 0 } }), 'plate.wood.eAlong'],
  ['stiffness in GPa taken for Pa', plate({ wood: { ...spruce, eAlong: 11.5 } }), 'plate.wood.eAlong'],
  ['infinite shear stiffness', plate({ wood: { ...spruce, shearAcross: Infinity } }), 'plate.wood.shearAcross'],
  ['impossible Poisson’s ratio', plate({ wood: { ...spruce, poisson: 5 } }), 'plate.wood.poisson'],
  ['no density', plate({ wood: { ...spruce, density: -1 } }), 'plate.wood.density'],
  ['grain not a number', plate({ grain: NaN }), 'plate.grain'],
  [
    'outline of two points',
    {
      ...sound,
      outline: [
        [0, 0],
        [1, 1],
      ],
    },
    'outline',
  ],
  [
    'outline that crosses itself',
    {
      ...sound,
      outline: [
        [0, 0],
        [0.4, 0.3],
        [0.4, 0],
        [0, 0.3],
      ],
    },
    'outline',
  ],
  [
    'outline with a hole in its numbers',
    {
      ...sound,
      outline: [
        [0, 0],
        [NaN, 0.3],
        [0.4, 0],
      ],
    },
    'outline',
  ],
  ['hole outside', { ...sound, holes: [{ centre: [2, 0], diameter: 0.1 }] }, 'holes.0'],
  ['hole that cuts the outline', { ...sound, holes: [{ centre: [0.335, 0.12], diameter: 0.1 }] }, 'holes.0'],
  ['hole of no size', { ...sound, holes: [{ centre: [0.335, 0], diameter: 0 }] }, 'holes.0.diameter'],
  [
    'two holes in one place',
    {
      ...sound,
      holes: [
        { centre: [0.335, 0], diameter: 0.1 },
        { centre: [0.34, 0], diameter: 0.05 },
      ],
    },
    'holes.1',
  ],
  [
    'brace off the top',
    brace({
      axis: [
        [2, 0],
        [3, 0],
      ],
    }),
    'braces.0.axis',
  ],
  ['brace of one point', brace({ axis: [[0.1, 0]] }), 'braces.0.axis'],
  ['brace without height', brace({ height: 0 }), 'braces.0.height'],
  ['brace without width', brace({ width: 0 }), 'braces.0.width'],
  ['brace 14 m tall', brace({ height: 14 }), 'braces.0.width'],
  [
    'brace stations out of order',
    brace({
      height: [
        { at: 0.2, height: 0.01 },
        { at: 0.1, height: 0.01 },
      ],
    }),
    'braces.0.height',
  ],
  [
    'bridge off the top',
    patch({
      outline: [
        [2, 0],
        [3, 0],
        [3, 1],
      ],
    }),
    'patches.0.outline',
  ],
  [
    'bridge over the edge',
    patch({
      outline: [
        [-0.1, -0.1],
        [0.1, -0.1],
        [0.1, 0.1],
      ],
    }),
    'patches.0.outline',
  ],
  [
    'bridge over the hole',
    patch({
      outline: [
        [0.3, -0.05],
        [0.37, -0.05],
        [0.37, 0.05],
      ],
    }),
    'patches.0.outline',
  ],
  ['bridge without thickness', patch({ thickness: 0 }), 'patches.0.thickness'],
  ['edge of no stiffness', { ...sound, edge: { kind: 'elastic', inPlane: 'held', rotation: NaN } }, 'edge.rotation'],
  ['load on a part that is not there', { ...sound, load: { patch: 'saddle', couple: 8 } }, 'load.patch'],
  ['load not a number', { ...sound, load: { patch: 'bridge', couple: NaN } }, 'load'],
  ['one support only', { ...sound, edge: { kind: 'free' }, rests: [{ from: [0.2, -0.1], to: [0.2, 0.1] }] }, 'rests'],
];

test.each(faults)('%s', (_name, model, path) => {
  const errors = validateTop(model).filter(({ severity }) => severity === 'error');
  expect(errors.map((error) => error.path)).toContain(path);
  for (const { message } of errors) expect(message).toMatch(/^[A-Z].*\.$|check the unit\.$/);
  const result = new TopSolver().solve(model);
  expect(result.ok).toBe(false);
});

test('a brace that runs over the edge is cut there, with a warning', () => {
  const model = brace({
    axis: [
      [0.1, -0.3],
      [0.1, 0.3],
    ],
  });
  expect(validateTop(model)).toEqual([expect.objectContaining({ severity: 'warning', path: 'braces.0.axis' })]);
  expect(new TopSolver().solve(model).ok).toBe(true);
});

test('an outline that closes on its first point, or repeats one, is the same outline', () => {
  const again: TopModel = { ...sound, outline: [...sound.outline, sound.outline[0]!] };
  const [a, b] = [new TopSolver().solve(sound), new TopSolver().solve(again)];
  expect(a.ok && b.ok && a.solution.modes[0]!.frequency / b.solution.modes[0]!.frequency).toBeCloseTo(1, 12);
});

describe('wild numbers', () => {
  /** Every number of a model, in order of appearance. */
  const countNumbers = (value: unknown): number =>
    typeof value === 'number'
      ? 1
      : typeof value === 'object' && value !== null
        ? Object.values(value).reduce((sum: number, each) => sum + countNumbers(each), 0)
        : 0;
  const replaced = (value: unknown, at: { left: number }, by: number): unknown => {
    if (typeof value === 'number') return at.left-- === 0 ? by : value;
    if (Array.isArray(value)) return value.map((each) => replaced(each, at, by));
    if (typeof value === 'object' && value !== null) {
      return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, replaced(each, at, by)]));
    }
    return value;
  };
  // A short outline, so that the numbers drawn are not all outline.
  const base: TopModel = {
    ...variedTop,
    outline: [
      [0, -0.15],
      [0.45, -0.13],
      [0.45, 0.13],
      [0, 0.15],
    ],
    edge: HELD,
  };
  const numbers = countNumbers(base);

  test('one number gone mad: an answer with finite numbers, or a sentence', () => {
    const solver = new TopSolver();
    const wild = fc.constantFrom(NaN, Infinity, -Infinity, 0, -1, 1e-300, 1e300, 1e-6, 1e6);
    fc.assert(
      fc.property(fc.nat(numbers - 1), wild, (which, by) => {
        const result = solver.solve(replaced(base, { left: which }, by) as TopModel, { nodes: 120, modes: 3 });
        if (!result.ok) {
          expect(result.problems.length).toBeGreaterThan(0);
          return;
        }
        for (const { frequency, shape } of result.solution.modes) {
          expect(Number.isFinite(frequency)).toBe(true);
          expect(shape.every(Number.isFinite)).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });
});
