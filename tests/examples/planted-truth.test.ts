/** The example shop, its readings made from a known truth: how much of it is told, and whether it is true. */
import { expect, it } from 'vitest';
import { modelEffects } from '../../language/recipes/builds/model-effects.js';
import { fittedIn } from '../../language/recipes/builds/response-effects.js';
import { plantedShop } from './planted-truth.js';

it('tells at least twenty effects together, far fewer by builds alone, each interval about the truth', () => {
  const { workshop, truth } = plantedShop(5);
  const { design, responses } = modelEffects(workshop, 'vennick')!;
  const told = { together: 0, builds: 0, all: 0, held: 0 };
  for (const { response, outcome } of responses) {
    for (const { variables, log, verdict } of fittedIn(outcome)?.effects ?? []) {
      const effect = variables.reduce(
        (sum, variable) => sum + (truth.get(`${response.path} ${design.variables.indexOf(variable)}`) ?? Number.NaN),
        0,
      );
      if (Number.isNaN(effect) || !log.together) continue;
      told.all += 1;
      if (Math.abs(log.together.amount) > log.together.half) told.together += 1;
      if (verdict === 'builds' || verdict === 'disagrees') told.builds += 1;
      if (Math.abs(log.together.amount - effect) <= log.together.half) told.held += 1;
    }
  }
  console.log(told);
  expect(told.together).toBeGreaterThanOrEqual(20);
  expect(told.builds).toBeLessThan(told.together / 1.5);
  // Nineteen in twenty of thirty-five: two or three may miss. (binomial, 99 in 100)
  expect(told.held).toBeGreaterThanOrEqual(told.all - 5);
}, 240_000);
