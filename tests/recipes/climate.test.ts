/** What the move to another climate does, against the tables of the Wood Handbook, on the path a maker takes. */
import { describe, expect, test } from 'vitest';
import { openWorkshop } from '../../language/shop.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { number, readTable } from '../published/table.js';

const SHOP = (more: string) => `
shop marram { climate { humidity: 45 %RH  temperature: 21.111 °C } }
wood plank is sitka-spruce { cut: quartersawn }
recipe dry {
  body { lower-bout { width: 400 mm } }
  top { wood: plank  thickness: 2.8 mm }
  bracing {
    across { from { station: 150 mm  offset: -150 mm }  to { station: 150 mm  offset: 150 mm }  width: 8 mm  height: 14 mm }
    along { from { station: 50 mm  offset: 0 mm }  to { station: 350 mm  offset: 0 mm }  width: 8 mm  height: 14 mm }
  }
  ${more}
}
`;

function evaluate(more: string) {
  const parser = createParser();
  const { shelf, workshop } = openWorkshop({ parser });
  shelf.put(readFile('a', SHOP(more), parser));
  return workshop.evaluate(workshop.instrument('dry')!.values);
}

/** Fractions of Table 4-2 at 70 °F. */
function moistureAt(percent: number): number {
  const row = readTable('emc.csv').find((each) => Number(each.temp_F) === 70 && Number(each.rh_percent) === percent);
  return number(row!, 'emc_percent_table') / 100;
}

describe('from 45 to 25 %RH at 70 °F', () => {
  const evaluation = evaluate('home { humidity: 25 %RH  temperature: 21.111 °C }');
  const dried = moistureAt(25) - moistureAt(45);

  test('a 400 mm top of Sitka narrows by C_R = 0.00148 per per cent (Table 13-5)', () => {
    // Both moistures are printed to 0.1 %.
    expect(Math.abs(evaluation.number('top.climate.width')! - 0.4 * 0.148 * dried)).toBeLessThan(0.4 * 0.00148 * 0.11);
  });

  test('it weighs (1 + M₂)/(1 + M₁) of before and is stiffer', () => {
    const expected = (1 + moistureAt(25)) / (1 + moistureAt(45)) - 1;
    expect(Math.abs(evaluation.number('top.climate.mass')! - expected)).toBeLessThan(0.0011);
    expect(evaluation.number('top.climate.stiffness')!).toBeGreaterThan(0);
  });

  test('the dome sinks at the brace across the grain; a brace along it feels nothing', () => {
    expect(evaluation.number('bracing.across.climate-rise')!).toBeLessThan(-1e-4);
    expect(evaluation.number('bracing.along.climate-rise')!).toBeCloseTo(0, 12);
    expect(evaluation.number('top.climate.dome')).toBe(evaluation.number('bracing.across.climate-rise'));
  });
});

test('without a place to live nothing is known, and what is missing is named', () => {
  expect(evaluate('').derived('top.climate.width')).toMatchObject({ known: false, missing: ['home.humidity'] });
});

test('where the air is the same nothing moves', () => {
  const evaluation = evaluate('home { humidity: 45 %RH  temperature: 21.111 °C }');
  for (const what of ['width', 'mass', 'stiffness', 'dome']) {
    expect(evaluation.number(`top.climate.${what}`)!).toBeCloseTo(0, 12);
  }
});

test('the air in the box is that of the shop', () => {
  const parser = createParser();
  const airAt = (celsius: number) => {
    const { shelf, workshop } = openWorkshop({ parser });
    const recipe = `recipe box { body.volume: 13.5 L  soundhole { diameter: 100 mm }  top.thickness: 2.8 mm }`;
    shelf.put(readFile('a', `shop marram { climate { temperature: ${celsius} °C } }\n${recipe}`, parser));
    return workshop.evaluate(workshop.instrument('box')!.values).number('resonance.rigid-air')!;
  };
  // The speed of sound goes with the root of the absolute temperature (any text on acoustics).
  expect(airAt(30) / airAt(20)).toBeCloseTo(Math.sqrt(303.15 / 293.15), 3);
});
