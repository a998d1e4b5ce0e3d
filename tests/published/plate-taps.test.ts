/**
 * Wood from taps: the closed forms against finite-element and measured half-plates of guitar spruce. Source of both
 * tables: D.G. Badiane, R. Malvermi, S. Gonzalez, F. Antonacci, A. Sarti, data set with "A neural network-based method
 * for spruce tonewood characterization" (J. Acoust. Soc. Am.). `spruce-plates-taps.json` says which measured peak is
 * which mode and what tap each plate's `wood` takes; identified here, from the order and spacing the relations of
 * `tapModes.ts` demand.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { RELATIONS, tapsFromModes, type TapMode } from '../../language/mechanics/wood/tap-modes.js';
import {
  TWIST_TAP_SHARE,
  modulusFromBendingTap,
  shearFromTwistTap,
} from '../../language/mechanics/wood/measured-wood.js';
import { elasticityFromTaps } from './formulas/elasticity-from-taps.js';
import { READING_ERRORS } from '../../language/recipes/derived/model-errors.js';
import { fitTaps, labelledModes, TopSolver } from '../../language/mechanics/plate/index.js';
import { number, off, readTable } from './table.js';
import { freePlate, labelOf } from './plate/free-plates.js';
import { solved } from './plate/solved.js';

/** f₀₂ from f₀₃, and from f₁₂ and f₁₁, by the relations one at a time. */
const alongFromSecondBending = (frequency: number): number => frequency / Math.sqrt(RELATIONS['03'].terms[0]);
const alongFromMixedMode = (mixed: number, twist: number): number =>
  Math.sqrt(mixed ** 2 - RELATIONS['12'].terms[2] * twist ** 2);

const simulated = readTable('spruce-plates-fe.csv');

