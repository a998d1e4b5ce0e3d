/** The statistics behind the evidence, each against something outside the project. */
import { Matrix, inverse as inverseOf, solve } from 'ml-matrix';
import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { standOut } from '../../../../language/recipes/builds/statistics/false-discovery.js';
import { generalised } from '../../../../language/recipes/builds/statistics/generalised.js';
import { studentised } from '../../../../language/recipes/builds/statistics/odd-readings.js';
import { chanceOfRanks } from '../../../../language/recipes/builds/statistics/permutation.js';
import { buildsUntilTold, findable } from '../../../../language/recipes/builds/statistics/power.js';
import { rankCorrelation } from '../../../../language/recipes/builds/statistics/rank-correlation.js';
import { varianceBetween } from '../../../../language/recipes/builds/statistics/scatter.js';
import { chanceBeyond, chanceOfF, studentT } from '../../../../language/recipes/builds/statistics/student-t.js';

const FLAT = { mean: 0, variance: Number.POSITIVE_INFINITY };

describe('Student’s t and F', () => {
  it('is the printed table (Abramowitz & Stegun, table 26.10, from memory)', () => {
    expect(studentT(0.95, 1)).toBeCloseTo(12.706, 3);
    expect(studentT(0.95, 4)).toBeCloseTo(2.776, 3);
    expect(studentT(0.95, 10)).toBeCloseTo(2.228, 3);
    expect(studentT(0.99, 5)).toBeCloseTo(4.032, 3);
    expect(studentT(0.95, Number.POSITIVE_INFINITY)).toBeCloseTo(1.96, 3);
  });

  it.each([0.7, 1, 2.5, 4, 9.3, 33, 400])('agrees with a library for %f degrees of freedom', (freedom) => {
    for (const within of [0.5, 0.8, 0.95, 0.999]) {
      const ours = studentT(within, freedom);
      expect(ours / jstat.studentt.inv(0.5 + within / 2, freedom)).toBeCloseTo(1, 6);
      expect(chanceBeyond(ours, freedom)).toBeCloseTo(1 - within, 10);
    }
    for (const f of [0.3, 1, 4.2])
      expect(chanceOfF(f, 3, freedom)).toBeCloseTo(1 - jstat.centralF.cdf(f, 3, freedom), 8);
  });
});

describe('generalised least squares', () => {
  const rows = [
    [1, 0, 2.8],
    [1, 0, 2.75],
    [1, 1, 2.6],
    [1, 1, 2.7],
    [1, 0, 2.5],
    [1, 1, 2.85],
  ];
  const y = [5.2, 5.1, 4.6, 4.9, 4.7, 5.3];
  const covariance = rows.map((_, i) => rows.map((__, j) => (i === j ? 0.02 : Math.abs(i - j) === 1 ? 0.008 : 0)));

  it('is (XᵀV⁻¹X)⁻¹XᵀV⁻¹y, worked out by a library', () => {
    const found = generalised({ rows, y, covariance, priors: [FLAT, FLAT, FLAT] })!;
    const [x, v] = [new Matrix(rows), inverseOf(new Matrix(covariance))];
    const spread = inverseOf(x.transpose().mmul(v).mmul(x));
    const means = spread.mmul(x.transpose()).mmul(v).mmul(Matrix.columnVector(y));
    found.means.forEach((mean, i) => expect(mean).toBeCloseTo(means.get(i, 0), 10));
    found.covariance.forEach((row, i) => row.forEach((c, j) => expect(c).toBeCloseTo(spread.get(i, j), 10)));
    found.weights.forEach((w, i) =>
      expect(w.reduce((sum, each, n) => sum + each * y[n]!, 0)).toBeCloseTo(means.get(i, 0), 10),
    );
  });

  it('adds what is known beforehand as precision, worked out by a library', () => {
    const priors = [FLAT, { mean: -0.2, variance: 0.01 }, { mean: 1.5, variance: 0.25 }];
    const found = generalised({ rows, y, covariance, priors })!;
    const [x, v] = [new Matrix(rows), inverseOf(new Matrix(covariance))];
    const precision = x
      .transpose()
      .mmul(v)
      .mmul(x)
      .add(Matrix.diag([0, 100, 4]));
    const right = x
      .transpose()
      .mmul(v)
      .mmul(Matrix.columnVector(y))
      .add(Matrix.columnVector([0, -20, 6]));
    const means = solve(precision, right);
    found.means.forEach((mean, i) => expect(mean).toBeCloseTo(means.get(i, 0), 10));
  });

  // G.E.P. Box & G.C. Tiao, Bayesian Inference in Statistical Analysis, 1973, sec. 1.2.3: two physicists and one
  // observation of 850 with a standard deviation of 40 (from memory; the book prints 890 and 17.9, 840 and 35.7).
  it.each([
    [900, 20, 890, 17.9],
    [800, 80, 840, 35.8],
  ])('has the two physicists of the textbook: %i ± %i becomes %i ± %f', (mean, deviation, after, spread) => {
    const found = generalised({
      rows: [[1]],
      y: [850],
      covariance: [[1600]],
      priors: [{ mean, variance: deviation ** 2 }],
    })!;
    expect(found.means[0]).toBeCloseTo(after, 9);
    expect(Math.sqrt(found.covariance[0]![0]!)).toBeCloseTo(spread, 1);
  });

  it('refuses what nothing tells apart', () => {
    const twice = rows.map(([a, b]) => [a!, b!, b!]);
    expect(generalised({ rows: twice, y, covariance, priors: [FLAT, FLAT, FLAT] })).toBeUndefined();
    expect(generalised({ rows: twice, y, covariance, priors: [FLAT, FLAT, { mean: 0, variance: 1 }] })).toBeDefined();
  });
});

