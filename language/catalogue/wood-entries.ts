/** A set, a board or a billet on the bench, and what was measured on it. */
import { modeWord, PLATE_MODES } from '../facts/plate-mode.js';
import { entries, part, range } from './entry.js';
import type { Part, PlausibleRange, Property } from './property.js';

const wood = entries({ where: ['wood'], class: 'record' });

export const WOOD_USES: readonly string[] = [
  'top',
  'back',
  'sides',
  'back-and-sides',
  'brace',
  'bridge',
  'bridge-plate',
  'neck',
  'fingerboard',
  'lining',
  'block',
  'binding',
  'veneer',
  'other',
];

const DENSITY: readonly PlausibleRange[] = [
  range('kg/m³', 300, 600, 1300, 'from memory, any wood used in guitars'),
  range('kg/m³', 300, 410, 550, 'mimf.com', { of: 'softwood', note: 'outside: check units or mass' }),
  range('kg/m³', 300, 370, 400, 'mimf.com', { of: 'classical softwood' }),
  range('kg/m³', 360, 425, 500, 'from memory', { of: 'sitka-spruce', note: 'at about 8-9 % MC' }),
  range('kg/m³', 320, 380, 460, 'josswinn.org; mimf.com (385 and outliers to 550 seen); from memory', {
    of: 'engelmann-spruce',
    note: 'at about 8-9 % MC',
  }),
  range('kg/m³', 370, 435, 510, 'from memory', { of: 'red-spruce', note: 'at about 8-9 % MC' }),
  range('kg/m³', 350, 415, 490, 'from memory', { of: 'norway-spruce', note: 'at about 8-9 % MC' }),
  range('kg/m³', 350, 405, 470, 'from memory', { of: 'lutz-spruce', note: 'at about 8-9 % MC' }),
  range('kg/m³', 300, 360, 430, 'josswinn.org (347 seen); from memory', {
    of: 'western-redcedar',
    note: 'at about 8-9 % MC',
  }),
  range('kg/m³', 330, 390, 460, 'from memory', { of: 'redwood', note: 'at about 8-9 % MC' }),
  range('kg/m³', 720, 830, 930, 'from memory', { of: 'indian-rosewood', note: 'at about 8-9 % MC' }),
  range('kg/m³', 750, 860, 980, 'from memory', { of: 'brazilian-rosewood', note: 'at about 8-9 % MC' }),
  range('kg/m³', 900, 1080, 1230, 'from memory', { of: 'cocobolo', note: 'at about 8-9 % MC' }),
  range('kg/m³', 430, 540, 650, 'from memory', { of: 'true-mahogany', note: 'at about 8-9 % MC' }),
  range('kg/m³', 560, 640, 740, 'from memory', { of: 'sapele', note: 'at about 8-9 % MC' }),
  range('kg/m³', 600, 690, 780, 'from memory', { of: 'sugar-maple', note: 'at about 8-9 % MC' }),
  range('kg/m³', 480, 560, 640, 'from memory', { of: 'bigleaf-maple', note: 'at about 8-9 % MC' }),
  range('kg/m³', 540, 610, 690, 'from memory', { of: 'black-walnut', note: 'at about 8-9 % MC' }),
  range('kg/m³', 500, 610, 740, 'from memory', { of: 'koa', note: 'at about 8-9 % MC' }),
  range('kg/m³', 920, 1040, 1200, 'from memory', { of: 'african-ebony', note: 'at about 8-9 % MC' }),
  range('kg/m³', 400, 480, 570, 'from memory', { of: 'spanish-cedar', note: 'at about 8-9 % MC' }),
];

