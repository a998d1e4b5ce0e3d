/** All builds of a model together, in shops made so that the right answer is known. */
import { describe, expect, it } from 'vitest';
import { modelEffects } from '../../language/recipes/builds/model-effects.js';
import { shopOf } from './shop-of.js';

const HEAD = `shop wick { title: "Wick Lane"  vary at most 3 }
model corrie { scale: 645 mm  bridge.mass: 27 g  back.thickness: 2.4 mm  bracing.wood: billet-1 }
wood billet-1 is sitka-spruce { use: brace }
wood billet-2 is sitka-spruce { use: brace }
recipe corrie-1 for corrie { because "First."  top.thickness: 2.8 mm }
`;
/** ln f = ln 180 + 0.3 · (top, mm) − 0.02 · (bridge, g) + 0.1 · (back, mm), each from the base; and a scatter of a few tenths. */
const hertz = (top: number, bridge: number, back: number, scatter = 0) =>
  (180 * Math.exp(0.3 * (top - 2.8) - 0.02 * (bridge - 27) + 0.1 * (back - 2.4)) * (1 + scatter)).toFixed(4);
const build = (n: number, recipe: number, top: number, bridge: number, back: number, scatter = 0, more = '') =>
  `build no-${n} of corrie-${recipe} { top.thickness: ${top} mm  bridge.mass: ${bridge} g  back.thickness: ${back} mm  ${more}
  reading day-1 { resonance.top: ${hertz(top, bridge, back, scatter)} Hz } }\n`;
const found = (...texts: string[]) => modelEffects(shopOf(HEAD + texts.join('')).workshop, 'corrie')!;

const TOP = 'recipe corrie-2 from corrie-1 { because "Top."  change top.thickness: 2.8 mm -> 2.6 mm }\n';
const BRIDGE = 'recipe corrie-3 from corrie-1 { because "Bridge."  change bridge.mass: 27 g -> 22 g }\n';
const BACK = 'recipe corrie-4 from corrie-1 { because "Back."  change back.thickness: 2.4 mm -> 2.7 mm }\n';
const TWINS = build(1, 1, 2.8, 27, 2.4, 0.001) + build(2, 1, 2.8, 27, 2.4, -0.001) + build(3, 1, 2.8, 27, 2.4);

describe('a shop where every change can be told apart', () => {
  const all = found(
    TOP,
    BRIDGE,
    BACK,
    TWINS,
    build(4, 2, 2.58, 27, 2.4),
    build(5, 3, 2.8, 22.4, 2.4),
    build(6, 4, 2.8, 27, 2.7),
  );

  it('takes what was made, not what was meant', () => {
    expect(all.design.variables.map(({ paths }) => paths)).toEqual([
      ['top.thickness'],
      ['bridge.mass'],
      ['back.thickness'],
    ]);
    expect(all.design.variables.map(({ step }) => step)).toEqual([
      expect.closeTo(-0.22e-3, 9),
      expect.closeTo(-4.6e-3, 9),
      expect.closeTo(0.3e-3, 9),
    ]);
    expect(all.separation.clear).toHaveLength(3);
  });

  it('finds the coefficients that the readings were made with, and how sure they are', () => {
    const { outcome } = all.responses[0]!;
    if (outcome.kind !== 'fitted') throw new Error(outcome.kind);
    const logs = outcome.effects.map(({ builds }) => Math.log1p(builds!.amount / outcome.start));
    // The twins' mean is 180 Hz but for a millionth, and each other build stands alone.
    expect(logs).toEqual([expect.closeTo(0.3 * -0.22, 5), expect.closeTo(0.02 * 4.6, 5), expect.closeTo(0.1 * 0.3, 5)]);
    // By hand: s = 0.001 from three twins, t(2 degrees, 95 %) = 4.303, one build against three: √(1 + 1/3).
    const bands = outcome.effects.map(({ builds }) => Math.log1p(builds!.band / outcome.start));
    for (const band of bands) expect(band).toBeCloseTo(4.3027 * 0.001 * Math.sqrt(4 / 3), 6);
    expect(outcome.scatter).toMatchObject({ basis: 'builds', freedom: 2 });
    expect(outcome.effects.map(({ verdict }) => verdict)).toEqual(['builds', 'builds', 'builds']);
  });

  it('proposes what narrows the widest of them', () => {
    expect(all.next!.separates).toEqual([]);
    expect(all.next!.narrows).toBeLessThan(1);
  });
});