describe('scatter between instruments', () => {
  // O.L. Davies, Statistical Methods in Research and Production, 1947, table 6.3: yields of dyestuff from six batches, five
  // preparations each. Restricted maximum likelihood gives 1764 between batches and 2451 within (Pinheiro & Bates; from memory).
  const BATCHES = [
    [1545, 1440, 1440, 1520, 1580],
    [1540, 1555, 1490, 1560, 1495],
    [1595, 1550, 1605, 1510, 1560],
    [1445, 1440, 1595, 1465, 1545],
    [1595, 1630, 1515, 1635, 1625],
    [1520, 1455, 1450, 1480, 1445],
  ];
  const y = BATCHES.flat();
  const owners = BATCHES.flatMap((batch, i) => batch.map(() => i));
  const within = BATCHES.reduce((sum, batch) => {
    const mean = batch.reduce((a, b) => a + b) / 5;
    return sum + batch.reduce((a, b) => a + (b - mean) ** 2, 0);
  }, 0) / 24; // prettier-ignore

  it('is the published one of six batches', () => {
    expect(within).toBeCloseTo(2451.25, 2);
    const model = { rows: y.map(() => [1]), y, owners, errors: y.map(() => within), priors: [FLAT] };
    expect(varianceBetween(model)).toBeCloseTo(1764.05, 0);
  });

  it('is the pooled variance of plain replicates, a stated figure counting like more of them', () => {
    const plain = { rows: [[1], [1], [1]], y: [1, 2, 3], owners: [0, 1, 2], errors: [0, 0, 0], priors: [FLAT] };
    expect(varianceBetween(plain)).toBeCloseTo(1, 6);
    expect(varianceBetween({ ...plain, stated: { variance: 0.1, weight: 4 } })).toBeCloseTo((2 + 0.4) / 6, 6);
  });
});

describe('many comparisons', () => {
  it('names the four of fifteen that Benjamini & Hochberg (1995, sec. 3.2) name', () => {
    const chances = [
      0.0001, 0.0004, 0.0019, 0.0095, 0.0201, 0.0278, 0.0298, 0.0344, 0.0459, 0.324, 0.4262, 0.5719, 0.6528, 0.759, 1,
    ];
    expect(standOut(chances, 0.05).filter(Boolean)).toHaveLength(4);
    expect(standOut([...chances].reverse(), 0.05).slice(-4)).toEqual([true, true, true, true]);
    expect(standOut([], 0.05)).toEqual([]);
  });
});

