/** How far the formulas themselves are off, and what of it two instruments have in common. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { PLATE_ERRORS, RATIO_ERRORS, RIGID_AIR_ERROR, RIM_ERROR } from '../../language/recipes/derived/model-errors.js';
import { rigidAirFrequency } from '../../language/mechanics/body/air.js';
import { densityAtMoisture } from '../../language/mechanics/wood/measured-wood.js';
import { cancelledDoubt, uncertaintyOfDifference } from '../../language/recipes/evaluation/effects.js';
import { uncertaintyOfHold } from '../../language/recipes/instrument/hold-doubt.js';
import { check, codesOf } from '../checks/marked-text.js';
import { readTable } from '../published/table.js';
import { inlayHints } from '../../language/editing/hints/inlay-hints.js';
import { bracedShop, OWN } from './braced-shop.js';
import { shopOf, TOPS, VENNICK } from './shop-of.js';

const whole = ({ common, own }: { readonly common: number; readonly own: number }) => Math.hypot(common, own);

function rms(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);
}

function scatter(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1)) / mean;
}

describe('the doubts of the plate solver', () => {
  // The table of accuracy: differences to CalculiX and to published solutions, made by the test of published plates.
  const text = readFileSync(new URL('../../language/mechanics/plate/accuracy.md', import.meta.url), 'utf8');
  const rows = rowsOf(text.slice(text.indexOf('## Guitar tops in CalculiX')));
  const isBraced = (top: string) => !/unbraced|tapered|patch only/.test(top);

  it('are no less than what its table of accuracy shows for the first four modes of braced tops, and not three times it', () => {
    const found = rms(rows.filter(({ top }) => isBraced(top)).flatMap(({ modes }) => modes.slice(0, 4))) / 100;
    expect(rows.length).toBeGreaterThan(20);
    expect(whole(PLATE_ERRORS.frequency)).toBeGreaterThan(0.95 * found);
    expect(whole(PLATE_ERRORS.frequency)).toBeLessThan(3 * found);
  });

  it('likewise for the rotation of the bridge', () => {
    const found = rms(rows.flatMap(({ rotations }) => rotations)) / 100;
    expect(whole(PLATE_ERRORS.rotation)).toBeGreaterThan(0.7 * found);
    expect(whole(PLATE_ERRORS.rotation)).toBeLessThan(3 * found);
  });
});

/** Rows of differences in per cent, each with the top they belong to. */
function rowsOf(text: string) {
  let top = '';
  return text.split('\n').flatMap((line) => {
    top = /^\| \*\*(.+?)\*\*/.exec(line)?.[1] ?? top;
    if (!line.startsWith('| difference')) return [];
    const cells = line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim().replaceAll('−', '-'));
    const modes = cells.slice(2, 8).map(Number);
    const rotations = (cells[8] ?? '')
      .split(',')
      .filter((cell) => cell.trim() !== '')
      .map(Number);
    return modes.every(Number.isFinite) ? [{ top, modes, rotations }] : [];
  });
}

describe('the scatter of ratios between boards', () => {
  // D. G. Badiane et al., J. Acoust. Soc. Am.: constants of five half-plates of guitar spruce.
  const plates = readTable('spruce-plates-measured.csv');
  const ratioOf = (column: string) => plates.map((row) => Number(row[column]) / Number(row.est_EL_Pa));

  it('is that of measured spruce', () => {
    expect(plates.length).toBeGreaterThanOrEqual(5);
    expect(RATIO_ERRORS.across.own).toBeCloseTo(scatter(ratioOf('est_ER_Pa')), 2);
    expect(RATIO_ERRORS.twist.own).toBeCloseTo(scatter(ratioOf('est_GLR_Pa')), 2);
  });

  it('makes stiffness across uncertain by tens of per cent where one deflection along the grain is all there is', () => {
    const { workshop } = shopOf(`
rig r { span: 500 mm  load: 2.268 kg  at: middle  width: 212 mm }
wood s is sitka-spruce { use: top  blank: 560 mm x 212 mm x 4.4 mm  mass: 220 g  deflection { along: 6 mm  rig: r } }`);
    const wood = workshop.wood('s')!;
    const share = (path: string) => wood.uncertainty(path) / wood.number(path)!;
    expect(share('modulus.across')).toBeGreaterThan(0.25);
    expect(share('modulus.along')).toBeLessThan(0.1);
  });
});

