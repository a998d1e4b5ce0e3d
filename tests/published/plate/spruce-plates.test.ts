/** Free spruce plates: labelled three-dimensional modes and the fit of their taps (D.G. Badiane et al., data set named in the tables). */
import { describe, expect, test } from 'vitest';
import { fitTaps, labelledModes, TopSolver, type OrthotropicWood } from '../../../language/mechanics/plate/index.js';
import { blank } from './reference-tops.js';
import { solved } from './solved.js';
import { readTable, type Row } from './tables.js';

const plates = readTable('top-spruce-plates-fe.csv');
const LABELS = ['f11', 'f02', 'f12', 'f20', 'f21', 'f03', 'f13', 'f22'].map((name) => ({
  column: `${name}_Hz`,
  across: Number(name[1]),
  along: Number(name[2]),
}));

const woodOf = (row: Row): OrthotropicWood => ({
  eAlong: Number(row.EL_Pa),
  eAcross: Number(row.ER_Pa),
  poisson: Number(row.nu_LR),
  shearInPlane: Number(row.GLR_Pa),
  shearAlong: Number(row.GLT_Pa),
  shearAcross: Number(row.GRT_Pa),
  density: Number(row.rho_kg_m3),
});

describe('twenty plates solved in three dimensions', () => {
  test('eight labelled modes each within 2.5 %', () => {
    expect(plates).toHaveLength(20);
    for (const row of plates) {
      const model = blank(Number(row.L_m), Number(row.W_m), Number(row.T_m), { kind: 'free' }, woodOf(row));
      const solution = solved(model, { modes: 10, nodes: 560 });
      labelledModes(solution, LABELS).forEach((mode, i) => {
        const expected = Number(row[LABELS[i]!.column]);
        expect
          .soft(Math.abs(solution.modes[mode]!.frequency / expected - 1), `plate ${row.row} ${LABELS[i]!.column}`)
          .toBeLessThan(0.025);
      });
    }
  });

  test('E along, E across and G found again from three taps: each within 2 %', () => {
    const solver = new TopSolver();
    for (const row of plates) {
      const truth = woodOf(row);
      const taps = LABELS.filter(({ across, along }) => across + along === 2).map(({ across, along, column }) => ({
        mode: { across, along },
        frequency: Number(row[column]),
      }));
      // The three constants sought start from far-off values; only what a maker would know is given.
      const wood = { ...truth, eAlong: 1e10, eAcross: 1e9, shearInPlane: 7e8 };
      const sizes = { length: Number(row.L_m), width: Number(row.W_m), thickness: Number(row.T_m) };
      const result = fitTaps(solver, { ...sizes, wood, taps });
      if (!result.ok) throw new Error(JSON.stringify(result));
      for (const name of ['eAlong', 'eAcross', 'shearInPlane'] as const) {
        expect
          .soft(Math.abs(result.fitted[name].value / truth[name] - 1), `plate ${row.row} ${name}`)
          .toBeLessThan(0.02);
      }
    }
  });
});
