/** Bridge, bridge plate, pins and saddle. */
import { entries, INSTRUMENT, OPTIONAL, part, range } from './entry.js';
import { BRACE_PLACE_FREEZE, BRIDGE_FREEZE, BRIDGE_SIZE_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const bridge = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRIDGE_SIZE_FREEZE });
const plate = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRACE_PLACE_FREEZE });
const fitted = entries({ where: OPTIONAL, class: 'setup' });

export const BRIDGE_PROPERTIES: readonly Property[] = [
  bridge.name('bridge.wood', 'wood', 'The wood of the bridge.', { freeze: BRIDGE_FREEZE, also: ['species', 'timber'] }),
  bridge.choice(
    'bridge.kind',
    ['pin', 'pinless', 'tie-block'],
    'How the strings are held: by pins, through slots, or tied.',
    {
      freeze: BRIDGE_FREEZE,
      also: ['type'],
    },
  ),
  bridge.choice(
    'bridge.shape',
    ['belly', 'pyramid', 'rectangular', 'winged', 'other'],
    'Outline of the bridge in the trade’s words.',
    {
      class: 'record',
      also: ['style'],
    },
  ),
  bridge.quantity('bridge.length', 'mm', 'Length of the bridge across the guitar.', {
    ranges: [
      range('mm', 140, 153, 165, 'from memory', { of: 'steel-string' }),
      range('mm', 175, 190, 200, 'from memory', { of: 'classical' }),
    ],
  }),
  bridge.quantity('bridge.width', 'mm', 'Width of the bridge along the centre line.', {
    also: ['depth'],
    ranges: [
      range('mm', 25, 37, 42, 'from memory', { of: 'steel-string', note: '25 pyramid, 38 belly' }),
      range('mm', 25, 28, 31, 'from memory', { of: 'classical' }),
    ],
  }),
  bridge.quantity('bridge.height', 'mm', 'Thickness of the bridge at the saddle.', {
    also: ['thickness'],
    ranges: [
      range('mm', 7, 9.2, 11, 'from memory', { of: 'steel-string' }),
      range('mm', 6.5, 8, 10, 'from memory', { of: 'classical' }),
    ],
  }),
  bridge.quantity('bridge.wing-height', 'mm', 'Thickness of the bridge’s wings.', {
    also: ['wing-thickness', 'wings'],
    ranges: [range('mm', 2.5, 3.5, 5, 'from memory')],
  }),
  bridge.quantity('bridge.wing-length', 'mm', 'Length of one wing, from the end of the bridge to its full height.', {
    ranges: [range('mm', 15, 40, 60, 'from memory')],
  }),
  bridge.quantity('bridge.mass', 'g', 'Mass of the bare bridge, without saddle and pins.', {
    also: ['weight'],
    ranges: [
      range('g', 18, 26, 33, 'lint.org (ratio); from memory', {
        of: 'steel-string indian-rosewood',
        note: 'about 60 % of ebony for same size by one weighing',
      }),
      range('g', 24, 34, 44, 'from memory', { of: 'steel-string african-ebony' }),
      range('g', 18, 29, 44, 'from memory, over rosewood and ebony', { of: 'steel-string' }),
      range('g', 13, 19, 24, 'josswinn.org; cfmorrisonguitars.com; guitarrasfdc.com; topicsexpress.com', {
        of: 'classical',
        note: '13 walnut, 14 sapele, 19, under 20, target 20',
      }),
    ],
  }),
  bridge.quantity(
    'bridge.station',
    'mm',
    'Distance from the tail to the middle of the saddle; worked out from the scale where it is not given.',
    {
      freeze: { costly: 'finish' },
      also: ['position'],
      ranges: [
        range('mm', 130, 185, 230, 'worked out from the other ranges', {
          note: 'twelve-fret to long fourteen-fret bodies',
        }),
      ],
    },
  ),
  bridge.quantity('bridge.offset', 'mm', 'Distance of the bridge’s middle from the centre line, bass side negative.', {
    freeze: { costly: 'finish' },
    ranges: [range('mm', -0.8, 0, 0.8, 'common practice', { note: 'centre line of strings to centre of bridge' })],
  }),
  bridge.quantity(
    'bridge.saddle-distance',
    'mm',
    'Distance from the front edge of the bridge to the middle of the saddle.',
    {
      freeze: BRIDGE_FREEZE,
      ranges: [range('mm', 4, 10, 18, 'from memory')],
    },
  ),
  bridge.quantity('bridge.tie-height', 'mm', 'Height of the string holes of a tie block above the top.', {
    freeze: BRIDGE_FREEZE,
    ranges: [range('mm', 3, 4.5, 6.5, 'from memory')],
  }),
  bridge.quantity(
    'bridge.tie-distance',
    'mm',
    'Distance from the saddle to where the string leaves a tie block or a pinless bridge.',
    {
      freeze: BRIDGE_FREEZE,
      ranges: [range('mm', 5, 9, 15, 'from memory')],
    },
  ),
  bridge.text('bridge.glue', 'The glue the bridge is put on with.', { class: 'record', freeze: BRIDGE_FREEZE }),

  plate.name('bridge.plate.wood', 'wood', 'The wood of the bridge plate.'),
  plate.quantity('bridge.plate.length', 'mm', 'Length of the bridge plate across the guitar.', {
    ranges: [range('mm', 70, 120, 190, 'from memory')],
  }),
  plate.quantity('bridge.plate.width', 'mm', 'Width of the bridge plate along the centre line.', {
    ranges: [
      range('mm', 28, 38, 65, 'ronnienichols.com; from memory', {
        note: 'along string direction; large ones historical',
      }),
    ],
  }),
  plate.quantity('bridge.plate.thickness', 'mm', 'Thickness of the bridge plate.', {
    also: ['height'],
    ranges: [
      range('mm', 1.5, 2.4, 3.3, 'driftwoodguitars.blogspot.com; ronnienichols.com', {
        note: '2.3 and 2.5 seen; 4.8 plywood judged sound-killing',
      }),
    ],
  }),
  plate.quantity('bridge.plate.mass', 'g', 'Mass of the bridge plate.', {
    ranges: [range('g', 5, 9, 18, 'from memory')],
  }),
  plate.quantity(
    'bridge.plate.station',
    'mm',
    'Distance from the tail to the middle of the bridge plate; under the bridge’s middle where it is not given.',
    {
      ranges: [range('mm', 120, 165, 210, 'from memory')],
    },
  ),
  plate.quantity('bridge.plate.grain-angle', 'deg', 'Angle between the plate’s grain and the line across the guitar.', {
    ranges: [range('deg', -45, 0, 45, 'common practice')],
  }),

  fitted.text('bridge.pins.material', 'What the bridge pins are made of.', { class: 'appointment' }),
  fitted.quantity('bridge.pins.mass', 'g', 'Mass of the set of bridge pins.', {
    ranges: [range('g', 1.5, 4, 25, 'from memory', { note: 'plastic 2, wood 3-4, bone 6-8, brass 20+' })],
  }),
  fitted.count('bridge.pins.count', 'How many pins there are.', { ranges: [range('', 0, 6, 12, 'common practice')] }),
  fitted.quantity(
    'bridge.pins.distance',
    'mm',
    'Distance from the saddle to the middle of the pin holes, as the string runs.',
    {
      freeze: BRIDGE_FREEZE,
      ranges: [range('mm', 8, 13, 25, 'from memory')],
    },
  ),

  fitted.text('saddle.material', 'What the saddle is made of.', { class: 'option' }),
  fitted.quantity('saddle.thickness', 'mm', 'Thickness of the saddle along the string.', {
    also: ['width'],
    ranges: [range('mm', 2.2, 3, 6.4, 'common practice', { note: 'wide saddles for compensation' })],
  }),
  fitted.quantity('saddle.length', 'mm', 'Length of the saddle across the guitar.', {
    ranges: [range('mm', 65, 76, 90, 'from memory')],
  }),
  fitted.quantity('saddle.mass', 'g', 'Mass of the saddle.', { ranges: [range('g', 1.5, 3, 6, 'from memory')] }),
  fitted.quantity('saddle.protrusion', 'mm', 'How far the saddle stands out of the bridge.', {
    also: ['height', 'showing'],
    ranges: [range('mm', 1.5, 3.3, 5.5, 'from memory', { note: 'warn below 1.5: contact, above 5.5: leaning' })],
  }),
  fitted.quantity('saddle.radius', 'mm', 'Radius of the saddle’s crown across the strings.', {
    words: ['flat'],
    ranges: [range('mm', 250, 406, 9999, 'follows the fingerboard; common practice')],
  }),
  fitted.quantity('saddle.angle', 'deg', 'Slant of the saddle across the guitar, for compensation.', {
    ranges: [range('deg', 0, 2, 5, 'from memory')],
  }),
  fitted.quantity('saddle.tilt', 'deg', 'How far the saddle leans back from upright.', {
    ranges: [range('deg', 0, 0, 12, 'from memory')],
  }),
  fitted.choice(
    'saddle.slot',
    ['closed', 'through'],
    'Whether the saddle’s slot is closed or runs through to the wings.',
    { class: 'option' },
  ),
  fitted.quantity('saddle.string-spread', 'mm', 'Distance between the centres of the outer strings at the saddle.', {
    class: 'option',
    freeze: BRIDGE_FREEZE,
    also: ['string-spacing', 'spacing', 'spread'],
    ranges: [
      range('mm', 52, 57, 60, 'lonewolfguitars.com; soundpure.com', {
        of: 'steel-string',
        note: '2-1/8 in = 54.0, 2-1/4 = 57.2, 2-5/16 = 58.7',
      }),
      range('mm', 56, 58, 61, 'classicalguitars.ca', { of: 'classical' }),
    ],
  }),
];

export const BRIDGE_PARTS: readonly Part[] = [
  part('bridge', 'The bar on the top that takes the strings’ pull.', ['steg', 'chevalet', 'puente']),
  part('bridge.plate', 'The plate under the top that carries the bridge.', [
    'bridge-plate',
    'patch',
    'bridge-patch',
    'pad',
    'reinforcement',
  ]),
  part('bridge.pins', 'The pins that hold the strings in the bridge.', ['pin', 'pegs', 'bridge-pins']),
  part('saddle', 'The bone the strings bear on at the bridge.', ['bridge-saddle', 'stegeinlage', 'selleta']),
];