describe('a shop where two always moved together', () => {
  const BOTH = `recipe corrie-2 from corrie-1 { because "Two at once."
    change top.thickness: 2.8 mm -> 2.6 mm  change bridge.mass: 27 g -> 22 g }\n`;
  const all = found(BOTH, BACK, TWINS, build(4, 2, 2.6, 22, 2.4), build(5, 2, 2.6, 22, 2.4), build(6, 4, 2.8, 27, 2.7));

  it('names them together, and tells only what they did together', () => {
    expect(all.separation.groups).toEqual([[0, 1], [2]]);
    const { outcome } = all.responses[0]!;
    if (outcome.kind !== 'fitted') throw new Error(outcome.kind);
    expect(outcome.effects.map(({ variables }) => variables.length)).toEqual([2, 1]);
    expect(Math.log1p(outcome.effects[0]!.builds!.amount / outcome.start)).toBeCloseTo(0.3 * -0.2 + 0.02 * 5, 5);
  });

  it('proposes one of the two by itself', () => {
    expect(['top.thickness', 'bridge.mass']).toContain(all.next!.paths[0]);
    expect(all.next!.separates.map(({ paths }) => paths[0])).toEqual(['top.thickness', 'bridge.mass']);
  });

  it('takes paths that were declared to go together for one', () => {
    const declared = found(
      BOTH.replace('change top', 'together "lighter" { change top').replace('22 g }', '22 g } }'),
      TWINS,
      build(4, 2, 2.6, 22, 2.4),
    );
    // Their dimensions differ, so that they are two columns; braces of one height would be one.
    expect(declared.separation.groups).toEqual([[0, 1]]);
  });
});

describe('too few builds', () => {
  it('fits nothing', () => {
    const mixed = `recipe corrie-2 from corrie-1 { because "All."  change top.thickness: 2.8 mm -> 2.6 mm
      change bridge.mass: 27 g -> 22 g  change back.thickness: 2.4 mm -> 2.7 mm }\n`;
    const all = found(mixed, build(1, 1, 2.8, 27, 2.4), build(2, 2, 2.6, 22, 2.4), build(3, 2, 2.6, 27, 2.7));
    expect(all.responses[0]!.outcome).toEqual({ kind: 'too-few-builds', unknowns: 4 });
    expect(all.separation.clear).toEqual([]);
  });

  it('is nothing to fall over', () => {
    expect(found().design.builds).toEqual([]);
    expect(found(build(1, 1, 2.8, 27, 2.4)).responses).toEqual([]);
    expect(found(TWINS).responses[0]!.outcome.kind).toBe('nothing-varied');
    expect(modelEffects(shopOf(HEAD).workshop, 'nobody')).toBeUndefined();
  });
});

