/** What the bench sets by: neck angle, heights, compensation, places in the nut. Straight-line geometry and statics. */
import { pinBridgeTipping } from '../../mechanics/strings/bridge-statics.js';
import { fretPlace, nutSpacing } from '../../mechanics/strings/frets.js';
import { actionAt, neckAngle, saddleHeightForAction } from '../../mechanics/strings/neck-angle.js';
import { saddleSetback, stretchForPitch } from '../../mechanics/strings/string-tension.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { stringHeight } from './string-quantities.js';

const GEOMETRY = 'geometry; the string straight, the bow of the neck a parabola from nut to join';

export const SETUP_QUANTITIES: readonly DerivedQuantity[] = [
  saddleHeight('bass', 'Height of the lowest string over the plane of the frets at the saddle that gives the action.'),
  saddleHeight(
    'treble',
    'Height of the highest string over the plane of the frets at the saddle that gives the action.',
  ),
  length({
    path: 'setup.saddle-height.middle',
    sentence: 'Height of the strings over the plane of the frets at the middle of the saddle that gives the action.',
    formula: '(h_bass + h_treble)/2',
    source: GEOMETRY,
    compute: (ask) => (ask.number('setup.saddle-height.bass') + ask.number('setup.saddle-height.treble')) / 2,
  }),
  length({
    path: 'setup.projection',
    sentence:
      'Height of the plane of the frets over the top at the saddle: what a straightedge on the frets must show.',
    formula: 'string height over the top − string height over the frets',
    source: GEOMETRY,
    compute: (ask) => stringHeight(ask) - ask.number('setup.saddle-height.middle'),
  }),
  length({
    path: 'setup.action-at-join',
    sentence: 'Height of the middle of the strings over the fret at the body.',
    formula: 'h_nut + (h_saddle − h_nut)·x/L',
    source: GEOMETRY,
    compute: (ask) =>
      actionAt({ ...neckOf(ask), atSaddle: ask.number('setup.saddle-height.middle') }, ask.number('neck.join-fret')),
  }),
  {
    path: 'neck.angle',
    dimension: DIMENSION.angle,
    unit: 'deg',
    sentence: 'Angle of the neck against the top that brings the plane of the frets to its projection.',
    formula: 'atan((projection − fingerboard − fret)/distance from join to saddle)',
    source: GEOMETRY,
    compute: (ask) => {
      const scale = ask.number('scale');
      const fret = ask.numberOr('frets.crown-height', 0.0011, 'the frets are taken to be 1.1 mm high');
      const distance = scale - fretPlace(scale, ask.number('neck.join-fret'));
      return neckAngle(ask.number('fingerboard.thickness') + fret, ask.number('setup.projection'), distance);
    },
  },
  length({
    path: 'strings.*.setback',
    sentence:
      'How far one string’s place on the saddle lies behind the scale, so that the octave at the twelfth fret is true.',
    formula: 'ΔL = L·(EA·δ/(2·T·L) + 3·B/2), δ = 2a²/L, B = π³·E·d⁴/(64·T·L²)',
    source: 'stretch when stopped and bending stiffness (H. Fletcher 1964, from memory); low for a plain third',
    compute: (ask) => saddleSetback({ ...stretched(ask), scale: ask.number('scale'), action: actionOf(ask) }),
  }),
  length({
    path: 'strings.*.stretch',
    sentence: 'How far the tuner must draw one string to raise it by a semitone.',
    formula: 'ΔT·L/EA, ΔT = T·(2^(1/6) − 1)',
    source: 'Hooke’s law; L from nut to saddle',
    compute: (ask) => stretchForPitch(stretched(ask), ask.number('scale')),
  }),
  length({
    path: 'strings.*.at-nut',
    sentence: 'Place of one string in the nut, from its bass edge, counted from the highest string.',
    formula: 'even distances between centres, or even gaps between strings',
    source: 'geometry; outer strings as far apart as the recipe says',
    compute: atNut,
  }),
  {
    path: 'bridge.tipping',
    dimension: DIMENSION.torque,
    unit: 'N·m',
    sentence:
      'Moment of the strings on the bridge itself; the rest of their couple goes into the plate under the pins.',
    formula: 'T·(1 − cos b)·h + T·sin b·a',
    source: 'statics; a design aid, not a promise of safety',
    compute: (ask) => {
      const ahead =
        ask.number('bridge.width') / 2 -
        ask.numberOr(
          'bridge.saddle-distance',
          0.01,
          'the saddle is taken to lie 10 mm behind the front edge of the bridge',
        );
      return pinBridgeTipping(
        ask.number('strings.total-tension'),
        ask.number('bridge.break-angle'),
        stringHeight(ask),
        ahead,
      );
    },
  },
];

function length(row: Omit<DerivedQuantity, 'dimension' | 'unit'>): DerivedQuantity {
  return { ...row, dimension: DIMENSION.length, unit: 'mm' };
}

function saddleHeight(side: 'bass' | 'treble', sentence: string): DerivedQuantity {
  return length({
    path: `setup.saddle-height.${side}`,
    sentence,
    formula: 'h = (action − flat part)/(x₁₂/L)',
    source: GEOMETRY,
    compute: (ask) => saddleHeightForAction(neckOf(ask), ask.number(`setup.action.${side}`)),
  });
}

function neckOf(ask: Ask) {
  return {
    scale: ask.number('scale'),
    relief: ask.numberOr('setup.relief', 0, 'the neck is taken to be straight'),
    joinFret: ask.numberIf('neck.join-fret'),
  };
}

function stretched(ask: Ask) {
  const at = (what: string) => ask.number(`strings.${ask.member}.${what}`);
  return { tension: at('tension'), core: at('core'), coreModulus: at('core-modulus') };
}

/** Between treble and bass, evenly from string to string. */
function actionOf(ask: Ask): number {
  const [treble, bass] = [ask.number('setup.action.treble'), ask.number('setup.action.bass')];
  const last = ask.members('strings').length - 1;
  return last <= 0 ? treble : treble + ((bass - treble) * (Number(ask.member) - 1)) / last;
}

function atNut(ask: Ask): number {
  const members = [...ask.members('strings')].reverse();
  const gauges = members.map((member) => ask.number(`strings.${member}.gauge`));
  const width = ask.number('nut.width');
  const halves = ((gauges[0] ?? 0) + (gauges.at(-1) ?? 0)) / 2;
  const margin = Math.max(0, (width - ask.number('nut.string-spread') - halves) / 2);
  const places = nutSpacing(width, margin, gauges, ask.word('nut.spacing-rule') === 'gaps' ? 'gaps' : 'centres');
  return places[members.indexOf(ask.member)] ?? ask.missing('strings');
}
