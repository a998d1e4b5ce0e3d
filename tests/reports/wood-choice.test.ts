/** The measured sets ranked for a recipe, and one of them taken into it. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { createParser } from '../../language/grammar/parse.js';
import { openWorkshop } from '../../language/shop.js';
import { locationOf } from '../../language/checks/desk.js';
import { useWood } from '../../language/editing/refactoring/use-wood.js';
import { type RankedSet, woodChoice } from '../../language/reports/wood-choice.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const folder = new URL('../../examples/hollin-reach/', import.meta.url);
const example = deskOf(
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.bookmatch'))
    .map((name) => readFileSync(new URL(name, folder), 'utf8')),
);

const set = (sets: readonly RankedSet[], name: string) => sets.find(({ wood }) => wood === name)!;
const millimetres = (text: string | undefined) => Number(/^([\d.]+) mm$/.exec(text ?? '')?.[1]);
const grams = (text: string | undefined) => Number(/^(\d+) g$/.exec(text ?? '')?.[1]);

describe('six sets for the stiffness of the first recipe', () => {
  const { sets, from, quantity, target } = woodChoice(example, 'vennick-31')!;

  it('says what is kept, and whose it is', () => {
    expect({ from, quantity }).toEqual({ from: 'vennick-31', quantity: 'top.stiffness.along' });
    // E·h³/12 = 10.8 GPa·(2.80 mm)³/12 = 19.8 N·m, and 1 % more for the plate's coupling.
    expect(target).toBe('20 N·m');
  });

  // h = 2.80 mm·(10.8 GPa/E)^(1/3), by hand; the plate's Poisson coupling moves it by less than half a per cent.
  it.each([
    ['t-1', 8.6],
    ['t-2', 10.8],
    ['t-3', 12.6],
    ['t-4', 14.6],
    ['t-5', 12.4],
    ['t-6', 9.0],
  ])('gives %s of %f GPa the thickness it needs', (wood, gigapascal) => {
    const exact = 2.8 * Math.cbrt(10.8 / gigapascal);
    expect(Math.abs(millimetres(set(sets, wood).thickness) / exact - 1)).toBeLessThan(0.005);
  });

  it('ranks by mass: stiff and light first, the very stiff one behind the ordinary one', () => {
    const six = sets.filter(({ wood }) => wood.startsWith('t-'));
    expect(six.map(({ wood }) => wood)).toEqual(['t-3', 't-1', 't-5', 't-2', 't-4', 't-6']);
    const [best, heaviest] = [six[0]!, six[5]!];
    expect(best.heavier).toBeUndefined();
    const heavier = Number(/^\+([\d.]+) g$/.exec(heaviest.heavier!)![1]);
    // Both masses are told to the gram.
    expect(Math.abs(heavier - (grams(heaviest.mass) - grams(best.mass)))).toBeLessThanOrEqual(1);
  });

  it('puts sets that are built into an instrument after those still on the shelf', () => {
    const built = sets.map(({ builtInto }) => builtInto.length > 0);
    expect(built.indexOf(true)).toBeGreaterThan(0);
    expect(built.lastIndexOf(false)).toBeLessThan(built.indexOf(true));
    expect(set(sets, 'sitka-31')).toMatchObject({ current: true, builtInto: ['no-31'] });
  });

  it('leaves out what is not for tops', () => {
    expect(sets.map(({ wood }) => wood)).not.toContain('rosewood-a');
    expect(sets.map(({ wood }) => wood)).not.toContain('billet-3');
  });
});

describe('the ranking', () => {
  const choiceOf = (text: string, recipe = 'v-32') => woodChoice(deskOf(text, VENNICK), recipe);

  it('is for the parent’s stiffness, and says what the stiffness across does', () => {
    const { from, sets } = choiceOf('recipe v-32 from v-31 { change top.thickness: 2.8 mm -> 2.6 mm }')!;
    expect(from).toBe('v-31');
    expect(millimetres(set(sets, 'sitka-31').thickness)).toBe(2.8);
    expect(set(sets, 'sitka-31').acrossChange).toBeUndefined();
    // Same thickness cubed times E along, so E across over E along: (0.71/9.1)/(0.82/10.8) − 1 = +2.8 %.
    expect(set(sets, 'engelmann-37').acrossChange).toMatch(/^\+2\.[5-9] %$/);
  });

  it('keeps what the recipe itself holds by the thickness, at the value it says', () => {
    const text = 'recipe v-32 from v-31 { hold top.sag at 6.4 mm by top.thickness }';
    const { quantity, target, from, sets } = choiceOf(text)!;
    expect({ quantity, target, from }).toEqual({ quantity: 'top.sag', target: '6.4 mm', from: 'v-32' });
    // The sag of a beam goes with 1/h³; at 2.80 mm this one sags F·L³/(48·E·I), I = 400 mm·(2.80 mm)³/12.
    const sag = (2.268 * 9.80665 * 0.5 ** 3) / (48 * 10.8e9 * ((0.4 * 0.0028 ** 3) / 12));
    expect(Math.abs(millimetres(set(sets, 'sitka-31').thickness) / (2.8 * Math.cbrt(sag / 0.0064)) - 1)).toBeLessThan(
      0.004,
    );
  });

  it('takes no set that was never measured', () => {
    const { sets } = choiceOf('wood guess is sitka-spruce { use: top }  recipe v-32 from v-31 { }')!;
    expect(sets.map(({ wood }) => wood)).toEqual(['engelmann-37', 'sitka-32', 'sitka-31']);
  });

  it('says what is left of the blank, and when the blank is too thin', () => {
    const woods = `
      wood thin is sitka-spruce { use: top  blank: 550 mm x 205 mm x 2.5 mm  density: 400 kg/m³  modulus.along: 10.8 GPa }
      wood full is sitka-spruce { use: top  blank: 550 mm x 205 mm x 4.3 mm  density: 400 kg/m³  modulus.along: 10.8 GPa }`;
    const { sets } = choiceOf(`${woods} recipe v-32 from v-31 { }`)!;
    expect(set(sets, 'thin')).toMatchObject({ trouble: 'too-thin-blank' });
    expect(set(sets, 'thin').leaves).toBeUndefined();
    expect(millimetres(set(sets, 'full').leaves)).toBeCloseTo(4.3 - 2.8, 1);
    expect(sets.at(-1)!.wood).toBe('thin');
  });

  it('marks a thickness nobody builds', () => {
    const { sets } = choiceOf(
      'wood balsa is sitka-spruce { use: top  density: 150 kg/m³  modulus.along: 2 GPa }  recipe v-32 from v-31 { }',
    )!;
    expect(set(sets, 'balsa').trouble).toBe('not-usual');
  });

  it('has no answer where nothing is known to be kept', () => {
    expect(choiceOf('recipe w-1 for w { }  model w { }', 'w-1')).toBeUndefined();
    expect(choiceOf('', 'nobody')).toBeUndefined();
  });
});

describe('taking a set into a recipe', () => {
  const parser = createParser();
  /** The text once the set is taken, and what it is then found to be. */
  function taken(text: string, wood: string, recipe = 'v-32') {
    const desk = deskOf(text, VENNICK);
    const use = useWood(desk, recipe, wood)!;
    let result = text;
    const places = use.edits.map(({ place, text: put }) => {
      if (!('definition' in place)) throw new Error('an edit outside a definition');
      return { range: locationOf(desk, place.definition, place.span)!.range, put };
    });
    const offset = (at: { line: number; character: number }) =>
      text.split('\n').slice(0, at.line).join('\n').length + (at.line > 0 ? 1 : 0) + at.character;
    for (const { range, put } of places.sort((a, b) => offset(b.range.start) - offset(a.range.start))) {
      result = result.slice(0, offset(range.start)) + put + result.slice(offset(range.end));
    }
    const { shelf, workshop } = openWorkshop({ parser });
    shelf.put(readFile('file:0', result, parser), readFile('file:1', VENNICK, parser));
    return { result, thicknessLeft: use.thicknessLeft, instrument: workshop.instrument(recipe)! };
  }

  it('writes the change and the hold, before what is expected', () => {
    const { result, instrument } = taken(
      'recipe v-32 from v-31 {\n  because "Lighter."   // why\n  expect top.mass: below 170 g\n}\n',
      'engelmann-37',
    );
    expect(result).toBe(
      'recipe v-32 from v-31 {\n  because "Lighter."   // why\n  change top.wood: sitka-31 -> engelmann-37\n' +
        '  hold top.stiffness.along by top.thickness\n  expect top.mass: below 170 g\n}\n',
    );
    expect(instrument.solvedHolds[0]!.outcome.kind).toBe('solved');
  });

  it('puts another set in place of the one it changes to, and writes no second hold', () => {
    const text =
      'recipe v-32 from v-31 {\n  change top.wood: sitka-31 -> sitka-32\n  hold top.sag by top.thickness\n}\n';
    expect(taken(text, 'engelmann-37').result).toBe(text.replace('sitka-32', 'engelmann-37'));
  });

  it('leaves a thickness the recipe changes by itself', () => {
    const { result, thicknessLeft } = taken(
      'recipe v-32 from v-31 {\n  change top.thickness: 2.8 mm -> 2.6 mm\n}\n',
      'sitka-32',
    );
    expect(thicknessLeft).toBe(true);
    expect(result).toBe(
      'recipe v-32 from v-31 {\n  change top.thickness: 2.8 mm -> 2.6 mm\n  change top.wood: sitka-31 -> sitka-32\n}\n',
    );
  });

  it.each(['recipe v-32 from v-31 { }', 'recipe v-32 from v-31 {\n}\n', 'recipe v-32 from v-31 { because "x" }'])(
    'finds a place in %j',
    (text) => {
      const { instrument } = taken(text, 'sitka-32');
      expect(instrument.changes.map(({ path }) => path)).toEqual(['top.wood']);
      expect(instrument.solvedHolds.map(({ outcome }) => outcome.kind)).toEqual(['solved']);
    },
  );

  it('writes wood and thickness into the first of a line, which has nothing to hold against', () => {
    const text = 'recipe w-1 for vennick {\n  top { wood: sitka-31  thickness: 2.8 mm }\n}\n';
    expect(taken(text, 'engelmann-37', 'w-1').result).toBe(
      'recipe w-1 for vennick {\n  top { wood: engelmann-37  thickness: 2.96 mm }\n}\n',
    );
  });

  it('has no answer for a set or a recipe that is not there', () => {
    const desk = deskOf(VENNICK);
    expect(useWood(desk, 'v-31', 'nothing')).toBeUndefined();
    expect(useWood(desk, 'nobody', 'sitka-31')).toBeUndefined();
  });
});
