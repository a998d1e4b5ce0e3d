/** How much the example shop is told, and, its readings made anew from a known truth, whether what is told is true. */
import { expect, it } from 'vitest';
import { modelEffects } from '../../language/recipes/builds/model-effects.js';
import { fittedIn } from '../../language/recipes/builds/response-effects.js';
import type { Workshop } from '../../language/recipes/workshop.js';
import { plantedShop } from './planted-truth.js';

const planted = plantedShop(5);

it('tells at least twenty effects of the example shop together, where builds alone tell eight at most', () => {
  const told = toldOf(planted.example);
  expect(told.together).toBeGreaterThanOrEqual(20);
  expect(told.builds).toBeLessThanOrEqual(8);
}, 240_000);

it('has the planted truth within its intervals, and tells far more of it than builds alone', () => {
  const told = toldOf(planted.workshop, planted.truth);
  expect(told.together).toBeGreaterThan(2 * told.builds);
  // Nineteen in twenty of thirty-five: two are expected to miss, more than five in one shop of a hundred. (binomial)
  expect(told.known).toBe(35);
  expect(told.held).toBeGreaterThanOrEqual(told.known - 5);
}, 240_000);

function toldOf(workshop: Workshop, truth: ReadonlyMap<string, number> = new Map()) {
  const { design, responses } = modelEffects(workshop, 'vennick')!;
  const told = { together: 0, builds: 0, known: 0, held: 0 };
  for (const { response, outcome } of responses) {
    for (const { variables, log, verdict } of fittedIn(outcome)?.effects ?? []) {
      if (!log.together) continue;
      const { amount, half } = log.together;
      if (Math.abs(amount) > half) told.together += 1;
      if (verdict === 'builds' || verdict === 'disagrees') told.builds += 1;
      const effects = variables.flatMap(
        (variable) => truth.get(`${response.path} ${design.variables.indexOf(variable)}`) ?? [],
      );
      if (effects.length < variables.length) continue;
      told.known += 1;
      if (Math.abs(amount - effects.reduce((sum, effect) => sum + effect, 0)) <= half) told.held += 1;
    }
  }
  return told;
}
