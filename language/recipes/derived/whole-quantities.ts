/** The whole: closed box, finished instrument, and where it balances. */
import { taken } from './taken.js';
import { balance } from '../../mechanics/body/balance.js';
import { fretPlace } from '../../mechanics/strings/frets.js';
import { outlineCentroid } from '../../mechanics/body/half-widths.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { AT_BRIDGE, type OptionMass, optionMasses } from './option-masses.js';
import { saddleStation } from './layout/bridge-place.js';
import { soundholeIfAny } from './layout/soundhole.js';
import { bodyOf } from './layout/outline.js';

export const WHOLE_QUANTITIES: readonly DerivedQuantity[] = [
  {
    path: 'mass.box',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the closed box, before neck, bridge and finish.',
    formula: 'braced top + braced back + sides + linings + blocks',
    source: 'sum; a kerfed lining fills half its outer size: common practice',
    compute: (ask) =>
      ask.number('top.braced-mass') +
      ask.number('back.braced-mass') +
      ask.number('sides.mass') +
      liningMass(ask, 'lining') +
      liningMass(ask, 'back-lining') +
      ask.number('neck-block.mass') +
      ask.number('tail-block.mass') +
      taken(ask, 'rim.added-mass'),
  },
  {
    path: 'mass.finished',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the finished instrument, without strings.',
    formula: 'box + neck, nut and tuners + what the top carries at the bridge + rosette + options elsewhere + finish',
    source: 'sum',
    compute: (ask) =>
      ask.number('mass.box') +
      ask.number('neck.mass') +
      ask.number('tuners.mass') +
      taken(ask, 'nut.mass') +
      laidIn(ask) +
      atBridge(ask) +
      elsewhere(ask).reduce((sum, { mass }) => sum + mass, 0) +
      ask.number('finish.mass'),
  },
  {
    path: 'balance',
    dimension: DIMENSION.length,
    unit: 'mm',
    sentence: 'Where the finished instrument balances, measured from the tail.',
    formula: 'Σ m·x / Σ m; box at the middle of its outline, neck midway to the nut, tuners 100 mm beyond it',
    source: 'statics; where the parts have their middles: common practice',
    compute: balancePoint,
  },
];

function liningMass(ask: Ask, lining: 'lining' | 'back-lining'): number {
  const [width, height] = [ask.number(`${lining}.width`), ask.number(`${lining}.height`)];
  return ask.number(`${lining}.wood.density`) * ask.number('body.perimeter') * width * height * KERFED_FILL;
}

const KERFED_FILL = 0.5;

/** The bridge plate is counted with the box. */
function atBridge(ask: Ask): number {
  return ask.number('bridge.moving-mass') - taken(ask, 'bridge.plate.mass');
}

function balancePoint(ask: Ask): number {
  const [length, scale] = [ask.number('body.length'), ask.number('scale')];
  const joint = fretPlace(scale, ask.number('neck.join-fret'));
  const nut = length + joint;
  return balance([
    { mass: ask.number('mass.box') + ask.number('finish.mass'), station: outlineCentroid(bodyOf(ask).outline) },
    { mass: ask.number('neck.mass'), station: (length + nut) / 2 },
    { mass: ask.number('tuners.mass'), station: nut + 0.1 },
    { mass: taken(ask, 'nut.mass'), station: nut },
    ...rosetteAt(ask),
    { mass: atBridge(ask), station: saddleStation(ask) },
    ...elsewhere(ask).map(({ mass, on }) => ({ mass, station: stationOn(ask, on) })),
  ]).station;
}

/** What the rosette adds to the wood it is laid in; nothing where nobody weighed it. */
function laidIn(ask: Ask): number {
  return ask.numberIf('rosette.mass') === undefined ? 0 : ask.number('rosette.added-mass');
}

function rosetteAt(ask: Ask): readonly { readonly mass: number; readonly station: number }[] {
  const hole = soundholeIfAny(ask);
  return hole ? [{ mass: laidIn(ask), station: hole.centre[0] }] : [];
}

/** Options that are not weighed with the bridge already. */
function elsewhere(ask: Ask): readonly OptionMass[] {
  return optionMasses(ask).filter(({ on }) => !AT_BRIDGE.includes(on));
}

function stationOn(ask: Ask, part: string): number {
  if (part === 'tail-block') return 0;
  if (part === 'neck-block') return ask.number('body.length');
  return outlineCentroid(bodyOf(ask).outline);
}
