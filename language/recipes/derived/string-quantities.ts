/** Strings at pitch on this scale, and what they ask of bridge and top. Design aids: none shows that a joint will hold. */
import { bridgeCouple, bridgeGlueLine, pinAngle, saddleForces } from '../../mechanics/strings/bridge-statics.js';
import { fretPlace } from '../../mechanics/strings/frets.js';
import { stringTension } from '../../mechanics/strings/string-tension.js';
import { stringHeightOverTop } from '../../mechanics/strings/neck-angle.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';

const STATICS = 'statics; a design aid, not a promise of safety';

export const STRING_QUANTITIES: readonly DerivedQuantity[] = [
  {
    path: 'strings.*.tension',
    dimension: DIMENSION.force,
    unit: 'N',
    sentence: 'Tension of one string at pitch, counted from the highest.',
    formula: 'T = μ·(2·L·f)²',
    source: 'Mersenne’s law',
    compute: (ask) =>
      stringTension(
        ask.number(`strings.${ask.member}.unit-weight`),
        ask.number(`strings.${ask.member}.pitch`),
        ask.number('scale'),
      ),
  },
  {
    path: 'strings.total-tension',
    dimension: DIMENSION.force,
    unit: 'N',
    voicing: true,
    sentence: 'Tension of all strings at pitch.',
    formula: 'Σ T',
    source: 'sum',
    compute: (ask) => {
      const members = ask.members('strings');
      if (members.length === 0) return ask.missing('strings');
      return members.reduce((sum, member) => sum + ask.number(`strings.${member}.tension`), 0);
    },
  },
  {
    path: 'bridge.torque',
    dimension: DIMENSION.torque,
    unit: 'N·m',
    voicing: true,
    sentence: 'Couple by which the strings try to turn the bridge.',
    formula: 'M = ΣT × string height over the top',
    source: STATICS,
    compute: (ask) => bridgeCouple(ask.number('strings.total-tension'), stringHeight(ask)),
  },
  {
    path: 'bridge.break-angle',
    dimension: DIMENSION.angle,
    unit: 'deg',
    sentence: 'Angle of the strings over the saddle.',
    formula: 'atan(saddle over pin holes / distance to the pins)',
    source: STATICS,
    compute: breakAngle,
  },
  {
    path: 'bridge.down-force',
    dimension: DIMENSION.force,
    unit: 'N',
    sentence: 'Force of the strings down onto the saddle.',
    formula: 'ΣT·sin θ',
    source: STATICS,
    compute: (ask) => saddleForces(ask.number('strings.total-tension'), ask.number('bridge.break-angle')).down,
  },
  {
    path: 'bridge.glue-shear',
    dimension: DIMENSION.pressure,
    unit: 'kPa',
    sentence: 'Mean shear on the glue under the bridge.',
    formula: 'ΣT / (length × width of the bridge)',
    source: STATICS,
    compute: (ask) =>
      bridgeGlueLine(
        { length: ask.number('bridge.length'), width: ask.number('bridge.width') },
        ask.number('strings.total-tension'),
        stringHeight(ask),
      ).shear,
  },
  {
    path: 'frets.*.place',
    dimension: DIMENSION.length,
    unit: 'mm',
    sentence: 'Distance from nut to fret, before compensation.',
    formula: 'L·(1 − 2^(−n/12))',
    source: 'equal temperament',
    compute: (ask) => fretPlace(ask.number('scale'), Number(ask.member)),
  },
];

/** As the setup states it, or bridge and showing saddle together, or what a straightedge over the bridge showed. */
export function stringHeight(ask: Ask): number {
  const stated = ask.numberIf('setup.string-height');
  if (stated !== undefined) return stated;
  const bridge = ask.numberIf('bridge.height');
  const saddle = ask.numberIf('saddle.protrusion');
  if (bridge !== undefined && saddle !== undefined) return bridge + saddle;
  const gap = ask.numberIf('setup.straightedge.bridge');
  if (bridge !== undefined && gap !== undefined) {
    return stringHeightOverTop(bridge + gap, ask.number('setup.saddle-height.middle'));
  }
  return ask.number('setup.string-height');
}

function breakAngle(ask: Ask): number {
  const stated = ask.numberIf('setup.break-angle');
  if (stated !== undefined) return stated;
  const tied = ask.numberIf('bridge.tie-distance');
  const run = ask.word('bridge.kind') === 'pin' || tied === undefined ? ask.number('bridge.pins.distance') : tied;
  return pinAngle(ask.number('saddle.protrusion'), run);
}
