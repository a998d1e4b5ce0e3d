/** The values of one instrument, listed with where each comes from; and the count of its changes. */
import { describe, expect, it } from 'vitest';
import { changeCount } from '../../language/reports/change-count.js';
import { type ListedValue, valuesOf } from '../../language/reports/values-list.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const RECIPES = `recipe v-37 from v-31 {
  change top.wood: sitka-31 -> engelmann-37
  hold top.stiffness.along by top.thickness
  change bridge.mass: 27 g -> 22 g
}
recipe v-38 from v-37 { add bracing.finger { from: (200 mm, 60 mm)  to: (260 mm, 120 mm)  width: 5 mm  height: 6 mm } }
build no-1 of v-37 { top.thickness: 2.96 mm  nut.width: unknown }`;
const desk = deskOf(RECIPES, VENNICK);
const valueAt = (name: string, path: string): ListedValue =>
  valuesOf(desk, name)!
    .parts.flatMap(({ values }) => values)
    .find((value) => value.path === path)!;

describe('the values of an instrument', () => {
  it('stand part by part in the order of the catalogue, each once', () => {
    const { parts } = valuesOf(desk, 'v-37')!;
    const titles = parts.map(({ title }) => title);
    expect(titles.indexOf('Body')).toBeLessThan(titles.indexOf('Top'));
    expect(titles.indexOf('Top')).toBeLessThan(titles.indexOf('Bridge'));
    const paths = parts.flatMap(({ values }) => values.map(({ path }) => path));
    expect(new Set(paths).size).toBe(paths.length);
    expect(new Set(titles).size).toBe(titles.length);
  });

  it('say what was changed here and what it was, with the line where it is written', () => {
    expect(valueAt('v-37', 'bridge.mass')).toMatchObject({
      name: 'mass',
      value: '22 g',
      from: 'v-37',
      here: 'changed here',
      was: '27 g',
      source: { uri: 'file:0', range: { start: { line: 3 } } },
    });
    expect(valueAt('v-37', 'top.thickness')).toMatchObject({ here: 'solved here', was: '2.8 mm' });
    expect(valueAt('v-38', 'bracing.finger.height')).toMatchObject({ here: 'added here', value: '6 mm' });
  });

  it('say whose an inherited one is, and lead there', () => {
    const height = valueAt('v-37', 'bracing.x-bass.height');
    expect(height).toMatchObject({
      name: 'x-bass height',
      value: '15.9 mm',
      from: 'vennick',
      source: { uri: 'file:1' },
    });
    expect(height.here).toBeUndefined();
    expect(valueAt('v-38', 'bridge.mass')).toMatchObject({ value: '22 g', from: 'v-37' });
  });

  it('give computed ones with how well they are known and on what they rest', () => {
    const mass = valueAt('v-37', 'top.mass');
    expect(mass.sort).toBe('computed');
    expect(mass.value).toMatch(/^\d+\.\d ± \d\.\d g$/);
    expect(mass.basis).toContain('measured');
  });

  it('name what is missing for the unknown ones', () => {
    expect(valueAt('v-37', 'sides.mass')).toMatchObject({
      sort: 'unknown',
      trouble: 'needs sides.wood.density and sides.thickness',
    });
    expect(valueAt('no-1', 'nut.width').sort).toBe('unknown');
    // Nobody has been asked to work out resonances here.
    expect(valueAt('v-37', 'resonance.top').sort).toBe('pending');
  });

  it('are those as made of a build, and there are none of a stranger', () => {
    expect(valueAt('no-1', 'top.thickness')).toMatchObject({ value: '2.96 mm', here: 'as made' });
    expect(valuesOf(desk, 'nobody')).toBeUndefined();
  });
});

describe('the count of changes', () => {
  it('is that of the recipe, beside what is allowed', () => {
    expect(changeCount(desk, 'v-37')).toMatchObject({ parent: 'v-31', changes: 2, limit: 1, substitution: false });
    expect(changeCount(desk, 'v-38')).toMatchObject({ parent: 'v-37', changes: 1 });
  });

  it('is none for the first of a line, a build or a stranger', () => {
    expect(changeCount(desk, 'v-31')).toBeUndefined();
    expect(changeCount(desk, 'no-1')).toBeUndefined();
    expect(changeCount(desk, 'nobody')).toBeUndefined();
  });
});
