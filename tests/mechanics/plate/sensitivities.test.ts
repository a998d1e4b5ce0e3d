/** First-order sensitivities against finite differences of full solutions. */
import { describe, expect, test } from 'vitest';
import {
  changed,
  parametersOf,
  sensitivities,
  type TopModel,
  type TopSolution,
  TopSolver,
} from '../../../language/mechanics/plate/index.js';
import { guitarCases } from '../../published/plate/reference-tops.js';
import { solved } from '../../published/plate/solved.js';
import { variedTop } from './varied-top.js';

const tops: Readonly<Record<string, TopModel>> = {
  'the reference top': guitarCases.e1_guitar_hinged_braced!.model,
  'a top with taper, carved braces and a sprung edge': variedTop,
};

describe.each(Object.entries(tops))('%s', (_name, model) => {
  const solver = new TopSolver();
  const result = solver.solve(model);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { solution } = result;
  const felt = solution.modes.findIndex(({ bridge }) => bridge);
  const found = sensitivities(solution, parametersOf(model), solver.adjoints(solution, felt));

  test.each(
    found.map(
      (each) =>
        [
          `${each.parameter.part} ${'index' in each.parameter ? each.parameter.index : ''} ${each.parameter.quantity}`,
          each,
        ] as const,
    ),
  )('%s', (_parameter, { parameter, value, frequencies, rotation, mass, ...others }) => {
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
    const figures = {
      dip: ({ statics }: TopSolution) => statics!.dip,
      belly: ({ statics }: TopSolution) => statics!.belly,
      effectiveMass: ({ modes }: TopSolution) => modes[felt]!.bridge!.effectiveMass,
      effectiveArea: ({ modes }: TopSolution) => modes[felt]!.bridge!.effectiveArea,
    };
    for (const [name, figure] of Object.entries(figures)) {
      const difference = (figure(more) - figure(less)) / (2 * step);
      const slope = others[name as keyof typeof figures]!;
      // What changes the figure by less than a part in a thousand when the size changes by a tenth is nothing.
      const least = (0.01 * Math.abs(figure(solution))) / value;
      // The lowest and the highest node are themselves moved a little by a thicker patch.
      const share = parameter.part === 'patch' && (name === 'dip' || name === 'belly') ? 0.06 : 0.03;
      expect(Math.abs(slope - difference), name).toBeLessThanOrEqual(share * Math.max(Math.abs(difference), least));
    }
    expect(mass).toBeCloseTo((more.mass - less.mass) / (2 * step), 5);
  });
});
