/** What holds for the whole instrument: its kind, its hand, its scale. */
import { entries, INSTRUMENT, OPTIONAL, range } from './entry.js';
import { SCALE_FREEZE } from './freeze.js';
import { FORMS, INSTRUMENT_KINDS } from './instrument-tags.js';
import type { Property } from './property.js';

const write = entries({ where: INSTRUMENT, class: 'body' });
const label = entries({ where: INSTRUMENT, class: 'record' });

export const INSTRUMENT_PROPERTIES: readonly Property[] = [
  label.text('title', 'The name shown on sheets and in lists.', {
    where: ['shop', 'wood', 'strings', 'appointments', ...INSTRUMENT],
    also: ['called'],
  }),
  label.text('description', 'A sentence or two about it, for the people who read the sheets.', {
    where: ['wood', 'species', 'strings', 'appointments', 'rig', ...INSTRUMENT],
  }),
  label.name(
    'model',
    'model',
    'The body model the recipe is built on; a change of it brings every difference between the two.',
    {
      where: ['recipe'],
      class: 'record',
    },
  ),
  label.choice(
    'kind',
    INSTRUMENT_KINDS,
    'The family the instrument belongs to; it decides which plausible ranges apply.',
    {
      where: ['model', 'recipe'],
      also: ['family'],
    },
  ),
  label.choice('form', FORMS, 'The body size in the trade’s words; it decides which plausible ranges apply.', {
    where: ['model', 'recipe'],
    also: ['body-size', 'body-shape', 'shape'],
  }),
  write.choice(
    'handed',
    ['right', 'left'],
    'Which hand it is played by; left mirrors every offset from the centre line.',
    {
      where: OPTIONAL,
      class: 'option',
      also: ['hand', 'left-handed', 'right-handed'],
      freeze: { costly: 'outline', impossible: 'bracing' },
    },
  ),
  write.quantity('scale', 'mm', 'Length of the open string between nut and saddle before compensation.', {
    freeze: SCALE_FREEZE,
    also: ['scale-length', 'string-length', 'mensur'],
    ranges: [
      range('mm', 610, 645, 660, 'nailhausguitars.com; from memory for bounds', {
        of: 'steel-string',
        note: 'short 632 (24.9 in), long 644-645 (25.34-25.4 in), 648 (25.5)',
      }),
      range('mm', 597, 622, 638, 'kozlikguitars.co.uk; from memory for bounds', { of: 'parlor', note: '628 seen' }),
      range('mm', 628, 650, 664, 'classicalguitars.ca; from memory for bounds', { of: 'classical' }),
      range('mm', 670, 700, 740, 'from memory', { of: 'baritone' }),
    ],
  }),
  write.quantity('scale-bass', 'mm', 'Scale of the lowest string where the frets are fanned.', {
    freeze: SCALE_FREEZE,
    ranges: [range('mm', 630, 660, 700, 'from memory')],
  }),
  write.quantity('scale-treble', 'mm', 'Scale of the highest string where the frets are fanned.', {
    freeze: SCALE_FREEZE,
    ranges: [range('mm', 600, 635, 660, 'from memory')],
  }),
  write.quantity('pitch', 'Hz', 'Concert pitch of the A above middle C.', {
    class: 'setup',
    ranges: [range('Hz', 415, 440, 446, 'ISO 16:1975 for 440 Hz; bounds common practice')],
  }),
];
