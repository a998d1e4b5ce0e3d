/**
 * Moduli of a piece of wood fitted by the plate solver to what was read on it, beside those of the closed forms. The
 * closed forms stay what everything else is computed from: they are there at once and never change under a maker's hands.
 * The fitted figures say how far they are off: a bending tap owes something to the other direction and to the twist, a
 * twist tap reads G some ten per cent low, a plank bends across its width too and gives way in shear.
 */
import { taken } from './taken.js';
import { MechanicsError } from '../../mechanics/error.js';
import type { OrthotropicWood, Tap } from '../../mechanics/plate/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { modeOfWord, modeWord, PLATE_MODES } from '../../facts/plate-mode.js';
import type { WoodTask } from '../evaluation/analyst.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { FIT_SPREAD } from './model-errors.js';
import { sinceMeasured, STANDARD_GRAVITY } from './wood-quantities.js';

type Modulus = 'along' | 'across' | 'twist';

const SOURCE =
  'free plate with transverse shear (DKMQ, Katili 1993), Gauss–Newton on the logarithms of the readings, the mesh’s own error taken off';

export const FITTED_WOOD_QUANTITIES: readonly DerivedQuantity[] = [
  fitted('along', 'Stiffness along the grain with which the plate solver meets all the taps, or the deflection.'),
  fitted('across', 'Stiffness across the grain with which the plate solver meets all the taps.'),
  fitted('twist', 'Resistance to twist with which the plate solver meets all the taps.'),
];

function fitted(which: Modulus, sentence: string): DerivedQuantity {
  const compute = (ask: Ask) => {
    const fit = ask.fit(ask.shared('test for the solver', testOf));
    if (!fit.ok) throw new MechanicsError('taps', fit.problems[0]?.message ?? 'No wood fits these readings.');
    const found = fit[which];
    if (found === undefined) return ask.missing(`tap.${which}`);
    if (found.spread > 0) ask.doubt({ ...FIT_SPREAD, key: `fit-${which}`, own: found.spread });
    return found.value * sinceMeasured(ask);
  };
  return {
    path: `modulus.${which}-fitted`,
    dimension: DIMENSION.pressure,
    unit: 'GPa',
    slow: true,
    sentence,
    formula: 'min Σ((f − f_read)/u)² over E along, E across and G; F·L³/(48·I·y) as the first guess of a deflection',
    source: SOURCE,
    compute,
    slopes: (ask) => slopesOf(ask, which, compute(ask)),
  };
}

const THREE_TAPS = ['along', 'across', 'twist'] as const;
const WORDS: readonly string[] = PLATE_MODES.map(modeWord);
const BLANK = ['blank.length', 'blank.width', 'blank.thickness'] as const;

/** As boards of one species differ in it: five measured half-plates of spruce, 0.23 to 0.47 (D. G. Badiane et al.). */
const POISSON_SCATTER = 0.25;

function testOf(ask: Ask): WoodTask {
  const isHung = ask.numberIf('deflection.along') !== undefined && wordsRead(ask).length < THREE_TAPS.length;
  const test = isHung ? deflectionTest(ask) : tapTest(ask);
  return { test, key: JSON.stringify(test) };
}

/** The modes that were read, in the order of the catalogue. */
function wordsRead(ask: Ask): readonly string[] {
  return WORDS.filter((word) => ask.numberIf(`tap.${word}`) !== undefined);
}

/** All the taps there are; where they are fewer than three, the three are asked for. */
function tapTest(ask: Ask): WoodTask['test'] {
  const read = wordsRead(ask);
  const words = read.length < THREE_TAPS.length ? THREE_TAPS : read;
  const taps = words.map((word): Tap => {
    const { linesAlong, linesAcross } = modeOfWord(word)!;
    return { mode: { along: linesAcross, across: linesAlong }, frequency: ask.number(`tap.${word}`) };
  });
  const [length, width, thickness] = BLANK.map((path) => ask.number(path)) as [number, number, number];
  const isKnown = ask.numberIf('poisson.LR') !== undefined || ask.numberIf('poisson.LT') !== undefined;
  const poissonScatter = isKnown ? undefined : POISSON_SCATTER;
  return { kind: 'taps', length, width, thickness, taps, poissonScatter, wood: woodOf(ask) };
}

/** The plank lies evenly over the supports; the load hangs where the rig says. */
function deflectionTest(ask: Ask): WoodTask['test'] {
  const span = ask.number('deflection.rig.span');
  const length = ask.number('blank.length');
  if (length < span) {
    throw new MechanicsError('deflection', 'The blank is shorter than the span of the rig it is said to lie on.');
  }
  const first = (length - span) / 2;
  return {
    kind: 'deflection',
    length,
    width: ask.numberIf('deflection.rig.width') ?? ask.number('blank.width'),
    thickness: ask.numberIf('deflection.thickness') ?? ask.number('blank.thickness'),
    supports: [first, first + span],
    loadAt: first + span / 2 + taken(ask, 'deflection.rig.at'),
    force: ask.number('deflection.rig.load') * STANDARD_GRAVITY,
    deflection: ask.number('deflection.along'),
    wood: woodOf(ask),
  };
}

/** What the test does not tell is as the closed forms and the handbook have it. */
function woodOf(ask: Ask): OrthotropicWood {
  return {
    eAlong: ask.number('modulus.along'),
    eAcross: ask.number('modulus.across'),
    poisson: ask.number('poisson'),
    shearInPlane: ask.number('modulus.twist'),
    shearAlong: ask.number('modulus.through-shear'),
    shearAcross: ask.number('modulus.rolling-shear'),
    density: ask.number('density-when-read'),
  };
}

/** By the readings as the fit has them; by the sizes as the closed forms have them, to within the few per cent by which one reading tells of two constants. */
function slopesOf(ask: Ask, which: Modulus, value: number): ReadonlyMap<string, number> {
  const task = ask.shared('test for the solver', testOf);
  const { test } = task;
  const fit = ask.fit(task);
  const gains = (fit.ok && fit[which]?.gains) || [];
  const powers: readonly (readonly [path: string, power: number])[] =
    test.kind === 'deflection'
      ? [
          ['deflection.along', -1],
          ['deflection.rig.load', 1],
          ['deflection.rig.span', 3],
          [ask.numberIf('deflection.rig.width') === undefined ? 'blank.width' : 'deflection.rig.width', -1],
          [ask.numberIf('deflection.thickness') === undefined ? 'blank.thickness' : 'deflection.thickness', -3],
        ]
      : [
          ...test.taps.map(({ mode }, i): readonly [string, number] => [
            `tap.${modeWord({ linesAlong: mode.across, linesAcross: mode.along })}`,
            gains[i] ?? 0,
          ]),
          ['density-when-read', 1],
          ['blank.thickness', -2],
          ...POWERS_OF_SIZE[which],
        ];
  return new Map(powers.map(([path, power]) => [path, (power * value) / ask.number(path)]));
}

const POWERS_OF_SIZE: Readonly<Record<Modulus, readonly (readonly [string, number])[]>> = {
  along: [['blank.length', 4]],
  across: [['blank.width', 4]],
  twist: [
    ['blank.length', 2],
    ['blank.width', 2],
  ],
};
