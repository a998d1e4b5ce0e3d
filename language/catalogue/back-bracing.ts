/** What is glued to the inside of the back. */
import { bracePartsOf, bracePropertiesOf } from './brace-members.js';
import { membersOf } from './brace-roles.js';
import { entries, INSTRUMENT, part, range } from './entry.js';
import { BRACE_PLACE_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const place = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRACE_PLACE_FREEZE });

export const BACK_BRACING_PROPERTIES: readonly Property[] = [
  place.choice(
    'back-bracing.pattern',
    ['ladder', 'x', 'radial', 'lattice', 'other'],
    'The lay-out of the back’s braces in the trade’s words.',
    {
      class: 'record',
      also: ['style', 'layout'],
    },
  ),
  place.name('back-bracing.wood', 'wood', 'The billet all back braces are made from, unless a brace names its own.', {
    also: ['billet', 'stock'],
  }),
  ...bracePropertiesOf('back-bracing', 'back', {
    width: [
      range('mm', 5.5, 8, 11, 'from memory', { of: 'back-upper' }),
      range('mm', 7, 19, 24, 'from memory', { of: 'back-lower' }),
    ],
    height: [
      range('mm', 10, 16, 21, 'from memory', { of: 'back-upper' }),
      range('mm', 6, 9.5, 16, 'from memory', { of: 'back-lower' }),
    ],
    endHeight: [range('mm', 0.5, 2.5, 5, 'from memory')],
    scallopHeight: [range('mm', 4, 7, 12, 'from memory')],
    peakHeight: [range('mm', 6, 10, 16, 'from memory')],
  }),
  place.name('back.reinforcement.wood', 'wood', 'The wood of the strip inside over the back’s centre joint.'),
  place.quantity('back.reinforcement.width', 'mm', 'Width of the strip inside over the back’s centre joint.', {
    ranges: [range('mm', 10, 14, 20, 'from memory')],
  }),
  place.quantity('back.reinforcement.thickness', 'mm', 'Thickness of the strip inside over the back’s centre joint.', {
    ranges: [range('mm', 1.5, 2.2, 3, 'from memory')],
  }),
];

export const BACK_BRACING_PARTS: readonly Part[] = [
  part('back-bracing', 'The braces glued to the back.', ['back-braces', 'back-struts', 'back-bars', 'back-strutting']),
  part('back-bracing.*', 'One brace of the back, under a name the maker chooses.', [], membersOf('back-bracing')),
  ...bracePartsOf('back-bracing'),
  part('back.reinforcement', 'The strip inside over the back’s centre joint.', [
    'graft',
    'back-graft',
    'centre-strip',
    'center-strip',
    'inner-strip',
  ]),
];
