/** What a shop says once: its climate, its tolerances, its hygrometers. */
import { entries, part, range } from './entry.js';
import type { Part, Property } from './property.js';

const shop = entries({ where: ['shop'], class: 'record' });

export const SHOP_PROPERTIES: readonly Property[] = [
  shop.text('maker', 'Who works here.', { also: ['luthier', 'owner'] }),
  shop.text('place', 'Where the shop is, for the sheets.', { also: ['town', 'address'] }),
  shop.choice(
    'units',
    ['metric', 'inch'],
    'The system sizes are printed in on sheets; recipes may be written in either.',
    { also: ['system'] },
  ),
  shop.quantity('climate.humidity', '%RH', 'Relative humidity the shop is kept at.', {
    also: ['rh', 'relative-humidity'],
    ranges: [
      range(
        '%RH',
        40,
        45,
        50,
        'genone-luthier-supply.com; vorreiterguitars.com; kitguitarsforum.com; larryeubanks.blogspot.com',
        { note: 'regional targets 30-35 (dry prairie) to 58 (Netherlands) exist; make it a shop setting' },
      ),
    ],
  }),
  shop.quantity('climate.temperature', '°C', 'Temperature the shop is kept at.', {
    ranges: [range('°C', 16, 21, 25, 'common practice')],
  }),
  shop.quantity('climate.moisture', '%MC', 'Moisture content wood has when it is put together here.', {
    also: ['mc', 'moisture-content'],
    ranges: [
      range('%MC', 6, 8.3, 9.5, 'customguitars.com; USDA Wood Handbook, Table 4-2', {
        note: '6-8 by one maker; 45 %RH at 21 C = 8.5 at equilibrium',
      }),
    ],
  }),
  shop.quantity('climate.glue-above', '%RH', 'Below this humidity no plate is braced and no box is closed.', {
    ranges: [range('%RH', 35, 40, 50, 'larryeubanks.blogspot.com (one builder: 40 to 60)')],
  }),
  shop.quantity('climate.glue-below', '%RH', 'Above this humidity no plate is braced and no box is closed.', {
    ranges: [
      range('%RH', 40, 45, 60, 'larryeubanks.blogspot.com', { note: 'outside 40-60 one builder will not glue braces' }),
    ],
  }),
  shop.quantity('tolerance.thickness', 'mm', 'How closely a plate’s thickness is made and measured.', {
    ranges: [range('mm', 0.02, 0.05, 0.2, 'common practice')],
  }),
  shop.quantity('tolerance.height', 'mm', 'How closely a brace’s height is carved.', {
    ranges: [range('mm', 0.05, 0.2, 0.5, 'common practice')],
  }),
  shop.quantity('tolerance.width', 'mm', 'How closely a brace’s width is made.', {
    ranges: [range('mm', 0.05, 0.2, 0.5, 'common practice')],
  }),
  shop.quantity('tolerance.length', 'mm', 'How closely lengths of the box and its parts are made.', {
    ranges: [range('mm', 0.1, 0.5, 2, 'common practice')],
  }),
  shop.quantity('tolerance.position', 'mm', 'How closely a part is put in its place.', {
    ranges: [range('mm', 0.1, 0.5, 2, 'common practice')],
  }),
  shop.quantity('tolerance.mass', 'g', 'How closely a part is weighed.', {
    ranges: [range('g', 0.1, 1, 5, 'common practice')],
  }),
  shop.quantity('tolerance.frequency', 'Hz', 'How closely a resonance is read.', {
    ranges: [range('Hz', 0.3, 0.7, 1.5, 'from memory')],
  }),
  shop.ratio('tolerance.deflection', '%', 'How closely a deflection repeats.', {
    ranges: [range('%', 0.5, 1.5, 3, 'from memory')],
  }),
  shop.ratio('tolerance.density', '%', 'How closely a density repeats.', {
    ranges: [range('%', 0.5, 1.5, 3, 'worked out from the other ranges', { note: 'thickness error dominates' })],
  }),
  shop.ratio('tolerance.effective-mass', '%', 'How closely an effective mass from an added-mass test repeats.', {
    ranges: [range('%', 3, 6, 12, 'worked out from the other ranges', { note: '20 g added mass, 0.5-1 Hz error' })],
  }),
  shop.quantity('tolerance.humidity', '%RH', 'How closely the shop’s hygrometer can be believed.', {
    ranges: [range('%RH', 0, 5, 12, 'ganzguitars.com', { note: 'three read 45/33/38 together' })],
  }),
  shop.quantity('tolerance.action', 'mm', 'How closely string heights are set.', {
    ranges: [range('mm', 0.05, 0.1, 0.25, 'common practice')],
  }),
  shop.quantity('tolerance.rotation', 'deg', 'How closely the bridge’s rotation is read.', {
    ranges: [range('deg', 0.05, 0.1, 0.3, 'common practice')],
  }),
  shop.ratio(
    'scatter.frequency',
    '%',
    'Difference to expect between two instruments built alike, until replicates show it.',
    {
      also: ['noise'],
      ranges: [
        range('%', 0.8, 1.5, 2.5, 'from memory', { note: 'between intended twins' }),
        range('%', 2, 2.23, 3.5, 'scribd.com', { of: 'factory', note: 'first mode, one standard deviation' }),
      ],
    },
  ),
  shop.quantity(
    'hygrometer.*.reads-high',
    '%RH',
    'How much this hygrometer reads above the truth; below it, with a minus.',
    {
      also: ['error', 'offset'],
      ranges: [range('%RH', 0, 5, 12, 'ganzguitars.com', { note: 'three read 45/33/38 together' })],
    },
  ),
  shop.quantity(
    'hygrometer.*.uncertainty',
    '%RH',
    'How closely this hygrometer can be believed after its error is taken off.',
    { ranges: [range('%RH', 0.5, 2, 12, 'from memory')] },
  ),
  shop.date('hygrometer.*.checked', 'When this hygrometer was last checked.', { also: ['calibrated'] }),
  shop.list(
    'sensitised',
    '',
    'Woods or materials someone in this shop no longer tolerates; the tool warns when a recipe calls for one.',
    { also: ['sensitized', 'allergies'] },
  ),
];

export const SHOP_PARTS: readonly Part[] = [
  part('climate', 'The air the shop is kept at.', ['air']),
  part('tolerance', 'How closely this shop makes and measures things.', ['tolerances', 'accuracy']),
  part('scatter', 'How much instruments built alike differ.', ['noise-floor']),
  part('hygrometer', 'The shop’s hygrometers, one by one.', ['hygrometers']),
  part('hygrometer.*', 'One hygrometer, under a name the maker chooses.', [], ['bench', 'a', 'b']),
];
