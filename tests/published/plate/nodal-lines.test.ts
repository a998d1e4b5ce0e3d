/**
 * Modes of the twenty three-dimensional finite-element plates of guitar spruce, told by counting their nodal lines. Source: D.G.
 * Badiane, R. Malvermi, S. Gonzalez, F. Antonacci, A. Sarti, data set with "A neural network-based method for spruce tonewood
 * characterization" (J. Acoust. Soc. Am.). Every elastic constant the plate needs is the data set's own.
 */
import { describe, expect, test } from 'vitest';
import { labelledModes, TopSolver } from '../../../language/mechanics/plate/index.js';
import { number, readTable } from '../table.js';
import { freePlate, labelOf, MODES, woodOf } from './free-plates.js';
import { expectedName, modeNames } from './nodal-lines.js';

const rows = readTable('top-spruce-plates-fe.csv');
const solver = new TopSolver();

test('all twenty plates are here', () => expect(rows.length).toBe(20));

describe.each(rows)('plate $row', (row) => {
  const plate = freePlate(number(row, 'L_m'), number(row, 'W_m'), number(row, 'T_m'), woodOf(row));
  const result = solver.solve(plate, { modes: 12, nodes: 560 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { solution } = result;
  const names = modeNames(solution);
  const found = labelledModes(solution, MODES.map(labelOf));
  const frequency = (mode: string): number =>
    solution.modes[found[MODES.findIndex((each) => each === mode)]!]!.frequency;

  test.each(MODES)('mode %s within 2.5 %%, by the lines it shows', (mode) => {
    const index = found[MODES.indexOf(mode)]!;
    expect(names[index]).toMatch(expectedName(mode, frequency));
    expect(names.filter((name, i) => name === mode && i !== index)).toEqual([]);
    expect(Math.abs(frequency(mode) / number(row, `f${mode}_Hz`) - 1)).toBeLessThan(0.025);
  });
});
