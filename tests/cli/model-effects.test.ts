import { describe, expect, it } from 'vitest';
import { bookmatch } from './terminal.js';

const SHOP = {
  'line.bookmatch': `shop wick { title: "Wick Lane"  vary at most 1 }
model corrie { scale: 645 mm  bridge.mass: 27 g  bracing.wood: billet-1 }
model tarn { scale: 630 mm }
wood billet-1 is sitka-spruce { use: brace }
wood billet-2 is sitka-spruce { use: brace }
recipe corrie-1 for corrie { because "First."  top.thickness: 2.8 mm }
recipe corrie-2 from corrie-1 { because "Thinner."  change top.thickness: 2.8 mm -> 2.6 mm }
recipe corrie-3 from corrie-1 { because "Lighter."  change bridge.mass: 27 g -> 22 g }
build no-1 of corrie-1 { reading day-1 { resonance.top: 183 Hz } }
build no-2 of corrie-1 { reading day-1 { resonance.top: 181 Hz } }
build no-3 of corrie-1 { reading day-1 { resonance.top: 182 Hz } }
build no-4 of corrie-2 { bracing.wood: billet-2  reading day-1 { resonance.top: 170 Hz } }
build no-5 of corrie-3 { reading day-1 { resonance.top: 183 Hz } }`,
};

describe('ways', () => {
  const RECIPES = {
    'line.bookmatch': `model corrie { scale: 645 mm  bridge { mass: 27 g  pins.mass: 4 g } }
recipe corrie-1 for corrie { because "First."  saddle.mass: 3 g }
build no-1 of corrie-1 { reached: setup }`,
  };

  it('tells what it takes, what else it moves and until when, for a recipe and a build', async () => {
    for (const name of ['corrie-1', 'no-1']) {
      const { out, code } = await bookmatch(RECIPES, 'ways', name, 'bridge.moving-mass: 32 g');
      expect(code).toBe(0);
      expect(out).toContain(`${name}: bridge.moving-mass is 34 g`);
      expect(out).toMatch(/bridge\.mass: 27 g → 25 g\n +32\.\d+ ± \S+ g, from 34 g/);
      expect(out).toContain('Possible at any time.');
    }
    const { out } = await bookmatch(RECIPES, 'ways', 'corrie-1', 'bridge.moving-mass: by -2 g', '--format', 'json');
    expect(JSON.parse(out)).toMatchObject({ met: false, ways: [{ paths: ['bridge.mass'] }, {}] });
  });

  it('says what cannot be read, is not there, or is met already', async () => {
    expect((await bookmatch(RECIPES, 'ways', 'corrie-1', 'bridge.moving-mass: below 40 g')).out).toContain(
      'That is what is wished for.',
    );
    const wrong = await bookmatch(RECIPES, 'ways', 'corrie-1', 'brighter please');
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('is no wish that can be read');
    expect((await bookmatch(RECIPES, 'ways', 'corrie-9', 'top.mass: 160 g')).code).toBe(2);
    expect((await bookmatch(RECIPES, 'ways', 'corrie-1', 'top.mass: 160 g')).err).toContain('top.mass');
  });
});

describe('effects --model', () => {
  it('tells what can be told apart, what each change did, and what to change next', async () => {
    const { out, code } = await bookmatch(SHOP, 'effects', '--model', 'corrie');
    expect(code).toBe(0);
    expect(out).toContain(
      '5 builds, 2 effects to find beside the value they start from; 2 of them stand by themselves.',
    );
    expect(out).toMatch(
      /bracing\.wood +billet-1 → billet-2 +always moved together with top\.thickness 2\.6 mm; no recipe/,
    );
    expect(out).toMatch(
      /top\.thickness 2\.6 mm \+ bracing\.wood billet-2 +– +−12\.0 ± 5\.1 Hz +−12\.0 ± 5\.1 Hz +stands out/,
    );
    expect(out).toMatch(/bridge\.mass 22 g +– +\+1\.0 ± 5\.0 Hz +\+1\.0 ± 5\.0 Hz +not distinguishable/);
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      'Then these would be separate as well: top.thickness 2.6 mm and bracing.wood billet-2.',
    );
  });

  it('tells it as data too, in SI', async () => {
    const { out } = await bookmatch(SHOP, 'effects', '--model', 'corrie', '--format', 'json');
    const told = JSON.parse(out) as Record<string, unknown>;
    expect(told).toMatchObject({
      model: 'corrie',
      builds: ['no-1', 'no-2', 'no-3', 'no-4', 'no-5'],
      unknowns: 3,
      movedTogether: [[0, 2]],
      variables: [
        { paths: ['top.thickness'], declared: true, column: [0.0028, 0.0028, 0.0028, 0.0026, 0.0028] },
        { paths: ['bridge.mass'], declared: true },
        { paths: ['bracing.wood'], declared: false, column: [0, 0, 0, 1, 0] },
      ],
      responses: [{ path: 'resonance.top', fitted: true, scatter: { freedom: 2, basis: 'builds' } }],
    });
  });

  it('says so where there are too few builds', async () => {
    const none = await bookmatch(SHOP, 'effects', '--model', 'tarn');
    expect(none.out).toContain('It takes at least two builds of this model');
    const two = { 'line.bookmatch': SHOP['line.bookmatch'].replaceAll(/build no-[2345].*\n?/g, '') };
    expect((await bookmatch(two, 'effects', '--model', 'corrie')).out).toContain('It takes at least two builds');
  });

  it('fits nothing where there are more effects to find than builds can tell', async () => {
    const mixed = {
      'line.bookmatch': `shop wick { vary at most 3 }
model corrie { scale: 645 mm  bridge.mass: 27 g  back.thickness: 2.4 mm }
recipe corrie-1 for corrie { because "First."  top.thickness: 2.8 mm }
recipe corrie-2 from corrie-1 { because "Both."  change top.thickness: 2.8 mm -> 2.6 mm  change bridge.mass: 27 g -> 22 g }
recipe corrie-3 from corrie-1 { because "Both."  change back.thickness: 2.4 mm -> 2.7 mm  change bridge.mass: 27 g -> 22 g }
build no-1 of corrie-1 { reading day-1 { resonance.top: 183 Hz } }
build no-2 of corrie-2 { reading day-1 { resonance.top: 181 Hz } }
build no-3 of corrie-3 { reading day-1 { resonance.top: 182 Hz } }`,
    };
    const { out } = await bookmatch(mixed, 'effects', '--model', 'corrie');
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      '3 builds are too few: 3 effects to find and the value they start from take at least 4. Nothing is fitted.',
    );
    expect(out).not.toContain('±');
    expect(out).toContain('The next change that would tell the most');
  });

  it('speaks German', async () => {
    const { out } = await bookmatch(SHOP, 'effects', '--model', 'corrie', '--language', 'de');
    expect(out).toContain('5 Bauten, 2 gesuchte Wirkungen');
    expect(out).toContain('hebt sich ab');
    expect(out).not.toMatch(/\b(stands|together|builds)\b/);
  });

  it('is wrong use with a name beside it, or for a model that is not there', async () => {
    expect((await bookmatch(SHOP, 'effects', 'no-4', '--model', 'corrie')).code).toBe(2);
    const { err, code } = await bookmatch(SHOP, 'effects', '--model', 'corry');
    expect(code).toBe(2);
    expect(err).toContain('corrie');
  });
});
