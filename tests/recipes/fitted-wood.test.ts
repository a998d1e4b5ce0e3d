/** Wood from its taps, from the text of a `wood` to the moduli the solver fits to them; published plates as in tests/published/plate. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hoverAt } from '../../language/editing/hover/hover.js';
import { plankDeflection } from '../../language/mechanics/wood/plank.js';
import { NO_ANALYST } from '../../language/recipes/evaluation/analyst.js';
import { bracedShop, OWN } from './braced-shop.js';

const [head, ...rows] = readFileSync('tests/published/data/spruce-plates-fe.csv', 'utf8')
  .split('\n')
  .map((line) => line.split(','));
const plates = rows.slice(0, 5).map((row) => (name: string) => Number(row[head!.indexOf(name)]));

/** A wood as a maker writes it: the blank's size and weight, and three taps. */
function woodText(plate: (name: string) => number, poisson = ''): string {
  const [length, width, thickness] = ['L_m', 'W_m', 'T_m'].map((side) => plate(side)) as [number, number, number];
  return `wood spruce-1 is sitka-spruce {
    use: top  ${poisson}
    blank: ${length * 1e3} mm x ${width * 1e3} mm x ${thickness * 1e3} mm
    mass: ${plate('rho_kg_m3') * length * width * thickness * 1e3} g
    tap { along: ${plate('f02_Hz')} Hz  across: ${plate('f20_Hz')} Hz  twist: ${plate('f11_Hz')} Hz }
  }`;
}

describe('three taps of a free plate solved in three dimensions', () => {
  const truths = { along: 'EL_Pa', across: 'ER_Pa', twist: 'GLR_Pa' };

  it('give back its moduli within 2 %, nearer than the closed forms do, where Poisson’s ratio is known', () => {
    const off = { closed: 0, fitted: 0 };
    for (const plate of plates) {
      const wood = bracedShop(woodText(plate, `poisson.LR: ${plate('nu_LR')}`)).workshop.woodInFull('spruce-1')!;
      for (const [which, column] of Object.entries(truths)) {
        const share = (path: string) => Math.abs(wood.number(path)! / plate(column) - 1);
        expect.soft(share(`modulus.${which}-fitted`), which).toBeLessThan(0.02);
        off.closed += share(`modulus.${which}`);
        off.fitted += share(`modulus.${which}-fitted`);
      }
    }
    expect(off.fitted).toBeLessThan(0.7 * off.closed);
  });

  it('within 5 % with the handbook’s, which three taps cannot tell', () => {
    const wood = bracedShop(woodText(plates[1]!)).workshop.woodInFull('spruce-1')!;
    for (const [which, column] of Object.entries(truths)) {
      expect(Math.abs(wood.number(`modulus.${which}-fitted`)! / plates[1]!(column) - 1), which).toBeLessThan(0.05);
    }
  });

  it('say how sure they are: as the readings, a hertz on a tap, half a gram on the scale', () => {
    const wood = bracedShop(woodText(plates[0]!)).workshop.woodInFull('spruce-1')!;
    for (const which of ['along', 'across', 'twist']) {
      const [closed, fitted] = [`modulus.${which}`, `modulus.${which}-fitted`].map(
        (path) => wood.uncertainty(path) / wood.number(path)!,
      );
      expect(fitted).toBeGreaterThan(0);
      // The closed form of the twist carries its own scatter besides.
      expect(fitted!).toBeLessThan(1.1 * closed!);
    }
  });

  it('stand beside what is used in the hover of the wood, and are being worked out until then', () => {
    const at = (analyst?: typeof NO_ANALYST) => {
      const { shelf, workshop, checks } = bracedShop(woodText(plates[0]!), analyst && (() => analyst));
      return hoverAt({ shelf, workshop, checks, text: () => undefined }, OWN, { line: 0, character: 6 })!.markdown;
    };
    expect(at()).toMatch(/fitted to the readings by the plate solver \| 11\.\d.* GPa; .* % on what is used/);
    expect(at(NO_ANALYST)).toContain('fitted to the readings by the plate solver | being worked out');
  });
});

describe('a plank with the load off the middle', () => {
  const rig = { span: 500, load: 1, at: 60, width: 30 };
  const E = 11e9;
  const sag = plankDeflection({ span: 0.5, load: 9.80665, loadAt: 0.31, width: 0.03, thickness: 0.006 }, E);
  const text = `rig r9 { span: ${rig.span} mm  load: ${rig.load} kg  at: ${rig.at} mm  width: ${rig.width} mm }
wood strip is sitka-spruce { use: brace  blank: 540 mm x 30 mm x 6 mm  mass: 40 g  deflection { along: ${sag * 1e3} mm  rig: r9 } }`;

  it('gives E along, a little more than beam theory: shear takes its share of the sag', () => {
    const wood = bracedShop(text).workshop.woodInFull('strip')!;
    const share = wood.number('modulus.along-fitted')! / wood.number('modulus.along')! - 1;
    expect(wood.number('modulus.along')! / E).toBeCloseTo(1, 3);
    expect(share).toBeGreaterThan(0);
    expect(share).toBeLessThan(0.02);
  });

  it('says nothing of the other directions', () => {
    const wood = bracedShop(text).workshop.woodInFull('strip')!;
    expect(wood.derived('modulus.twist-fitted')).toMatchObject({ known: false, missing: ['tap.twist'] });
  });
});

it('wood that nobody tapped asks for taps, and no solver', () => {
  const { workshop } = bracedShop('wood plain is sitka-spruce { density: 400 kg/m³ }', () => ({
    ...NO_ANALYST,
    fit: () => {
      throw new Error('asked');
    },
  }));
  const found = workshop.woodInFull('plain')!.derived('modulus.along-fitted');
  expect(found).toMatchObject({ known: false });
  expect(found).toHaveProperty('missing', expect.arrayContaining(['tap.along', 'blank.length']));
});
