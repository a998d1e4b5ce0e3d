/** Sides, linings, blocks and what joins them. */
import { entries, INSTRUMENT, OPTIONAL, part, range } from './entry.js';
import { BINDING_FREEZE, RIM_FREEZE, SET_FREEZE } from './freeze.js';
import { SIDE_THICKNESS } from './plate-ranges.js';
import type { Part, Property } from './property.js';

const rim = entries({ where: INSTRUMENT, class: 'body', freeze: RIM_FREEZE });
const record = entries({ where: ['build'], class: 'record' });

function liningPropertiesOf(name: string, plate: string): readonly Property[] {
  return [
    rim.choice(
      `${name}.kind`,
      ['kerfed', 'reverse-kerfed', 'solid', 'laminated', 'single-blocks'],
      `How the lining under the ${plate} is made.`,
      { also: ['type', 'style'] },
    ),
    rim.name(`${name}.wood`, 'wood', `The wood of the lining under the ${plate}.`),
    rim.quantity(`${name}.width`, 'mm', `Width of the lining at the glue face to the ${plate}.`, {
      also: ['thickness'],
      ranges: [range('mm', 4.5, 6.5, 9, 'common practice')],
    }),
    rim.quantity(`${name}.height`, 'mm', 'Height of the lining down the side.', {
      ranges: [range('mm', 11, 16, 20, 'common practice')],
    }),
  ];
}

export const RIM_PROPERTIES: readonly Property[] = [
  rim.name('sides.wood', 'wood', 'The set of wood the sides are bent from.', {
    freeze: SET_FREEZE,
    also: ['set', 'species', 'timber'],
  }),
  rim.quantity('sides.thickness', 'mm', 'Finished thickness of the sides.', {
    also: ['thick'],
    freeze: { costly: 'thicknessing', impossible: 'rim' },
    ranges: SIDE_THICKNESS,
  }),
  rim.count('sides.layers', 'How many layers the sides are laminated from; 1 is solid.', {
    ranges: [range('', 1, 1, 4, 'common practice')],
  }),
  rim.name('sides.inner-wood', 'wood', 'The wood of the inner layer of laminated sides.'),
  rim.choice(
    'sides.bending',
    ['hot-iron', 'bending-machine', 'form-and-blanket', 'laminated-in-form'],
    'How the sides are brought to shape.',
    { class: 'record' },
  ),
  rim.quantity('sides.bending-temperature', '°C', 'Temperature the sides are bent at.', {
    class: 'record',
    ranges: [range('°C', 110, 150, 200, 'from memory')],
  }),
  rim.quantity('side-bracing.*.station', 'mm', 'Distance from the tail, along the centre line, to the side brace.'),
  rim.choice('side-bracing.*.side', ['bass', 'treble', 'both'], 'The side the brace stands on.'),
  rim.name('side-bracing.*.wood', 'wood', 'The wood of the side brace.'),
  rim.quantity('side-bracing.*.width', 'mm', 'Width of the side brace along the rim.', {
    ranges: [range('mm', 4, 9, 20, 'from memory')],
  }),
  rim.quantity('side-bracing.*.thickness', 'mm', 'Thickness of the side brace.', {
    also: ['height'],
    ranges: [range('mm', 1.2, 2.2, 4, 'common practice')],
  }),
  rim.choice('side-bracing.*.material', ['wood', 'cloth', 'carbon'], 'What the side brace is made of.'),
  rim.count('side-bracing.count', 'How many side braces there are, where they are not named one by one.', {
    ranges: [range('', 0, 10, 24, 'common practice')],
  }),
  ...liningPropertiesOf('lining', 'top'),
  ...liningPropertiesOf('back-lining', 'back'),
  rim.name('neck-block.wood', 'wood', 'The wood of the block the neck is joined to.'),
  rim.quantity('neck-block.length', 'mm', 'Length of the neck block along the centre line, with any foot.', {
    ranges: [range('mm', 45, 55, 75, 'common practice')],
  }),
  rim.quantity('neck-block.width', 'mm', 'Width of the neck block across the guitar.', {
    ranges: [range('mm', 60, 75, 100, 'common practice')],
  }),
  rim.quantity('neck-block.mass', 'g', 'Mass of the neck block.', {
    ranges: [range('g', 40, 110, 220, 'worked out from size and density')],
  }),
  rim.choice('neck-block.kind', ['block', 'l-shaped', 'laminated', 'spanish-foot'], 'The build of the neck block.', {
    also: ['style'],
  }),
  rim.name('tail-block.wood', 'wood', 'The wood of the block at the tail.'),
  rim.quantity('tail-block.thickness', 'mm', 'Thickness of the tail block along the centre line.', {
    also: ['length'],
    ranges: [range('mm', 12, 19, 28, 'common practice')],
  }),
  rim.quantity('tail-block.width', 'mm', 'Width of the tail block across the guitar.', {
    ranges: [range('mm', 55, 70, 90, 'common practice')],
  }),
  rim.quantity('tail-block.mass', 'g', 'Mass of the tail block.', {
    ranges: [range('g', 25, 65, 150, 'worked out from size and density')],
  }),
  rim.quantity('rim.added-mass', 'g', 'Mass fixed to the rim on purpose, to hold it still.', {
    class: 'voicing',
    freeze: { costly: 'closing' },
    ranges: [range('g', 0, 60, 400, 'from memory')],
  }),
  record.quantity('rim.profile-error', 'mm', 'Greatest gap between the rim and its dome before closing.', {
    ranges: [range('mm', 0, 0.15, 0.5, 'common practice')],
  }),
  rim.name('end-graft.wood', 'wood', 'The wood of the wedge that covers the joint of the sides at the tail.', {
    where: OPTIONAL,
    class: 'appointment',
    freeze: BINDING_FREEZE,
  }),
  rim.quantity('end-graft.width', 'mm', 'Width of the end graft at the tail.', {
    where: OPTIONAL,
    class: 'appointment',
    freeze: BINDING_FREEZE,
    ranges: [range('mm', 8, 18, 40, 'from memory')],
  }),
];

export const RIM_PARTS: readonly Part[] = [
  part('sides', 'The bent walls of the box.', ['ribs', 'side', 'zargen', 'eclisses', 'aros']),
  part('side-bracing', 'Strips that stiffen the sides and stop cracks.', [
    'side-braces',
    'side-fillets',
    'side-strips',
    'side-tapes',
  ]),
  part(
    'side-bracing.*',
    'One side brace, under a name the maker chooses.',
    [],
    ['waist-bass', 'waist-treble', 'lower-bass', 'lower-treble'],
  ),
  part('lining', 'The strip that widens the side’s edge for the top’s glue joint.', [
    'kerfing',
    'linings',
    'kerfed-lining',
    'top-lining',
    'tentellones',
    'peones',
  ]),
  part('back-lining', 'The strip that widens the side’s edge for the back’s glue joint.', [
    'back-kerfing',
    'back-linings',
  ]),
  part('neck-block', 'The block inside that carries the neck.', [
    'head-block',
    'heel-block',
    'top-block',
    'upper-block',
  ]),
  part('tail-block', 'The block inside at the tail.', ['end-block', 'bottom-block', 'lower-block']),
  part('rim', 'Sides, linings and blocks together.', ['rims', 'garland', 'rim-assembly', 'zargenkranz']),
  part('end-graft', 'The wedge that covers the joint of the sides at the tail.', [
    'tail-wedge',
    'end-wedge',
    'tail-strip',
    'tail-graft',
  ]),
];
