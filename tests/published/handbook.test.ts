/** Densities and elastic constants against the Wood Handbook. */
import { describe, expect, test } from 'vitest';
import { BENDING_TO_ALONG, TYPICAL_RATIOS, reciprocalPoisson } from '../../language/mechanics/wood/handbook.js';
import {
  basicSpecificGravity,
  densityFromSpecificGravity,
  specificGravityAt,
} from '../../language/mechanics/wood/measured-wood.js';
import { reducedStiffness } from '../../language/mechanics/wood/orthotropic-plate.js';
import { number, off, readTable } from './table.js';
import { handbookElasticity } from './formulas/handbook-elasticity.js';

const ratios = readTable('wood-elastic-ratios.csv');

describe('E along from the bending modulus: 1.10 ×, Wood Handbook FPL-GTR-282 Table 5-1 note', () => {
  test('Sitka spruce, 10 800 MPa in bending: E_L 11 880 MPa (Tables 5-1 and 5-3a)', () => {
    const sitka = ratios.find((row) => row.species === 'spruce, Sitka')!;
    const wood = handbookElasticity(10800e6, {
      acrossRadial: number(sitka, 'ER_EL'),
      acrossTangential: number(sitka, 'ET_EL'),
      shearLR: number(sitka, 'GLR_EL'),
      poissonLR: number(sitka, 'nu_LR'),
    });
    expect(wood.along).toBeCloseTo(11880e6, 0);
    expect(BENDING_TO_ALONG).toBe(1.1);
    // 0.078, 0.043, 0.064 of E_L.
    expect(wood.acrossRadial).toBeCloseTo(926.64e6, 0);
    expect(wood.acrossTangential).toBeCloseTo(510.84e6, 0);
    expect(wood.shearLR).toBeCloseTo(760.32e6, 0);
  });
});

describe('specific gravity and density', () => {
  test('Sitka spruce, 0.40 at 12 %: 448 kg/m³ (Eq. 4-14 on Table 5-3a)', () => {
    expect(densityFromSpecificGravity(0.4, 0.12)).toBeCloseTo(448, 9);
  });

  // Table 5-3a prints two decimals of each, measured separately on green and dry pieces.
  const strength = readTable('wood-strength-gtr282.csv');
  const pairs = strength
    .filter((row) => row.moisture === 'green')
    .map((green) => ({ green, dry: strength.find((row) => row.species === green.species && row.moisture === '12%') }))
    .flatMap(({ green, dry }) =>
      dry ? [{ species: green.species!, basic: green.specific_gravity!, dry: dry.specific_gravity! }] : [],
    );

  test('enough species to mean something', () => expect(pairs.length).toBeGreaterThanOrEqual(12));

  test.each(pairs)(
    'Eq. 4-13, $species: $basic green gives $dry at 12 % (Table 5-3a), within 0.02',
    ({ basic, dry }) => {
      expect(Math.abs(specificGravityAt(Number(basic), 0.12) - Number(dry))).toBeLessThanOrEqual(0.02);
      expect(basicSpecificGravity(specificGravityAt(Number(basic), 0.12), 0.12)).toBeCloseTo(Number(basic), 12);
    },
  );
});

describe('reciprocity', () => {
  const complete = ratios.filter((row) => row.nu_LR !== '' && row.ER_EL !== '');

  test.each(complete)(
    '$species: ν_LR $nu_LR (Table 5-2) with E_R/E_L $ER_EL gives a symmetric, positive plate',
    (row) => {
      const along = 10e9;
      const across = number(row, 'ER_EL') * along;
      const poissonLR = number(row, 'nu_LR');
      const poissonRL = reciprocalPoisson(poissonLR, along, across);
      expect(poissonRL * along).toBeCloseTo(poissonLR * across, 3);
      const q = reducedStiffness({ along, across, shear: number(row, 'GLR_EL') * along, poissonLR });
      expect(off(q.q12, (poissonRL * along) / (1 - poissonLR * poissonRL))).toBeLessThan(1e-12);
      expect(q.q11 * q.q22 - q.q12 ** 2).toBeGreaterThan(0);
    },
  );

  test('the tabulated ν_RL of Sitka spruce, 0.040, is not reciprocal (0.029): it is never used', () => {
    expect(reciprocalPoisson(0.372, 1, 0.078)).toBeCloseTo(0.029, 3);
  });
});

describe('medians for unlisted species are those of the table', () => {
  const SOFTWOOD = ['spruce', 'redcedar', 'Douglas-fir', 'redwood', 'cedar', 'hemlock', 'pine', 'baldcypress'];
  const isSoft = (species: string): boolean =>
    SOFTWOOD.some((name) => species === name || species.startsWith(`${name},`));
  const median = (kind: 'softwood' | 'hardwood', column: string): number => {
    const values = ratios
      .filter((row) => row.species !== 'balsa' && isSoft(row.species!) === (kind === 'softwood') && row[column] !== '')
      .map((row) => number(row, column))
      .sort((a, b) => a - b);
    const middle = values.length / 2;
    return values.length % 2 ? values[Math.floor(middle)]! : (values[middle - 1]! + values[middle]!) / 2;
  };

  test.each(['softwood', 'hardwood'] as const)('%s', (kind) => {
    expect(TYPICAL_RATIOS[kind].acrossRadial).toBeCloseTo(median(kind, 'ER_EL'), 6);
    expect(TYPICAL_RATIOS[kind].acrossTangential).toBeCloseTo(median(kind, 'ET_EL'), 6);
    expect(TYPICAL_RATIOS[kind].shearLR).toBeCloseTo(median(kind, 'GLR_EL'), 6);
    expect(TYPICAL_RATIOS[kind].poissonLR).toBeCloseTo(median(kind, 'nu_LR'), 6);
  });
});
