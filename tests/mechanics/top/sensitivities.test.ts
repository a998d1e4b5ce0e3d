/** First-order sensitivities against finite differences of full solutions. */
import { describe, expect, test } from 'vitest';
import { changed, parametersOf, sensitivities, type TopModel } from '../../../language/mechanics/top/index.js';
import { guitarCases } from '../../published/top/referenceTops.js';
import { solved } from '../../published/top/solved.js';
import { variedTop } from './variedTop.js';

const tops: Readonly<Record<string, TopModel>> = {
  'the reference top': guitarCases.e1_guitar_hinged_braced!.model,
  'a top with taper, carved braces and a sprung edge': variedTop,
};

describe.each(Object.entries(tops))('%s', (_name, model) => {
  const solution = solved(model);
  const found = sensitivities(solution, parametersOf(model));

  test.each(
    found.map(
      (each) =>
        [
          `${each.parameter.part} ${'index' in each.parameter ? each.parameter.index : ''} ${each.parameter.quantity}`,
          each,
        ] as const,
    ),
  )('%s', (_parameter, { parameter, value, frequencies, rotation, mass }) => {
    const step = 1e-3 * value;
    const more = solved(changed(model, parameter, step));
    const less = solved(changed(model, parameter, -step));
    const slopes = more.modes.map(({ frequency }, i) => (frequency - less.modes[i]!.frequency) / (2 * step));
    // What is a two-hundredth of the greatest slope is compared with that: it is nothing to a maker.
    const floor = Math.max(...slopes.map(Math.abs)) / 200;
    slopes.forEach((slope, i) => {
      expect(Math.abs(frequencies[i]! - slope)).toBeLessThanOrEqual(0.03 * Math.max(Math.abs(slope), floor));
    });
    const turn = (more.statics!.rotation - less.statics!.rotation) / (2 * step);
    expect(Math.abs(rotation! - turn)).toBeLessThanOrEqual(
      0.03 * Math.abs(turn) + 1e-9 * Math.abs(solution.statics!.rotation / value),
    );
    expect(mass).toBeCloseTo((more.mass - less.mass) / (2 * step), 5);
  });
});