describe('the rigid air', () => {
  it('is doubted by about what the end corrections of the literature differ', () => {
    const openings = [{ area: Math.PI * 0.05 ** 2, thickness: 0 }];
    const [flanged, thin] = (['flanged', 'thin'] as const).map((correction) =>
      rigidAirFrequency({ volume: 0.0135, openings, correction }),
    );
    expect(whole(RIGID_AIR_ERROR)).toBeGreaterThan(0.9 * Math.abs(thin! / flanged! - 1));
  });
});

describe('the rim', () => {
  it('that nobody has described may be anything between hinged and clamped', () => {
    // braced top in CalculiX: 135.6 Hz hinged, 184.5 Hz clamped; rectangular distribution, JCGM 100:2008, 4.3.7.
    expect(RIM_ERROR.common).toBeCloseTo((184.5 / 135.6 - 1) / Math.sqrt(12), 2);
  });
});

describe('what two instruments have in common', () => {
  const { workshop } = bracedShop(
    `recipe v-2 from v-1 { because "Lighter bridge."  change bridge.mass: 27 g -> 22 g }`,
  );
  const [a, b] = [workshop.inFull('v-1')!, workshop.inFull('v-2')!];

  it('is in each value and cancels in their difference', () => {
    for (const path of ['top.main-resonance', 'resonance.top', 'resonance.air']) {
      const each = a.uncertainty(path);
      const common = cancelledDoubt(path, a, b);
      expect(common, path).toBeGreaterThan(0.02 * a.number(path)!);
      expect(common, path).toBeLessThan(each);
      // Without it the difference is known far better than either.
      expect(uncertaintyOfDifference(path, a, b), path).toBeLessThan(0.6 * Math.SQRT2 * each);
    }
  });

  it('is never that of a board: two boards differ', () => {
    const shop = shopOf(
      VENNICK,
      TOPS,
      'recipe a for vennick { top { wood: sitka-31  thickness: 2.8 mm } }\nrecipe b from a { change top.wood: sitka-31 -> sitka-32 }',
    );
    const [one, other] = ['a', 'b'].map((name) => shop.workshop.evaluation(name)!);
    expect(uncertaintyOfDifference('top.stiffness.twist', one!, other!)).toBeGreaterThan(
      1.2 * one!.uncertainty('top.stiffness.twist'),
    );
    expect(uncertaintyOfDifference('top.stiffness.twist', one!, one!)).toBeLessThan(
      one!.uncertainty('top.stiffness.twist'),
    );
  });
});

describe('strings', () => {
  it('are known to a few per cent where they are wound, and much better where they are plain', () => {
    const strings = shopOf(VENNICK).workshop.strings('light-12')!;
    const share = (path: string) => strings.uncertainty(path) / strings.number(path)!;
    expect(share('6.unit-weight')).toBeGreaterThan(0.02);
    expect(share('1.unit-weight')).toBeLessThan(0.005);
  });
});

describe('a wood read in other air', () => {
  it('has its density carried by the handbook’s equations', () => {
    // Wood Handbook FPL-GTR-282 (2021), Eqs. 4-13, 4-14 by hand, Gb = 0.37: 438.6 kg/m³ at 11.3 %, 431.5 kg/m³ at 8.4 %.
    expect(densityAtMoisture(438.6, 0.113, 0.084)).toBeCloseTo(431.5, 0);
    expect(densityAtMoisture(431.5, 0.084, 0.084)).toBeCloseTo(431.5, 9);
  });

  it('is corrected in stiffness and in mass, and tells both', () => {
    const board = (humidity: string) => `
shop s { climate { humidity: 45 %RH  temperature: 20 °C } }
wood t is sitka-spruce { use: top  blank: 560 mm x 212 mm x 4.41 mm  mass: 220 g  tap { along: 75.5 Hz  across: 120 Hz  twist: 52 Hz }  ${humidity} }`;
    const [dry, damp] = [board('humidity: 45 %RH'), board('humidity: 62 %RH')].map((text) =>
      shopOf(text).workshop.wood('t')!,
    );
    expect(dry!.number('heavier-since-read')).toBeCloseTo(0, 9);
    // 11.3 % to 8.4 %MC: some 1.6 % lighter (above), and stiffer by Eq. 5-3.
    expect(Math.abs(damp!.number('heavier-since-read')! + 0.0165)).toBeLessThan(0.001);
    expect(damp!.number('density')! / dry!.number('density')!).toBeCloseTo(1 + damp!.number('heavier-since-read')!, 9);
    expect(damp!.number('stiffer-since-read')!).toBeGreaterThan(0.02);
    // What the taps say goes with the density of that day.
    expect(damp!.number('modulus.along')! / dry!.number('modulus.along')!).toBeCloseTo(
      1 + damp!.number('stiffer-since-read')!,
      9,
    );
  });
});