describe('odd readings', () => {
  it('are as far off as the line through the others says, worked out by a library without them', () => {
    const x = [0, 1, 2, 3, 4, 5, 6];
    const y = [1.1, 2.9, 5.2, 7.1, 12.4, 10.9, 13.1];
    const found = studentised(x.map((each) => [1, each]), y)!; // prettier-ignore
    x.forEach((each, i) => {
      const rest = x.map((_, j) => j).filter((j) => j !== i);
      const a = new Matrix(rest.map((j) => [1, x[j]!]));
      const b = Matrix.columnVector(rest.map((j) => y[j]!));
      const line = solve(a, b);
      const left = a.mmul(line).sub(b).to1DArray();
      const s2 = left.reduce((sum, r) => sum + r * r, 0) / (rest.length - 2);
      const here = new Matrix([[1, each]]);
      const spread = here
        .mmul(inverseOf(a.transpose().mmul(a)))
        .mmul(here.transpose())
        .get(0, 0);
      expect(found[i]!.t).toBeCloseTo((y[i]! - here.mmul(line).get(0, 0)) / Math.sqrt(s2 * (1 + spread)), 8);
    });
    expect(found.map(({ chance }) => chance < 0.05)).toEqual([false, false, false, false, true, false, false]);
  });
});

describe('ranks', () => {
  it('has the printed chances of Spearman’s correlation (J.H. Zar, Biostatistical Analysis, table B.20, from memory)', () => {
    const five = rankCorrelation([1, 2, 3, 4, 5], [2, 3, 5, 7, 9])!;
    expect(five.rho).toBeCloseTo(1, 12);
    expect(five.chance).toBeCloseTo(2 / 120, 12);
    // n = 6, ρ = 0.829: below the 5 % point of the table, 0.886.
    const six = rankCorrelation([1, 2, 3, 4, 5, 6], [1, 2, 4, 5, 3, 6])!;
    expect(six.rho).toBeCloseTo(0.829, 3);
    expect(six.chance).toBeCloseTo(0.0583, 4);
    expect(rankCorrelation([1, 2, 3], [1, 2, 3])).toBeUndefined();
    expect(rankCorrelation([1, 2, 3, 4], [7, 7, 7, 7])).toBeUndefined();
    const many = Array.from({ length: 20 }, (_, i) => i);
    expect(rankCorrelation(many, many.map((i) => (i * 7) % 20))!.chance).toBeGreaterThan(0.05); // prettier-ignore
  });

  it('deals two groups of four out in seventy ways (F. Wilcoxon 1945)', () => {
    expect(chanceOfRanks([1, 2, 3, 4], [5, 6, 7, 8])).toBeCloseTo(2 / 70, 12);
    expect(chanceOfRanks([1, 3, 5, 7], [2, 4, 6, 8])).toBeGreaterThan(0.5);
    expect(chanceOfRanks([8, 8], [8, 8, 8])).toBe(1);
    expect(chanceOfRanks([], [1])).toBeUndefined();
  });
});

describe('what next', () => {
  it('takes 2.8 standard errors where scatter is known (G.W. Snedecor & W.G. Cochran, sec. 6.14: (1.96 + 0.84)², from memory)', () => {
    expect(findable(Number.POSITIVE_INFINITY) ** 2).toBeCloseTo(7.85, 2);
  });

  it('counts the builds more', () => {
    // n builds with and three without: an effect of two scatters.
    const after = (n: number) => ({ error: Math.sqrt(1 / 3 + 1 / (1 + n)), freedom: 2 + n });
    const more = buildsUntilTold(2.6, after)!;
    expect(findable(after(more).freedom) * after(more).error).toBeLessThanOrEqual(2.6);
    expect(findable(after(more - 1).freedom) * after(more - 1).error).toBeGreaterThan(2.6);
    expect(buildsUntilTold(0.1, after)).toBeUndefined();
  });
});