const MODULUS_ALONG: readonly PlausibleRange[] = [
  range('GPa', 5, 11, 22, 'from memory, any wood used in guitars'),
  range('GPa', 8, 11.2, 15.5, 'tr.scribd.com; from memory for values', {
    of: 'sitka-spruce',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 7, 9.8, 13.5, 'tr.scribd.com; from memory for values', {
    of: 'engelmann-spruce',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 8.5, 11.8, 16, 'tr.scribd.com; from memory for values', {
    of: 'red-spruce',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 8, 11.5, 15.5, 'tr.scribd.com; from memory for values', {
    of: 'norway-spruce',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 6, 8.3, 11.5, 'tr.scribd.com; from memory for values', {
    of: 'western-redcedar',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 9, 12, 15.5, 'tr.scribd.com; from memory for values', {
    of: 'indian-rosewood',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 8, 10.2, 12.5, 'tr.scribd.com; from memory for values', {
    of: 'true-mahogany',
    note: 'properties within a species can differ by a factor of two',
  }),
  range('GPa', 9.5, 12, 14.5, 'tr.scribd.com; from memory for values', {
    of: 'sugar-maple',
    note: 'properties within a species can differ by a factor of two',
  }),
];

export const WOOD_PROPERTIES: readonly Property[] = [
  wood.choice('use', WOOD_USES, 'What the wood is meant for.', { also: ['for', 'part'] }),
  wood.size('blank', 'mm', 'Length along the grain, width and thickness of the piece that was weighed and tapped.', {
    also: ['size', 'dimensions'],
    ranges: [
      range('mm', 100, 550, 1100, 'common practice', { of: 'length' }),
      range('mm', 15, 210, 450, 'common practice', { of: 'width' }),
      range('mm', 3.5, 4.2, 5, 'lmii.com', { of: 'thickness', note: 'as bought' }),
    ],
  }),
  wood.quantity('mass', 'g', 'Mass of the blank.', {
    also: ['weight'],
    ranges: [range('g', 5, 220, 6000, 'from memory')],
  }),
  wood.quantity('density', 'kg/m³', 'Density, where it is known without weighing the blank.', { ranges: DENSITY }),
  wood.count('pieces', 'How many pieces were weighed together.', { ranges: [range('', 1, 1, 12, 'common practice')] }),

  wood.quantity('tap.along', 'Hz', 'Tap tone of the free blank bending along the grain.', {
    also: ['long', 'lengthwise'],
    ranges: [range('Hz', 58, 69, 82, 'worked out from the other ranges', { note: 'E 8-14 GPa' })],
  }),
  wood.quantity('tap.across', 'Hz', 'Tap tone of the free blank bending across the grain.', {
    also: ['cross', 'crosswise'],
    ranges: [range('Hz', 85, 126, 165, 'worked out from the other ranges')],
  }),
  wood.quantity('tap.twist', 'Hz', 'Tap tone of the free blank twisting.', {
    also: ['torsion'],
    ranges: [range('Hz', 40, 52, 64, 'worked out from the other ranges')],
  }),
  ...PLATE_MODES.map((mode) => ({ word: modeWord(mode), ...mode }))
    .filter(({ word }) => word.startsWith('mode-'))
    .map(({ word, linesAlong, linesAcross }) =>
      wood.quantity(
        `tap.${word}`,
        'Hz',
        `Tap tone of the free blank with nodal lines (${linesAlong},${linesAcross}): ${linesAlong} along the grain, ${linesAcross} across it.`,
      ),
    ),
  wood.quantity('modulus.along', 'GPa', 'Young’s modulus along the grain, where it was measured some other way.', {
    also: ['e-long', 'long'],
    ranges: MODULUS_ALONG,
  }),
  wood.quantity('modulus.across', 'GPa', 'Young’s modulus across the grain, in the plane of the plate.', {
    also: ['e-cross', 'cross'],
    ranges: [
      range('GPa', 0.25, 0.9, 3, 'from memory, any wood used in guitars'),
      range('GPa', 0.35, 0.8, 1.3, 'from memory', { of: 'spruce' }),
      range('GPa', 0.35, 0.6, 0.95, 'from memory', { of: 'cedar' }),
      range('GPa', 1.1, 1.8, 2.6, 'from memory', { of: 'rosewood' }),
    ],
  }),
  wood.quantity('modulus.twist', 'GPa', 'Shear modulus in the plane of the plate.', {
    also: ['shear', 'g'],
    ranges: [
      range('GPa', 0.3, 0.8, 2.2, 'from memory, any wood used in guitars'),
      range('GPa', 0.45, 0.75, 1.1, 'from memory', { of: 'spruce' }),
    ],
  }),
  wood.ratio('stiffness-ratio', '', 'Modulus along the grain over modulus across it.', {
    ranges: [range('', 5, 13, 25, 'ukuleles.com; from memory for upper', { of: 'top', note: '5-20 stated' })],
  }),
  wood.ratio('loss.along', '', 'Loss tangent along the grain.', {
    ranges: [range('', 0.005, 0.008, 0.014, 'from memory', { of: 'softwood' })],
  }),
  wood.ratio('loss.across', '', 'Loss tangent across the grain.', {
    ranges: [range('', 0.012, 0.02, 0.035, 'from memory')],
  }),
  wood.ratio('loss.twist', '', 'Loss tangent in twist.', {
    ranges: [range('', 0.01, 0.018, 0.03, 'from memory')],
  }),
  wood.ratio('q.along', '', 'Quality factor of the tap tone along the grain.', {
    ranges: [range('', 70, 120, 190, 'from memory', { of: 'softwood' })],
  }),
  wood.ratio('q.across', '', 'Quality factor of the tap tone across the grain.', {
    ranges: [range('', 28, 50, 85, 'from memory', { of: 'softwood' })],
  }),
  wood.ratio('q.twist', '', 'Quality factor of the twisting tap tone.', {
    ranges: [range('', 33, 55, 100, 'from memory', { of: 'softwood' })],
  }),
  wood.quantity('deflection.along', 'mm', 'Sag along the grain in the rig named.', {
    also: ['long'],
    ranges: [
      range('mm', 5, 7.2, 10, 'worked out from the other ranges', { note: 'shop-specific; rig must be recorded' }),
      range('mm', 6, 7.1, 8.5, 'lint.org', { of: 'size-00' }),
    ],
  }),
  wood.quantity('deflection.across', 'mm', 'Sag across the grain in the rig named.', {
    also: ['cross'],
    ranges: [range('mm', 8, 9.5, 11, 'erikshjoerne.blogspot.com', { of: 'classical' })],
  }),
  wood.name('deflection.rig', 'rig', 'The rig the sag was measured in.', { also: ['in'] }),
  wood.quantity('deflection.thickness', 'mm', 'Thickness of the plate when the sag was measured.', {
    ranges: [range('mm', 2, 3.5, 6, 'common practice')],
  }),

  wood.quantity('humidity', '%RH', 'Relative humidity when the wood was measured.', {
    also: ['rh'],
    ranges: [range('%RH', 25, 45, 65, 'common practice')],
  }),
  wood.quantity('temperature', '°C', 'Temperature when the wood was measured.', {
    ranges: [range('°C', 16, 21, 25, 'common practice')],
  }),
  wood.quantity('moisture', '%MC', 'Moisture content when the wood was measured.', {
    also: ['mc', 'moisture-content'],
    ranges: [
      range('%MC', 6, 8.3, 9.5, 'customguitars.com; USDA Wood Handbook, Table 4-2', {
        note: '6-8 by one maker; 45 %RH at 21 C = 8.5 at equilibrium',
      }),
    ],
  }),
  wood.text('hygrometer', 'The hygrometer the humidity was read on.'),
  wood.date('measured', 'When the wood was measured.', { also: ['date'] }),

  wood.choice('cut', ['quartersawn', 'riftsawn', 'flatsawn', 'split', 'mixed'], 'How the board lies in the log.', {
    also: ['sawn', 'sawing'],
  }),
  wood.quantity('runout', 'deg', 'How far the fibres leave the surface along the grain.', {
    also: ['run-out', 'slope-of-grain'],
    ranges: [
      range('deg', 0.286, 1.432, 2.862, 'luthiersforum.com; from memory for bounds', {
        of: 'top',
        note: '1 in 200 to 1 in 20; goal 1:28 or straighter; warn below 20',
      }),
    ],
  }),
  wood.quantity('ring-angle', 'deg', 'How far the growth rings stand from upright to the surface.', {
    also: ['off-quarter'],
    ranges: [range('deg', 0, 2, 10, 'luthiersforum.com', { of: 'top', note: 'within 5 wanted, within 2 top grade' })],
  }),
  wood.quantity('ring-spacing', 'mm', 'Distance from one growth ring to the next.', {
    also: ['grain-spacing', 'grain-lines'],
    ranges: [
      range('mm', 0.833, 1.667, 4, 'common practice', {
        of: 'top',
        note: '2.5 to 12 lines a centimetre; cosmetic mainly',
      }),
    ],
  }),
  wood.text('silk', 'How much of the medullary rays shows.'),
  wood.text('figure', 'Curl, flame, quilt, bearclaw.', { also: ['bearclaw'] }),
  wood.text('colour', 'Colour of the wood.', { also: ['color'] }),
  wood.text('defects', 'Knots, pitch, checks, repairs.', { also: ['flaws'] }),
  wood.text('grade', 'The grade it was sold as.'),
  wood.choice(
    'treatment',
    ['none', 'heat-treated', 'fumed', 'stabilised', 'sinker', 'salvaged'],
    'What was done to the wood before it came here.',
    { also: ['torrefied'] },
  ),

  wood.text('supplier', 'Who it was bought from.', { also: ['source', 'from'] }),
  wood.text('log', 'The log, flitch or billet it was cut from.', { also: ['flitch', 'billet'] }),
  wood.text('set-number', 'The supplier’s number for the set.', { also: ['number'] }),
  wood.date('bought', 'When it was bought.', { also: ['acquired', 'purchased'] }),
  wood.count('felled', 'The year the tree was felled.', {
    also: ['year-cut', 'cut-in'],
    ranges: [range('', 1900, 2015, 2100, 'common practice')],
  }),
  wood.quantity('seasoned', 'days', 'How long it has lain in the shop.', {
    also: ['seasoning'],
    ranges: [
      range('days', 14, 56, 3640, 'genone-luthier-supply.com; common practice', {
        note: 'several weeks of acclimatising; years preferred',
      }),
    ],
  }),
  wood.text('country', 'The country the tree grew in, as border papers ask.', {
    also: ['origin', 'country-of-harvest'],
  }),
  wood.text('papers', 'Permits, certificates and invoices that go with it.', {
    also: ['permit', 'documents', 'certificate'],
  }),
  wood.text('latin', 'Botanical name, where it differs from the species library.'),
  wood.text('shelf', 'Where it lies.', { also: ['location', 'place'] }),
];

export const WOOD_PARTS: readonly Part[] = [
  part('tap', 'Tap tones of the free blank.', ['taps', 'tap-tones', 'free-plate']),
  part('modulus', 'Moduli measured some other way.', ['moduli', 'stiffness']),
  part('loss', 'How quickly a tap tone dies.', ['damping']),
  part('q', 'How sharp a tap tone is.', ['quality']),
  part('deflection', 'Sag under a load, with the rig it was read in.', ['sag', 'plank-deflection']),
];