describe('a hold', () => {
  const shop = (hold: string) => `${VENNICK}
wood a-1 is sitka-spruce { density: 421 kg/m³  modulus { along: 10.8 GPa ± 0.3 GPa  across: 0.82 GPa } }
wood a-2 is sitka-spruce { density: 421 kg/m³  modulus { along: 11.6 GPa ± 0.3 GPa  across: 0.82 GPa } }
recipe v-1 for vennick { because "First."  top { wood: a-1  thickness: 2.8 mm } }
recipe v-2 from v-1 { because "Next."  change top.wood: a-1 -> a-2  ${hold} }`;

  it('is known as well as what it holds is', () => {
    const { workshop } = shopOf(shop('hold top.stiffness.along by top.thickness'));
    const hold = workshop.instrument('v-2')!.solvedHolds[0]!;
    const found = uncertaintyOfHold(hold, workshop.evaluation('v-2')!, workshop.evaluation('v-1'))!;
    // D ∝ E·h³: u(h)/h = ⅓ √(u(E₁)² + u(E₂)² + 9 u(h₁)²) relative, half-widths of a rectangular distribution by √3.
    const relative = Math.hypot(0.3 / 10.8, 0.3 / 11.6, (3 * 0.05) / 2.8) / Math.sqrt(3) / 3;
    expect(found / (relative * workshop.evaluation('v-2')!.number('top.thickness')!)).toBeCloseTo(1, 2);
  });

  const RESONANCE = 'recipe v-2 from v-1 { change bridge.mass: by 5 g  hold resonance.top by bracing.x-bass.height }';

  it('of a resonance has the errors cancel that both instruments are computed with, whoever looks at the parent', () => {
    const { workshop } = bracedShop(RESONANCE);
    const hold = workshop.instrument('v-2')!.solvedHolds[0]!;
    const [now, parent] = [workshop.evaluation('v-2')!, workshop.startEvaluation('v-2')!];
    const found = uncertaintyOfHold(hold, now, parent)!;
    const slope = now.gradient('resonance.top').get('bracing.x-bass.height')!;
    // Rim, coupled body and plate err by 1, 0.3 and 0.3 % of each instrument's own, and by ten times as much of what both have.
    const apart = (found * slope) / now.number('resonance.top')!;
    expect(apart).toBeGreaterThan(0.008);
    expect(apart).toBeLessThan(0.02);
    expect(now.uncertainty('resonance.top') / now.number('resonance.top')!).toBeGreaterThan(0.06);
    expect(found).toBeLessThan(2e-3);
    // Nobody has asked for the parent's resonance by itself: without its slopes nothing is said.
    expect(uncertaintyOfHold(hold, now, workshop.evaluation('v-1'))).toBeUndefined();
  });

  it('of a resonance is shown with what cancels left out', () => {
    const { shelf, workshop, checks } = bracedShop(RESONANCE);
    const all = inlayHints({ shelf, workshop, checks, text: () => undefined }, OWN, {
      start: { line: 0, character: 0 },
      end: { line: 9, character: 0 },
    });
    expect(all.map(({ text }) => text)).toContainEqual(expect.stringMatching(/^= 1\d\.\d+ mm ± 1 mm, was 15\.9 mm$/));
  });

  it('of a resonance that is wished for too near to the parent’s is told so too', () => {
    const at = (wish: number) =>
      bracedShop(`recipe v-2 from v-1 { hold resonance.top at ${wish} Hz by bracing.x-bass.height }`);
    const codes = (wish: number) =>
      at(wish)
        .checks.file(OWN)
        .map(({ code }) => code);
    const old = Math.round(bracedShop(RESONANCE).workshop.inFull('v-1')!.number('resonance.top')!);
    expect(codes(old + 1)).toContain('hold-closer-than-known');
    expect(codes(old - 9)).not.toContain('hold-closer-than-known');
  });

  it('of a wish too near to tell is told so', () => {
    const base = check(shop('')).workshop.evaluation('v-1')!.number('top.stiffness.along')!;
    const at = (share: number) => shop(`hold top.stiffness.along at ${(base * share).toFixed(2)} N·m by top.thickness`);
    expect(codesOf(at(1.01))).toContain('hold-closer-than-known');
    expect(codesOf(at(1.3))).not.toContain('hold-closer-than-known');
  });
});
