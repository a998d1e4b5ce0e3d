/**
 * The first five peaks of five measured free half-plates of guitar spruce, from the data set's own constants. Source: D.G.
 * Badiane, R. Malvermi, S. Gonzalez, F. Antonacci, A. Sarti, data set with "A neural network-based method for spruce tonewood
 * characterization" (J. Acoust. Soc. Am.); peaks taken from its raw records to ±0.5 Hz. Which peak is which mode was identified
 * here: see the remarks in `spruce-plates-taps.json`. The two shear moduli through the thickness, which the estimates leave out,
 * are those of the first plate of the same authors' finite-element set.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { labelledModes, TopSolver } from '../../../language/mechanics/top/index.js';
import { number, readTable } from '../table.js';
import { expectedName, modeNames } from './nodalLines.js';
import { freePlate, labelOf, MODES } from './freePlates.js';

interface Plate {
  readonly plate: string;
  readonly peaks_Hz: Readonly<Record<string, number>>;
  readonly remarks: readonly string[];
}

const { plates } = JSON.parse(readFileSync(new URL('../data/spruce-plates-taps.json', import.meta.url), 'utf8')) as {
  readonly plates: readonly Plate[];
};
const rows = readTable('top-spruce-plates-measured.csv');
const nominal = readTable('top-spruce-plates-fe.csv')[0]!;
const solver = new TopSolver();

/** Peaks outside 5 %, and how far: plate 3L contradicts itself and its own data set, as its remarks say. */
const CONTRADICTED: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  '3L': { '11': -0.059, '02': -0.055 },
};

describe.each(plates)('half-plate $plate', ({ plate, peaks_Hz: peaks, remarks }) => {
  const row = rows.find((each) => each.plate === plate)!;
  const wood = {
    eAlong: number(row, 'est_EL_Pa'),
    eAcross: number(row, 'est_ER_Pa'),
    poisson: number(row, 'est_nuLR'),
    shearInPlane: number(row, 'est_GLR_Pa'),
    shearAlong: number(nominal, 'GLT_Pa'),
    shearAcross: number(nominal, 'GRT_Pa'),
    density: number(row, 'est_rho_kg_m3'),
  };
  const result = solver.solve(freePlate(number(row, 'est_L_m'), number(row, 'est_W_m'), number(row, 'est_T_m'), wood), {
    modes: 12,
    nodes: 1000,
  });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { modes } = result.solution;
  const names = modeNames(result.solution);
  const first = Object.entries(peaks)
    .sort(([, a], [, b]) => a - b)
    .slice(0, 5);

  const found = labelledModes(result.solution, MODES.map(labelOf));
  const frequency = (mode: string): number => modes[found[MODES.findIndex((each) => each === mode)]!]!.frequency;

  test.each(first)('mode %s, heard at %d Hz', (mode, heard) => {
    expect(names[found[MODES.findIndex((each) => each === mode)]!]).toMatch(expectedName(mode, frequency));
    const error = frequency(mode) / heard - 1;
    const contradicted = CONTRADICTED[plate]?.[mode];
    if (contradicted === undefined) {
      expect(Math.abs(error)).toBeLessThan(0.05);
    } else {
      expect(remarks.join(' ')).toContain('contradict');
      expect(error).toBeCloseTo(contradicted, 2);
    }
  });
});
