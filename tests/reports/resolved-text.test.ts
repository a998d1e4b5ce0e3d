import { describe, expect, it } from 'vitest';
import { resolvedText } from '../../language/reports/resolved-text.js';
import { concretePaths } from '../../language/recipes/evaluation/effects.js';
import { shopOf, TOPS, VENNICK } from '../recipes/shop-of.js';

const RECIPES = `
recipe vennick-31 for vennick { top { wood: sitka-31  thickness: 110 thou  rig: r2 }  back { wood: indian-rosewood  thickness: 2.5 mm } }
recipe vennick-37 from vennick-31 {
  change top.wood: sitka-31 -> engelmann-37
  hold top.stiffness.along by top.thickness
  add bracing.finger { from: (200 mm, 60 mm)  to: (260 mm, 120 mm)  width: 5 mm  height: 6 mm  profile: parabolic }
  drop saddle.protrusion
}
build no-37 of vennick-37 {
  finished: 2024-04-22
  top { thickness: 2.96 mm  mass: 149 g }
  reading day-1 { stage: strung  humidity: 45 %RH  resonance { air: 97 Hz  top: 189 Hz } }
}
`;

const shop = shopOf(VENNICK, TOPS, RECIPES);
const textOf = (name: string, of = shop) => resolvedText(of.workshop, name)!.text;

describe('an instrument written out in full', () => {
  it.each(['vennick-31', 'vennick-37', 'vennick', 'no-37'])('%s', async (name) => {
    await expect(textOf(name)).toMatchFileSnapshot(`resolved/${name}.bookmatch`);
  });

  it('is itself a text of the language, with the same values and the same computed numbers', () => {
    const again = shopOf(VENNICK, TOPS, textOf('vennick-37'));
    expect(again.problems()).toEqual([]);
    const [a, b] = [shop.workshop.evaluation('vennick-37')!, again.workshop.evaluation('vennick-37')!];
    const paths = concretePaths(a.derivations.all, a);
    expect(paths).toContain('bracing.finger.mass');
    for (const path of paths.filter((each) => a.derived(each)?.known)) {
      // The solved thickness is written to the hundredth of a millimetre.
      expect(b.number(path)! / a.number(path)!, path).toBeCloseTo(1, 2);
    }
  });

  it('differs from another line by line exactly where they differ', () => {
    const changed = shopOf(
      VENNICK,
      TOPS,
      RECIPES,
      'recipe vennick-50 from vennick-31 { change bridge.mass: 27 g -> 22 g }',
    );
    const [a, b] = [textOf('vennick-31', changed).split('\n'), textOf('vennick-50', changed).split('\n')];
    expect(a.length).toBe(b.length);
    const differing = a.flatMap((line, i) => (line === b[i] ? [] : [`${line.trim()} | ${b[i]!.trim()}`]));
    expect(differing[0]).toBe('recipe vennick-31 for vennick { | recipe vennick-50 for vennick {');
    expect(differing.slice(1)).toEqual(['mass: 27 g | mass: 22 g', expect.stringMatching(/^\/\/.*moving-mass/)]);
  });

  it('writes the same value the same, whatever unit it was given in', () => {
    const inInches = shopOf(VENNICK, TOPS, RECIPES.replace('110 thou', '.110 in'));
    const inMillimetres = shopOf(VENNICK, TOPS, RECIPES.replace('110 thou', '2.794 mm'));
    expect(textOf('vennick-31', inInches)).toBe(textOf('vennick-31'));
    expect(textOf('vennick-31', inMillimetres)).toBe(textOf('vennick-31'));
  });

  it('does not depend on the order in which a recipe is written', () => {
    const turned = RECIPES.replace(
      'top { wood: sitka-31  thickness: 110 thou  rig: r2 }  back { wood: indian-rosewood  thickness: 2.5 mm }',
      'back { thickness: 2.5 mm  wood: indian-rosewood }  top { rig: r2  thickness: 110 thou  wood: sitka-31 }',
    );
    expect(turned).not.toBe(RECIPES);
    expect(textOf('vennick-31', shopOf(VENNICK, TOPS, turned))).toBe(textOf('vennick-31'));
  });

  it('says what is missing instead of a number', () => {
    expect(textOf('vennick')).toMatch(/not known without .*top\.wood/);
    expect(textOf('vennick')).not.toContain('NaN');
  });

  it('knows no instrument of a name that is not there, or that is a wood', () => {
    expect(resolvedText(shop.workshop, 'vennick-99')).toBeUndefined();
    expect(resolvedText(shop.workshop, 'sitka-31')).toBeUndefined();
  });

  it('survives a recipe whose parents lead back to itself', () => {
    const ring = shopOf('recipe a from b { top.thickness: 2.8 mm }', 'recipe b from a { back.thickness: 2.5 mm }');
    expect(textOf('a', ring)).toContain('thickness: 2.8 mm');
  });
});
