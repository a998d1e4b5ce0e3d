/**
 * Least squares against certified values: the data sets "Norris" and "Longley" of the Statistical Reference Datasets of
 * NIST (J.W. Longley, J. Am. Stat. Assoc. 62, 1967), data and certified values written down from memory.
 */
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { leastSquares } from '../../language/recipes/builds/least-squares.js';
import { separate } from '../../language/recipes/builds/separation.js';

const NORRIS: readonly (readonly [y: number, x: number])[] = [
  [0.1, 0.2], [338.8, 337.4], [118.1, 118.2], [888.0, 884.6], [9.2, 10.1], [228.1, 226.5], [668.5, 666.3],
  [998.5, 996.3], [449.1, 448.6], [778.9, 777.0], [559.2, 558.2], [0.3, 0.4], [0.1, 0.6], [778.1, 775.5],
  [668.8, 666.9], [339.3, 338.0], [448.9, 447.5], [10.8, 11.6], [557.7, 556.0], [228.3, 228.1], [998.0, 995.8],
  [888.8, 887.6], [119.6, 120.2], [0.3, 0.3], [0.6, 0.3], [557.6, 556.8], [339.3, 339.1], [888.0, 887.2],
  [998.5, 999.0], [778.9, 779.0], [10.2, 11.1], [117.6, 118.3], [228.9, 229.2], [668.4, 669.1], [449.2, 448.9],
  [0.2, 0.5],
]; // prettier-ignore

const LONGLEY = {
  employed: [
    60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551,
  ],
  deflator: [83, 88.5, 88.2, 89.5, 96.2, 98.1, 99, 100, 101.2, 104.6, 108.4, 110.8, 112.6, 114.2, 115.7, 116.9],
  product: [
    234289, 259426, 258054, 284599, 328975, 346999, 365385, 363112, 397469, 419180, 442769, 444546, 482704, 502601,
    518173, 554894,
  ],
  unemployed: [2356, 2325, 3682, 3351, 2099, 1932, 1870, 3578, 2904, 2822, 2936, 4681, 3813, 3931, 4806, 4007],
  forces: [1590, 1456, 1616, 1650, 3099, 3594, 3547, 3350, 3048, 2857, 2798, 2637, 2552, 2514, 2572, 2827],
  population: [
    107608, 108632, 109773, 110929, 112075, 113270, 115094, 116219, 117388, 118734, 120445, 121950, 123366, 125368,
    127852, 130081,
  ],
  year: Array.from({ length: 16 }, (_, i) => 1947 + i),
};

describe('least squares', () => {
  it('has the certified line of Norris', () => {
    const [x, y] = [NORRIS.map(([, each]) => each), NORRIS.map(([each]) => each)];
    const fit = leastSquares([x], y);
    const deviation = Math.sqrt(fit.leftover.squares / fit.leftover.freedom);
    const meanX = x.reduce((sum, each) => sum + each, 0) / x.length;
    expect(fit.leftover.freedom).toBe(34);
    expect(fit.slopes[0]!).toBeCloseTo(1.00211681802045, 12);
    expect(fit.mean - fit.slopes[0]! * meanX).toBeCloseTo(-0.262323073774029, 10);
    expect(deviation).toBeCloseTo(0.884796396144373, 11);
    expect(deviation * Math.sqrt(fit.variances[0]!)).toBeCloseTo(0.000429796848199937, 14);
  });

  it('has the certified coefficients of Longley, when told to take them for separable', () => {
    const { employed, ...others } = LONGLEY;
    const fit = leastSquares(Object.values(others), employed, 1e-9);
    const deviation = Math.sqrt(fit.leftover.squares / fit.leftover.freedom);
    const certified = [
      [15.0618722713733, 84.9149257747669],
      [-0.035819179292591, 0.0334910077722432],
      [-2.02022980381683, 0.488399681651699],
      [-1.03322686717359, 0.214274163161675],
      [-0.0511041056535807, 0.22607320006937],
      [1829.15146461355, 455.478499142212],
    ] as const;
    certified.forEach(([slope, error], i) => {
      expect(fit.slopes[i]! / slope).toBeCloseTo(1, 8);
      expect((deviation * Math.sqrt(fit.variances[i]!)) / error).toBeCloseTo(1, 8);
    });
    expect(deviation).toBeCloseTo(304.854073561965, 7);
  });

  it('agrees with a library where one combination was never varied, for what is clear of it', () => {
    // Two pots of glue came with two billets; the third column is clear of both.
    const [a, c] = [
      [0, 0, 1, 1, 1, 0],
      [2, 5, 3, 9, 4, 4],
    ];
    const y = [1.2, 2.9, 4.1, 7.7, 4.4, 2.1];
    const fit = leastSquares([a, a, c], y);
    const reference = solve(new Matrix(y.map((_, row) => [1, a[row]!, c[row]!])), Matrix.columnVector(y));
    expect(fit.slopes[2]!).toBeCloseTo(reference.get(2, 0), 10);
    expect(fit.slopes[0]! + fit.slopes[1]!).toBeCloseTo(reference.get(1, 0), 10);
    expect(fit.leftover.freedom).toBe(3);
  });
});

describe('separation', () => {
  it('does not hold the columns of Longley to be separable, but those that went their own way', () => {
    const { employed, ...others } = LONGLEY;
    expect(employed).toHaveLength(16);
    const names = Object.keys(others);
    const { groups, clear } = separate(Object.values(others));
    expect(groups.map((group) => group.map((i) => names[i]))).toEqual([
      ['deflator', 'product', 'population', 'year'],
      ['unemployed'],
      ['forces'],
    ]);
    expect(clear).toEqual(groups);
  });

  it('names what always moved together as one, whatever the sign or unit', () => {
    expect(
      separate([
        [0, 0, 1, 1],
        [5, 5, 3, 3],
        [0, 1, 0, 1],
      ]),
    ).toEqual({
      groups: [[0, 1], [2]],
      clear: [[0, 1], [2]],
      tangled: [],
    });
  });

  it('finds a column that is made up of two others, and leaves the fourth alone', () => {
    const { clear, tangled } = separate([
      [1, 0, 0, 0, 1, 0],
      [0, 1, 0, 0, 0, 1],
      [1, 1, 0, 0, 1, 1],
      [0, 0, 1, 0, 1, 1],
    ]);
    expect(tangled).toEqual([[[0], [1], [2]]]);
    expect(clear).toEqual([[3]]);
  });

  it('leaves out what never moved', () => {
    expect(
      separate([
        [2.8, 2.8, 2.8],
        [1, 2, 1],
      ]).groups,
    ).toEqual([[1]]);
  });
});
