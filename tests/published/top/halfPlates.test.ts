/** The first five peaks of five measured half-plates; see `halfPlates.ts` for their source. */
import { describe, expect, test } from 'vitest';
import { labelledModes } from '../../../language/mechanics/top/index.js';
import { labelOf, MODES } from './freePlates.js';
import { firstPeaks, halfPlateModel, halfPlates } from './halfPlates.js';
import { expectedName, modeNames } from './nodalLines.js';
import { solved } from './solved.js';

/** Peaks outside 5 %, and how far: plate 3L contradicts itself and its own data set, as its remarks say. */
const CONTRADICTED: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  '3L': { '11': -0.059, '02': -0.055 },
};

describe.each(halfPlates)('half-plate $plate', (halfPlate) => {
  const { plate, remarks } = halfPlate;
  const solution = solved(halfPlateModel(halfPlate), { modes: 12, nodes: 1000 });
  const { modes } = solution;
  const names = modeNames(solution);
  const found = labelledModes(solution, MODES.map(labelOf));
  const frequency = (mode: string): number => modes[found[MODES.findIndex((each) => each === mode)]!]!.frequency;

  test.each(firstPeaks(halfPlate))('mode %s, heard at %d Hz', (mode, heard) => {
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
