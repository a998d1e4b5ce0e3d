/** Top and back: wood, thicknesses and their map. */
import { entries, INSTRUMENT, part, range } from './entry.js';
import { PLATE_FREEZE, SET_FREEZE } from './freeze.js';
import { BACK_THICKNESS, TOP_THICKNESS } from './plate-ranges.js';
import type { Part, PlausibleRange, Property } from './property.js';

const set = entries({ where: INSTRUMENT, class: 'voicing', freeze: SET_FREEZE });
const plate = entries({ where: INSTRUMENT, class: 'voicing', freeze: PLATE_FREEZE });

function platePropertiesOf(
  name: 'top' | 'back',
  thickness: readonly PlausibleRange[],
  masses: readonly PlausibleRange[],
): readonly Property[] {
  return [
    set.name(`${name}.wood`, 'wood', `The set of wood the ${name} is made of.`, { also: ['set', 'species', 'timber'] }),
    set.choice(
      `${name}.joint`,
      ['bookmatched', 'slip-matched', 'one-piece', 'three-piece', 'four-piece'],
      `How the ${name} is put together from its halves.`,
    ),
    plate.quantity(`${name}.thickness`, 'mm', `Finished thickness of the ${name} at its centre.`, {
      also: ['thick', 'centre-thickness', 'center-thickness'],
      ranges: thickness,
    }),
    plate.quantity(
      `${name}.edge-thickness`,
      'mm',
      `Finished thickness of the ${name} at the edge of the lower bout, where it is graduated.`,
      {
        also: ['perimeter-thickness', 'rim-thickness'],
        ranges: [range('mm', 1.5, 2.4, 3.3, 'common practice: 0 to 0.8 mm less than the centre')],
      },
    ),
    plate.quantity(`${name}.edge-width`, 'mm', `How far in from the edge the ${name} is thinned.`, {
      also: ['taper-width'],
      ranges: [range('mm', 15, 45, 120, 'from memory')],
    }),
    plate.point(`${name}.map.*.at`, 'mm', `Where a thickness of the ${name} is named or was measured.`),
    plate.quantity(`${name}.map.*.thickness`, 'mm', `Thickness of the ${name} at that point.`, { ranges: thickness }),
    plate.quantity(`${name}.least-thickness`, 'mm', `The thinnest the maker will take this ${name}.`, {
      class: 'record',
      also: ['min-thickness', 'minimum-thickness'],
      ranges: [range('mm', 1.4, 2.1, 3, 'common practice')],
    }),
    plate.quantity(`${name}.mass-limit`, 'g', `The heaviest the bare ${name} may be when cut to outline.`, {
      class: 'record',
      also: ['maximum-mass', 'max-mass'],
      ranges: masses,
    }),
    plate.name(`${name}.rig`, 'rig', `The rig in which the bare ${name}’s sag is reckoned or was read.`, {
      class: 'record',
    }),
    plate.quantity(`${name}.grain-angle`, 'deg', `Angle between the ${name}’s grain and the centre line.`, {
      freeze: SET_FREEZE,
      ranges: [range('deg', -3, 0, 3, 'common practice')],
    }),
    plate.quantity(
      `${name}.rim-stiffness`,
      'N',
      `How stiffly the rim keeps the ${name}’s edge from turning, as moment per metre and radian; unsaid, a hinge.`,
      {
        class: 'body',
        also: ['edge-stiffness', 'rim-spring'],
        ranges: [
          range('N', 0, 300, 3000, 'worked out from the other ranges', {
            note: 'a hinge at 0; by some 3000 N nine tenths of the way to a clamp',
          }),
        ],
      },
    ),
    plate.ratio(
      `${name}.rim-loss`,
      '',
      `Share of its swing (1/Q) that the ${name} gives to rim, joints and finish, fitted to the peaks of an instrument.`,
      {
        class: 'record',
        also: ['edge-loss', 'joint-loss'],
        ranges: [
          range('', 0.005, 0.02, 0.05, 'worked out from the other ranges', {
            note: 'what is left of 1/Q of measured main resonances after wood and sound',
          }),
        ],
      },
    ),
    plate.quantity(`${name}.mass`, 'g', `Mass of the bare ${name} cut to outline, as weighed.`, {
      where: ['build'],
      class: 'record',
      also: ['weight'],
      ranges: masses,
    }),
    plate.quantity(
      `${name}.thickness-spread`,
      'mm',
      `Difference between the thickest and the thinnest place where the ${name} was meant to be even.`,
      {
        where: ['build'],
        class: 'record',
        ranges: [range('mm', 0, 0.05, 0.15, 'common practice', { note: 'uncommanded spread across plate' })],
      },
    ),
    plate.quantity(`${name}.dome-height`, 'mm', `Rise of the ${name}’s dome across the lower bout, by straightedge.`, {
      where: ['build'],
      class: 'record',
      also: ['arch-height', 'rise'],
      ranges: [range('mm', 2.2, 2.4, 2.6, 'worked out from the other ranges', { note: 'sagitta over 400 mm' })],
    }),
  ];
}

const TOP_MASS: readonly PlausibleRange[] = [
  range('g', 130, 158, 190, 'worked out from the other ranges', { of: 'om', note: 'outline cut' }),
  range('g', 85, 110, 140, 'worked out from the other ranges', { of: 'parlor' }),
  range('g', 95, 122, 155, 'worked out from the other ranges', { of: 'classical' }),
];
const BACK_MASS: readonly PlausibleRange[] = [range('g', 150, 260, 380, 'worked out from area, thickness and density')];

export const PLATE_PROPERTIES: readonly Property[] = [
  ...platePropertiesOf('top', TOP_THICKNESS, TOP_MASS),
  plate.quantity('top.edge-difference', 'mm', 'Edge thickness less centre thickness of the top, as measured.', {
    where: ['build'],
    class: 'record',
    ranges: [range('mm', -0.8, -0.3, 0, 'common practice', { of: 'steel-string', note: 'lower bout perimeter' })],
  }),
  ...platePropertiesOf('back', BACK_THICKNESS, BACK_MASS),
];

export const PLATE_PARTS: readonly Part[] = [
  part('top', 'The plate that the bridge drives.', [
    'soundboard',
    'face',
    'front',
    'table',
    'decke',
    'tapa',
    'sound-board',
  ]),
  part('top.map', 'Thicknesses of the top at named points.', ['thickness-map', 'points']),
  part(
    'top.map.*',
    'One point of the top’s thickness map.',
    [],
    ['centre', 'bridge', 'edge-bass', 'edge-treble', 'tail', 'upper-bout'],
  ),
  part('back', 'The plate opposite the top.', ['back-plate', 'boden', 'fondo', 'fond']),
  part('back.map', 'Thicknesses of the back at named points.', ['thickness-map', 'points']),
  part(
    'back.map.*',
    'One point of the back’s thickness map.',
    [],
    ['centre', 'edge-bass', 'edge-treble', 'tail', 'upper-bout'],
  ),
];
