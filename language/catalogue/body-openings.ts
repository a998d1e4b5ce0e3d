/** What is cut into the box or off it: soundhole, cutaway, ports, bevels. */
import { entries, INSTRUMENT, OPTIONAL, part, range } from './entry.js';
import {
  BEVEL_FREEZE,
  BRACE_PLACE_FREEZE,
  CUTAWAY_FREEZE,
  HOLE_FREEZE,
  PORT_FREEZE,
  ROSETTE_FREEZE,
} from './freeze.js';
import type { Part, Property } from './property.js';

const hole = entries({ where: INSTRUMENT, class: 'voicing', freeze: HOLE_FREEZE });
const patch = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRACE_PLACE_FREEZE });
const cutaway = entries({ where: OPTIONAL, class: 'body', freeze: CUTAWAY_FREEZE });
const port = entries({ where: OPTIONAL, class: 'body', freeze: PORT_FREEZE });
const bevel = entries({ where: OPTIONAL, class: 'body', freeze: BEVEL_FREEZE });

export const BODY_OPENING_PROPERTIES: readonly Property[] = [
  hole.quantity('soundhole.diameter', 'mm', 'Diameter of a round soundhole.', {
    also: ['size'],
    ranges: [
      range('mm', 95, 101.5, 105, 'from memory', { of: 'steel-string', note: '4 in' }),
      range('mm', 106, 109, 115, 'from memory', { of: 'large-hole', note: 'deliberate large hole' }),
      range('mm', 82, 90, 98, 'from memory', { of: 'parlor' }),
      range('mm', 82, 85, 90, 'from memory', { of: 'classical' }),
    ],
  }),
  hole.quantity('soundhole.station', 'mm', 'Distance from the tail to the centre of the soundhole.', {
    freeze: ROSETTE_FREEZE,
    also: ['centre', 'center', 'position'],
    ranges: [range('mm', 290, 335, 370, 'from memory')],
  }),
  hole.quantity(
    'soundhole.offset',
    'mm',
    'Distance of the soundhole’s centre from the centre line, bass side negative.',
    {
      freeze: ROSETTE_FREEZE,
      ranges: [range('mm', -100, 0, 100, 'from memory')],
    },
  ),
  hole.choice('soundhole.shape', ['round', 'oval', 'd-shaped', 'other'], 'Shape of the soundhole.', {
    freeze: ROSETTE_FREEZE,
  }),
  hole.quantity('soundhole.width', 'mm', 'Width of a soundhole that is not round, across the guitar.', {
    ranges: [range('mm', 70, 100, 140, 'from memory')],
  }),
  hole.quantity('soundhole.length', 'mm', 'Length of a soundhole that is not round, along the centre line.', {
    ranges: [range('mm', 60, 90, 110, 'from memory')],
  }),
  hole.quantity(
    'soundhole.edge-thickness',
    'mm',
    'Thickness of the top at the rim of the hole, with any patch glued there.',
    {
      freeze: { costly: 'bracing' },
      ranges: [range('mm', 2, 3, 7, 'from memory')],
    },
  ),

  patch.name('soundhole.patch.wood', 'wood', 'The wood of the patch around the soundhole, inside.'),
  patch.quantity('soundhole.patch.width', 'mm', 'How far the patch reaches from the edge of the soundhole.', {
    ranges: [range('mm', 8, 20, 45, 'from memory')],
  }),
  patch.quantity('soundhole.patch.thickness', 'mm', 'Thickness of the patch around the soundhole.', {
    ranges: [range('mm', 0.8, 2, 3.5, 'from memory')],
  }),
  patch.quantity('soundhole.patch.grain-angle', 'deg', 'Angle between the patch’s grain and the centre line.', {
    ranges: [range('deg', -90, 0, 90, 'common practice')],
  }),

  cutaway.choice(
    'cutaway.kind',
    ['venetian', 'florentine', 'scooped', 'bevelled', 'none'],
    'Rounded (Venetian), pointed (Florentine), or only scooped.',
    {
      also: ['style', 'shape'],
    },
  ),
  cutaway.choice('cutaway.side', ['treble', 'bass', 'both'], 'The side that is cut away.'),
  cutaway.quantity(
    'cutaway.depth',
    'mm',
    'How far the outline is drawn in from where it would have been, across the guitar.',
    {
      also: ['width'],
      ranges: [range('mm', 25, 65, 110, 'from memory')],
    },
  ),
  cutaway.quantity('cutaway.station', 'mm', 'Distance from the tail to where the cut leaves the outline.', {
    also: ['start'],
    ranges: [range('mm', 330, 390, 440, 'from memory')],
  }),
  cutaway.quantity('cutaway.radius', 'mm', 'Smallest radius the side is bent to in the cut.', {
    ranges: [range('mm', 12, 35, 90, 'from memory')],
  }),
  cutaway.ratio('cutaway.volume-change', '%', 'How much air the cut takes from the box.', {
    where: ['build'],
    class: 'record',
    ranges: [range('%', -7, -4, -2, 'from memory')],
  }),

  port.quantity('port.area', 'cm²', 'Open area of the side port, or of all of them together.', {
    ranges: [
      range('cm²', 3, 12, 30, 'luth.org; alcarruthluthier.com; from memory for sizes', {
        note: 'single or several; raises main air',
      }),
    ],
  }),
  port.count('port.count', 'How many openings share the area.', { ranges: [range('', 1, 1, 12, 'from memory')] }),
  port.choice('port.side', ['bass', 'treble'], 'The side the port is cut in.'),
  port.quantity('port.station', 'mm', 'Distance from the tail to the centre of the port.', {
    ranges: [range('mm', 250, 400, 470, 'from memory')],
  }),
  port.quantity('port.height', 'mm', 'Distance of the port’s centre from the top’s edge, down the side.', {
    ranges: [range('mm', 25, 50, 80, 'from memory')],
  }),
  port.quantity('port.length', 'mm', 'Length of the passage through the side, with its lining.', {
    ranges: [range('mm', 2, 4, 12, 'from memory')],
  }),
  port.text('port.shape', 'Shape of the opening in words.', { class: 'appointment' }),
  port.choice('port.cover', ['none', 'sliding', 'plug'], 'Whether the port can be closed.', { class: 'option' }),

  bevel.quantity('arm-bevel.depth', 'mm', 'How far the bevel reaches down the side.', {
    ranges: [range('mm', 8, 18, 30, 'from memory')],
  }),
  bevel.quantity('arm-bevel.width', 'mm', 'How far the bevel reaches into the top.', {
    ranges: [range('mm', 8, 25, 45, 'from memory')],
  }),
  bevel.quantity('arm-bevel.length', 'mm', 'Length of the bevel along the edge.', {
    ranges: [range('mm', 120, 220, 320, 'from memory')],
  }),
  bevel.quantity(
    'arm-bevel.mass',
    'g',
    'Mass the bevel’s block adds to the rim; worked out from its size where it was not weighed.',
    {
      ranges: [range('g', 15, 50, 120, 'from memory')],
    },
  ),
  bevel.name('arm-bevel.wood', 'wood', 'The wood of the bevel’s veneer or block.', { class: 'appointment' }),
  bevel.quantity('rib-bevel.depth', 'mm', 'How far a bevel on the back’s edge reaches down the side.', {
    ranges: [range('mm', 8, 15, 30, 'from memory')],
  }),
  bevel.quantity('rib-bevel.width', 'mm', 'How far a bevel on the back’s edge reaches into the back.', {
    ranges: [range('mm', 8, 20, 40, 'from memory')],
  }),
];

export const BODY_OPENING_PARTS: readonly Part[] = [
  part('soundhole', 'The hole in the top.', ['sound-hole', 'hole', 'mouth', 'boca', 'schallloch', 'schalloch']),
  part('soundhole.patch', 'The wood glued inside around the soundhole.', ['soundhole-patch', 'rosette-patch']),
  part('cutaway', 'A bay in the upper bout that opens the way to the high frets.', ['cut', 'cut-away']),
  part('port', 'An opening in the side that faces the player.', [
    'sound-port',
    'side-port',
    'soundport',
    'monitor-port',
  ]),
  part('arm-bevel', 'A bevelled edge under the playing arm.', ['bevel', 'armrest', 'arm-rest']),
  part('rib-bevel', 'A bevelled edge of the back against the ribs of the player.', ['rib-rest']),
];
