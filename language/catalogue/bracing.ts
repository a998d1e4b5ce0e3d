/** What is glued under the top. */
import { bracePartsOf, bracePropertiesOf } from './brace-members.js';
import { membersOf } from './brace-roles.js';
import { entries, INSTRUMENT, part, range } from './entry.js';
import { BRACE_PLACE_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const place = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRACE_PLACE_FREEZE });
const reading = entries({ where: ['build'], class: 'record' });

export const BRACING_PROPERTIES: readonly Property[] = [
  place.choice(
    'bracing.pattern',
    ['x', 'double-x', 'a', 'ladder', 'fan', 'lattice', 'radial', 'other'],
    'The lay-out of the braces in the trade’s words.',
    {
      class: 'record',
      also: ['style', 'layout'],
    },
  ),
  place.name('bracing.wood', 'wood', 'The billet all braces are made from, unless a brace names its own.', {
    also: ['billet', 'stock'],
  }),
  place.text('bracing.glue', 'The glue the braces are put on with.', { class: 'record' }),
  ...bracePropertiesOf('bracing', 'top', {
    width: [
      range('mm', 5.5, 7.9, 9, 'stewmac.com (7.9); from memory', { of: 'x' }),
      range('mm', 4.5, 6, 7.5, 'lint.org; from memory', { of: 'x parlor' }),
      range('mm', 4.5, 6.4, 9, 'from memory', { of: 'tone-bar' }),
      range('mm', 4, 6.4, 9, 'from memory', { of: 'finger' }),
      range('mm', 8, 12, 16, 'from memory', { of: 'transverse' }),
      range('mm', 15, 25, 35, 'from memory', { of: 'popsicle' }),
      range('mm', 12, 20, 28, 'from memory', { of: 'soundhole' }),
      range('mm', 3, 5, 7, 'from memory', { of: 'fan' }),
      range('mm', 5, 7, 10, 'from memory', { of: 'transverse classical' }),
    ],
    height: [
      range('mm', 12, 16, 20, 'driftwoodguitars.blogspot.com (just under 20); from memory', { of: 'x' }),
      range('mm', 10, 13, 16, 'lint.org (4.8 x 12.7 for 0/00); from memory', { of: 'x parlor' }),
      range('mm', 7, 11, 15, 'from memory', { of: 'tone-bar' }),
      range('mm', 3, 7, 11, 'from memory', { of: 'finger' }),
      range('mm', 11, 16, 22, 'from memory', { of: 'transverse' }),
      range('mm', 1.5, 2.5, 4, 'from memory', { of: 'popsicle' }),
      range('mm', 1.5, 2.5, 5, 'from memory', { of: 'soundhole' }),
      range('mm', 2.5, 4, 7.5, 'from memory', { of: 'fan' }),
      range('mm', 12, 17, 23, 'from memory', { of: 'transverse classical' }),
      range('mm', 3, 16, 22, 'ericsguitarhacking.blogspot.com', {
        note: '25 on a factory top was judged far too much',
      }),
    ],
    endHeight: [range('mm', 0.5, 2.5, 4.5, 'driftwoodguitars.blogspot.com (1); from memory')],
    scallopHeight: [range('mm', 5, 8, 12, 'from memory')],
    peakHeight: [range('mm', 8, 12, 16, 'from memory')],
  }),
  reading.quantity('bracing.x-angle', 'deg', 'Angle of the X, measured on the side that faces the tail, as laid out.', {
    ranges: [
      range('deg', 85, 98, 106, 'stewmac.com; jsevy.com', {
        note: '98 modern, 100 forward; wide angle about 100 used by one builder',
      }),
    ],
  }),
  reading.quantity(
    'bracing.x-clearance',
    'mm',
    'Distance from the edge of the soundhole to the edge of the X, as laid out.',
    {
      also: ['hole-to-x'],
      ranges: [range('mm', 15, 32, 52, 'stewmac.com', { note: '25 = forward; back by about 13 since 1938 layout' })],
    },
  ),
  reading.quantity('bracing.mass', 'g', 'Mass of all braces and the bridge plate together, as weighed.', {
    ranges: [range('g', 35, 52, 75, 'from memory', { note: 'with bridge plate' })],
  }),
  reading.count('bracing.tone-bars', 'How many tone bars there are.', {
    ranges: [range('', 0, 2, 3, 'common practice')],
  }),
  reading.count('bracing.fingers', 'How many finger braces there are.', {
    ranges: [range('', 2, 4, 6, 'larryeubanks.blogspot.com (four); common practice')],
  }),
  reading.count('bracing.fans', 'How many fan struts there are.', { ranges: [range('', 3, 7, 9, 'common practice')] }),
];

export const BRACING_PARTS: readonly Part[] = [
  part('bracing', 'The braces glued under the top.', [
    'top-bracing',
    'strutting',
    'braces',
    'struts',
    'brace',
    'strut',
    'bars',
    'beleistung',
    'barrage',
  ]),
  part('bracing.*', 'One brace of the top, under a name the maker chooses.', [], membersOf('bracing')),
  ...bracePartsOf('bracing'),
];