describe('what is told beside', () => {
  it('is a billet that no recipe declares', () => {
    const { design, separation } = found(TOP, TWINS, build(4, 2, 2.6, 27, 2.4, 0, 'bracing.wood: billet-2'));
    expect(design.variables.map(({ paths, declared }) => [paths[0], declared])).toEqual([
      ['top.thickness', true],
      ['bracing.wood', false],
    ]);
    expect(separation.groups).toEqual([[0, 1]]);
  });

  it('is a build in which a variable is not known, and one of another line', () => {
    const { design } = found(
      TOP,
      TWINS,
      build(4, 2, 2.6, 27, 2.4),
      'build no-5 of corrie-2 { top.thickness: unknown  reading day-1 { resonance.top: 170 Hz } }\n',
      'recipe other for corrie { because "Afresh."  top.thickness: 3 mm }\n',
      'build no-6 of other { reading day-1 { resonance.top: 199 Hz } }\n',
      'build no-7 of corrie-2 { }\n',
    );
    expect(design.leftOut).toEqual([
      { build: 'no-5', because: 'unknown-value', path: 'top.thickness' },
      { build: 'no-6', because: 'other-base', base: 'other' },
      { build: 'no-7', because: 'nothing-read' },
    ]);
    expect(design.builds).toHaveLength(4);
  });

  it('is never fitted from readings under other conditions', () => {
    const later = build(4, 2, 2.6, 27, 2.4).replace('day-1', 'day-90');
    const { outcome } = found(TOP, TWINS, later).responses[0]!;
    // It has a level of its own, and nothing else says what that level is.
    expect(outcome.kind).toBe('too-few-builds');
  });

  it('is something else at work, where the changes leave more unexplained than builds alike show', () => {
    const lighter = [25, 23, 21].map(
      (mass, i) => `recipe lighter-${i} from corrie-1 { because "Bridge."  change bridge.mass: 27 g -> ${mass} g }\n`,
    );
    const builds = [25, 23, 21].map((mass, i) =>
      build(4 + i, 1, 2.8, mass, 2.4, [0.06, -0.06, 0.06][i]).replace('corrie-1', `lighter-${i}`),
    );
    const { outcome } = found(...lighter, TWINS, ...builds).responses[0]!;
    if (outcome.kind !== 'fitted') throw new Error(outcome.kind);
    expect(outcome.scatter).toMatchObject({ basis: 'builds', freedom: 4 });
    expect(outcome.scatter.share).toBeGreaterThan(0.03);
    expect(outcome.effects[0]!.verdict).toBe('hidden');
  });

  it('is the last digit written down, where builds alike read exactly the same', () => {
    const triplets = [1, 2, 3].map((n) => build(n, 1, 2.8, 27, 2.4)).join('');
    const { outcome } = found(TOP, triplets, build(4, 2, 2.6, 27, 2.4)).responses[0]!;
    if (outcome.kind !== 'fitted') throw new Error(outcome.kind);
    expect(outcome.scatter.share / (0.0001 / 2 / Math.sqrt(3) / outcome.start)).toBeCloseTo(1, 1);
  });

  it('is the stated scatter, where no two builds are alike', () => {
    const { outcome } = found(
      TOP,
      BACK,
      build(1, 1, 2.8, 27, 2.4),
      build(2, 2, 2.6, 27, 2.4),
      build(3, 4, 2.8, 27, 2.7),
    ).responses[0]!;
    if (outcome.kind !== 'fitted') throw new Error(outcome.kind);
    expect(outcome.scatter.basis).toBe('common practice');
    expect(outcome.scatter.share).toBeCloseTo(0.02, 6);
    // By hand: one build against one, √2 · 2 % · 1.96.
    const bands = outcome.effects.map(({ builds }) => Math.log1p(builds!.band / outcome.start));
    for (const band of bands) expect(band).toBeCloseTo(1.95996 * 0.02 * Math.SQRT2, 5);
  });

  it('is the species of a wood and braces that come as one column, set by set of no account', () => {
    const shop = shopOf(`shop wick { vary at most 2 }
      model corrie { scale: 645 mm  bracing { x-bass { height: 15.9 mm }  x-treble { height: 15.9 mm } } }
      wood s-1 is sitka-spruce { use: top }  wood s-2 is sitka-spruce { use: top }  wood e-1 is engelmann-spruce { use: top }
      recipe c-1 for corrie { because "First."  top.wood: s-1 }
      recipe c-2 from c-1 { because "Again."  change top.wood: s-1 -> s-2 }
      recipe c-3 from c-1 { because "Engelmann."  change top.wood: s-1 -> e-1 }
      recipe c-4 from c-1 { because "Lower."  together "lower X" {
        change bracing.x-bass.height: 15.9 mm -> 15 mm  change bracing.x-treble.height: 15.9 mm -> 15 mm } }
      ${[1, 2, 3, 4].map((n) => `build n-${n} of c-${n} { reading day-1 { resonance.top: ${180 + n} Hz } }`).join('\n')}`);
    const { design } = modelEffects(shop.workshop, 'corrie')!;
    expect(design.variables.map(({ paths, column }) => [paths, column])).toEqual([
      [['top.wood'], [0, 0, 1, 0]],
      [
        ['bracing.x-bass.height', 'bracing.x-treble.height'],
        [0.0159, 0.0159, 0.0159, 0.015],
      ],
    ]);
    expect(design.variables[0]!.species).toEqual(['sitka-spruce', 'engelmann-spruce']);
  });

  it('is two sets of one species by their own names, where neither comes from the other', () => {
    const shop = shopOf(`shop wick { vary at most 2 }
      model corrie { scale: 645 mm }
      wood s-1 is sitka-spruce { use: top }  wood e-1 is engelmann-spruce { use: top }  wood e-2 is engelmann-spruce { use: top }
      recipe c-1 for corrie { because "First."  top.wood: s-1 }
      recipe c-2 from c-1 { because "Engelmann."  change top.wood: s-1 -> e-1 }
      recipe c-3 from c-1 { because "Another."  change top.wood: s-1 -> e-2 }
      ${[1, 2, 3].map((n) => `build n-${n} of c-${n} { reading day-1 { resonance.top: ${180 + n} Hz } }`).join('\n')}`);
    const { design } = modelEffects(shop.workshop, 'corrie')!;
    expect(design.variables.map(({ column, species }) => [column, species])).toEqual([
      [[0, 1, 0], undefined],
      [[0, 0, 1], undefined],
    ]);
  });
});
