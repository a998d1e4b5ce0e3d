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
import type { WoodTask } from '../evaluation/analyst.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { sinceMeasured, STANDARD_GRAVITY } from './wood-quantities.js';

type Modulus = 'along' | 'across' | 'twist';

const SOURCE =
  'free plate with transverse shear (DKMQ, Katili 1993), Gauss–Newton on the logarithms of the readings, the mesh’s own error taken off';

export const FITTED_WOOD_QUANTITIES: readonly DerivedQuantity[] = [
  fitted('along', 'Stiffness along the grain with which the plate solver meets all three taps, or the deflection.'),
  fitted('across', 'Stiffness across the grain with which the plate solver meets all three taps.'),
  fitted('twist', 'Resistance to twist with which the plate solver meets all three taps.'),
];

function fitted(which: Modulus, sentence: string): DerivedQuantity {
  const compute = (ask: Ask) => {
    const fit = ask.fit(ask.shared('test for the solver', testOf));
    if (!fit.ok) throw new MechanicsError('taps', fit.problems[0]?.message ?? 'No wood fits these readings.');
    const found = fit[which];
    return found === undefined ? ask.missing(`tap.${which}`) : found * sinceMeasured(ask);
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

const TAPS = ['tap.along', 'tap.across', 'tap.twist'] as const;
const BLANK = ['blank.length', 'blank.width', 'blank.thickness'] as const;

function testOf(ask: Ask): WoodTask {
  const has = (path: string) => ask.numberIf(path) !== undefined;
  const isHung = has('deflection.along') && !TAPS.every(has);
  const test = isHung ? deflectionTest(ask) : tapTest(ask);
  return { test, key: JSON.stringify(test) };
}

function tapTest(ask: Ask): WoodTask['test'] {
  const [along, across, twist] = TAPS.map((path) => ask.number(path)) as [number, number, number];
  const [length, width, thickness] = BLANK.map((path) => ask.number(path)) as [number, number, number];
  const taps: readonly Tap[] = [
    { mode: { along: 2, across: 0 }, frequency: along },
    { mode: { along: 0, across: 2 }, frequency: across },
    { mode: { along: 1, across: 1 }, frequency: twist },
  ];
  return { kind: 'taps', length, width, thickness, taps, wood: woodOf(ask) };
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

/**
 * As the closed forms have them: what is fitted goes with the readings as they do, to within the few per cent by which
 * one reading tells of two constants.
 */
function slopesOf(ask: Ask, which: Modulus, value: number): ReadonlyMap<string, number> {
  const { test } = ask.shared('test for the solver', testOf);
  const powers: readonly (readonly [path: string, power: number])[] =
    test.kind === 'deflection'
      ? [
          ['deflection.along', -1],
          ['deflection.rig.load', 1],
          ['deflection.rig.span', 3],
          [ask.numberIf('deflection.rig.width') === undefined ? 'blank.width' : 'deflection.rig.width', -1],
          [ask.numberIf('deflection.thickness') === undefined ? 'blank.thickness' : 'deflection.thickness', -3],
        ]
      : [[`tap.${which}`, 2], ['density-when-read', 1], ['blank.thickness', -2], ...POWERS_OF_SIZE[which]];
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