function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length / 2;
  return sorted.length % 2 ? sorted[Math.floor(middle)]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function deviation(values: number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

describe('twenty finite-element plates', () => {
  const blankOf = (row: Record<string, string>) => ({
    length: number(row, 'L_m'),
    width: number(row, 'W_m'),
    thickness: number(row, 'T_m'),
  });

  test('all twenty are here', () => expect(simulated.length).toBe(20));

  test.each(simulated)('plate $row: E along within 1 %', (row) => {
    const along = modulusFromBendingTap(
      number(row, 'rho_kg_m3'),
      number(row, 'f02_Hz'),
      number(row, 'L_m'),
      number(row, 'T_m'),
    );
    expect(off(along, number(row, 'EL_Pa'))).toBeLessThan(0.01);
  });

  test.each(simulated)('plate $row: E across within 8 %', (row) => {
    const across = modulusFromBendingTap(
      number(row, 'rho_kg_m3'),
      number(row, 'f20_Hz'),
      number(row, 'W_m'),
      number(row, 'T_m'),
    );
    expect(off(across, number(row, 'ER_Pa'))).toBeLessThan(0.08);
  });

  test.each(simulated)('plate $row: G reads 7 … 14 % low', (row) => {
    const share =
      shearFromTwistTap(number(row, 'rho_kg_m3'), number(row, 'f11_Hz'), blankOf(row)) / number(row, 'GLR_Pa');
    expect(share).toBeGreaterThan(0.86);
    expect(share).toBeLessThan(0.93);
  });

  test('the share read by the twist tap and its scatter are those of the twenty plates', () => {
    const shares = simulated.map(
      (row) => shearFromTwistTap(number(row, 'rho_kg_m3'), number(row, 'f11_Hz'), blankOf(row)) / number(row, 'GLR_Pa'),
    );
    expect(TWIST_TAP_SHARE).toBeCloseTo(median(shares), 3);
    expect(READING_ERRORS.twist.own).toBeCloseTo(deviation(shares) / median(shares), 3);
  });

  test.each(['12', '03', '21', '13', '22'] as const)(
    'the relation for mode %s is the median of the twenty plates',
    (mode) => {
      const [along, across, twist] = RELATIONS[mode].terms;
      const square = (row: Record<string, string>, name: string): number => number(row, `f${name}_Hz`) ** 2;
      const predicted = simulated.map(
        (row) =>
          (along * square(row, '02') + across * square(row, '20') + twist * square(row, '11')) / square(row, mode),
      );
      expect(off(median(predicted), 1)).toBeLessThan(0.01);
      expect(off(deviation(predicted), RELATIONS[mode].scatter)).toBeLessThan(0.06);
    },
  );

  test('the three taps come back from the other modes alone within 2.5 % along, 5 % across and 1 % twist', () => {
    for (const row of simulated) {
      const peaks: Partial<Record<TapMode, number>> = { '11': number(row, 'f11_Hz') };
      for (const mode of ['12', '21', '03', '13', '22'] as const) peaks[mode] = number(row, `f${mode}_Hz`);
      const taps = tapsFromModes(peaks);
      expect(off(taps.along, number(row, 'f02_Hz'))).toBeLessThan(0.025);
      expect(off(taps.across, number(row, 'f20_Hz'))).toBeLessThan(0.05);
      expect(off(taps.twist, number(row, 'f11_Hz'))).toBeLessThan(0.01);
    }
  });
});

interface Plate {
  plate: string;
  length_mm: number;
  width_mm: number;
  thickness_mm: number;
  mass_g: number;
  peaks_Hz: Partial<Record<TapMode, number>>;
  taps_Hz: { along: number; across: number; twist: number };
  /** Of the relations, where the taps are taken by them. */
  misfit?: number;
  /** The peaks the plate solver was fitted to, where the taps are those of the fitted plate. */
  fitted_to?: readonly TapMode[];
  remarks: string[];
}
const mapping = JSON.parse(readFileSync(new URL('./data/spruce-plates-taps.json', import.meta.url), 'utf8')) as {
  plates: Plate[];
};
const measured = readTable('spruce-plates-measured.csv');

describe.each(mapping.plates)('measured half-plate $plate', (plate) => {
  const row = measured.find((each) => each.plate === plate.plate)!;
  const { peaks_Hz: peaks, taps_Hz: taps } = plate;

  test('sizes, mass and peaks are the data set’s', () => {
    expect(plate.length_mm / 1000).toBeCloseTo(number(row, 'est_L_m'), 9);
    expect(plate.width_mm / 1000).toBeCloseTo(number(row, 'est_W_m'), 9);
    expect(plate.thickness_mm / 1000).toBeCloseTo(number(row, 'est_T_m'), 9);
    expect(plate.mass_g / 1000).toBeCloseTo(number(row, 'mass_kg'), 9);
    const record = row.measured_peaks_Hz!.split(' ').map(Number);
    for (const frequency of Object.values(peaks)) expect(record).toContain(frequency);
  });

  test('the taps follow from the peaks by the stated rules', () => {
    if (plate.fitted_to) {
      expect(fittedPlate(plate, peaks).taps).toEqual([taps.along, taps.across, taps.twist]);
      return;
    }
    const readings = [
      peaks['02']!,
      ...(peaks['03'] === undefined ? [] : [alongFromSecondBending(peaks['03'])]),
      alongFromMixedMode(peaks['12']!, peaks['11']!),
    ];
    const along = readings.length === 3 ? median(readings) : readings[0]!;
    const fit = tapsFromModes(peaks);
    expect(fit.misfit).toBeLessThan(2);
    expect(plate.misfit).toBeCloseTo(fit.misfit, 1);
    expect(taps.along).toBeCloseTo(along, 1);
    expect(taps.twist).toBe(peaks['11']);
    if (peaks['20'] !== undefined) expect(taps.across).toBe(peaks['20']);
    else expect(taps.across).toBeCloseTo(fit.across, 0);
  });

  const wood = elasticityFromTaps(
    { length: plate.length_mm / 1000, width: plate.width_mm / 1000, thickness: plate.thickness_mm / 1000 },
    plate.mass_g / 1000,
    { along: taps.along, twist: taps.twist, across: taps.across },
  );

  test(`density ${row.est_rho_kg_m3} kg/m³ within 2.5 %`, () => {
    expect(off(wood.density, number(row, 'est_rho_kg_m3'))).toBeLessThan(0.025);
  });
  test(`E along ${row.est_EL_Pa} Pa within 4 %`, () =>
    expect(off(wood.along!, number(row, 'est_EL_Pa'))).toBeLessThan(0.04));
  test(`G ${row.est_GLR_Pa} Pa within 13 %, closed form reading low`, () =>
    expect(off(wood.shear!, number(row, 'est_GLR_Pa'))).toBeLessThan(0.13));
  test(`E across ${row.est_ER_Pa} Pa within 6 %`, () =>
    expect(off(wood.across!, number(row, 'est_ER_Pa'))).toBeLessThan(0.06));
});

describe('the one plate whose peaks contradict one another, 3L', () => {
  const plate = mapping.plates.find(({ fitted_to: fitted }) => fitted)!;
  const { peaks_Hz: peaks } = plate;

  test('by the relations its peaks do not belong to one plate', () => {
    expect(mapping.plates.filter(({ fitted_to: fitted }) => fitted).map((each) => each.plate)).toEqual(['3L']);
    expect(tapsFromModes(peaks).misfit).toBeGreaterThan(2);
    expect(tapsFromModes({ ...peaks, '03': peaks['21'], '21': peaks['03'] }).misfit).toBeGreaterThan(2);
  });

  test('its higher peaks do, in the order named and in no other', () => {
    expect(fittedPlate(plate, peaks).misfit).toBeLessThan(1e-3);
    expect(() => fittedPlate(plate, { ...peaks, '03': peaks['21'], '21': peaks['03'] })).toThrow('No wood fits');
  });
});

/** E along, E across, G and Poisson's ratio fitted to the peaks named, and where the fitted plate has its taps. The rest from no data: usual spruce. */
function fittedPlate(plate: Plate, peaks: Plate['peaks_Hz']) {
  const [length, width, thickness] = [plate.length_mm / 1000, plate.width_mm / 1000, plate.thickness_mm / 1000];
  const density = plate.mass_g / 1000 / (length * width * thickness);
  const solver = new TopSolver();
  const result = fitTaps(solver, {
    ...{ length, width, thickness, wood: { ...USUAL_SPRUCE, density }, fitPoisson: true },
    taps: plate.fitted_to!.map((mode) => ({ mode: labelOf(mode), frequency: peaks[mode]! })),
  });
  if (!result.ok) throw new Error(result.problems[0]!.message);
  const { wood, misfits } = result.fitted;
  const solution = solved(freePlate(length, width, thickness, wood), { modes: 10, nodes: 1000 });
  const found = labelledModes(solution, ['02', '20', '11'].map(labelOf));
  return {
    misfit: Math.max(...misfits.map(Math.abs)),
    taps: found.map((at) => Number(solution.modes[at]!.frequency.toFixed(1))),
  };
}

/** Where the fit starts; the two shear moduli through the thickness are those of the same authors' computed plates. */
const USUAL_SPRUCE = {
  ...{ eAlong: 10e9, eAcross: 800e6, shearInPlane: 700e6, poisson: 0.35 },
  ...{ shearAlong: 590e6, shearAcross: 26e6 },
};
