/** The example shop does what its story says: twelve Vennicks, six tops for one target. All names and numbers invented. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isCounted } from '../../language/recipes/instrument/counting.js';
import { shopOf } from '../recipes/shop-of.js';

const folder = new URL('../../examples/hollin-reach/', import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith('.bookmatch'));
const shop = shopOf(...files.map((name) => readFileSync(new URL(name, folder), 'utf8')));
const { workshop } = shop;

const thickness = (recipe: string) => workshop.evaluation(recipe)!.number('top.thickness')! * 1000;
const grams = (recipe: string) => workshop.evaluation(recipe)!.number('top.mass')! * 1000;
const counted = (recipe: string) =>
  workshop
    .count(recipe)
    .variables.filter(({ verdict }) => isCounted(verdict))
    .map(({ variable }) => variable.label);

describe('twelve Vennicks, one change each', () => {
  it.each([
    ['vennick-32', []],
    ['vennick-33', []],
    ['vennick-34', ['top.thickness']],
    ['vennick-35', ['lighter X']],
    ['vennick-36', ['bridge.mass']],
    ['vennick-37', ['top.wood']],
    ['vennick-38', ['top.wood']],
    ['vennick-39', ['back.thickness']],
    ['vennick-40', ['bridge.mass', 'soundhole.diameter']],
    ['vennick-41', ['soundhole.diameter']],
    ['vennick-42', ['lower X']],
  ])('%s counts %j', (recipe, labels) => {
    expect(counted(recipe)).toEqual(labels);
  });

  // Thickness of each top in the story's table, mm; what a hold solves must come to it.
  it.each([
    ['vennick-32', 2.79],
    ['vennick-33', 2.77],
    ['vennick-35', 2.82],
    ['vennick-36', 2.77],
    ['vennick-37', 2.96],
    ['vennick-38', 2.66],
    ['vennick-39', 2.68],
    ['vennick-40', 2.67],
    ['vennick-41', 2.66],
    ['vennick-42', 2.69],
  ])('the hold of %s solves to %f mm within 0.02 mm', (recipe, expected) => {
    expect(Math.abs(thickness(recipe) - expected)).toBeLessThan(0.02);
  });

  it('takes No. 42 from No. 41, not from No. 31', () => {
    expect(workshop.lineage('vennick-42').recipes.map(({ name }) => name.text)).toEqual([
      'vennick-31',
      'vennick-32',
      'vennick-33',
      'vennick-38',
      'vennick-40',
      'vennick-41',
      'vennick-42',
    ]);
  });
});

describe('six tops for one target', () => {
  // Thickness for the stiffness of 10.8 GPa at 2.80 mm and mass at 0.135 m²: h = 2.80·(10.8/E)^(1/3), m = ρ·A·h.
  it.each([
    ['try-t-1', 8.6, 365, 3.02, 149, 5.61],
    ['try-t-2', 10.8, 421, 2.8, 159, 5.25],
    ['try-t-3', 12.6, 402, 2.66, 144, 5.79],
    ['try-t-4', 14.6, 492, 2.53, 168, 4.97],
    ['try-t-5', 12.4, 436, 2.67, 157, 5.31],
    ['try-t-6', 9.0, 448, 2.98, 180, 4.64],
  ])('%s: E %f GPa, %f kg/m³ → %f mm, %f g, merit %f', (recipe, gigapascal, density, mm, mass, merit) => {
    const exact = 2.8 * Math.cbrt(10.8 / gigapascal);
    expect(Math.abs(thickness(recipe) / exact - 1)).toBeLessThan(0.005);
    expect(Math.abs(thickness(recipe) / mm - 1)).toBeLessThan(0.005);
    expect(Math.abs(grams(recipe) / (density * 0.135 * exact) - 1)).toBeLessThan(0.005);
    expect(Math.abs(grams(recipe) / mass - 1)).toBeLessThan(0.005);
    expect(workshop.wood(recipe.slice('try-'.length))!.number('merit')).toBeCloseTo(merit, 1.5);
  });

  it('says that the very stiff, dense top ends up heavier than the ordinary one', () => {
    const { effects } = workshop.count('try-t-4').variables[0]!.variable;
    const mass = effects.find(({ path }) => path === 'top.mass')!;
    expect(Math.round(mass.difference * 1000)).toBe(9);
    expect(thickness('try-t-4')).toBeLessThan(thickness('try-t-2'));
  });
});
