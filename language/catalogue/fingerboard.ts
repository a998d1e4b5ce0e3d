/** Fingerboard, frets and nut. */
import { entries, OPTIONAL, part, range } from './entry.js';
import { NECK_FREEZE, SCALE_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const board = entries({ where: OPTIONAL, class: 'option', freeze: NECK_FREEZE });
const fret = entries({ where: OPTIONAL, class: 'option', freeze: { costly: 'setup' } });
const seen = entries({ where: OPTIONAL, class: 'appointment', freeze: NECK_FREEZE });
const fitted = entries({ where: OPTIONAL, class: 'setup' });

export const FINGERBOARD_PROPERTIES: readonly Property[] = [
  board.name('fingerboard.wood', 'wood', 'The wood of the fingerboard.', { also: ['species', 'timber'] }),
  board.quantity('fingerboard.thickness', 'mm', 'Thickness of the fingerboard at its centre.', {
    ranges: [range('mm', 5, 6.4, 7.5, 'from memory')],
  }),
  board.quantity('fingerboard.radius', 'mm', 'Radius of the fingerboard’s crown.', {
    words: ['flat'],
    ranges: [
      range('mm', 250, 406, 520, 'manualshive.com; from memory for bounds', {
        of: 'steel-string',
        note: '10-20 in; 16 in common',
      }),
      range('mm', 500, 9999, 9999, 'classicalguitars.ca', {
        of: 'classical',
        note: 'flat usual; 1000 seen; 9999 = flat',
      }),
    ],
  }),
  board.quantity('fingerboard.end-radius', 'mm', 'Radius at the body end, where the crown flattens along the board.', {
    words: ['flat'],
    ranges: [range('mm', 300, 500, 9999, 'from memory')],
  }),
  board.quantity('fingerboard.width.fret-12', 'mm', 'Width of the fingerboard at the twelfth fret.', {
    ranges: [
      range('mm', 53, 56, 60, 'from memory', { of: 'steel-string' }),
      range('mm', 60, 62, 64, 'classicalguitars.ca', { of: 'classical', note: '63 seen' }),
    ],
  }),
  board.quantity('fingerboard.width.end', 'mm', 'Width of the fingerboard at its body end.', {
    ranges: [range('mm', 54, 58, 68, 'from memory')],
  }),
  board.quantity('fingerboard.mass', 'g', 'Mass of the fingerboard, fretted.', {
    ranges: [range('g', 90, 150, 230, 'worked out from size and density')],
  }),
  board.choice(
    'fingerboard.end',
    ['square', 'oval', 'follows-hole', 'pointed', 'floating'],
    'Shape of the fingerboard’s end on the body.',
    { class: 'appointment' },
  ),
  seen.text('fingerboard.binding', 'The binding of the fingerboard.'),
  seen.text('fingerboard.inlay', 'The inlay in the fingerboard.', {
    also: ['markers', 'position-markers', 'fret-markers'],
  }),
  seen.text('fingerboard.side-dots', 'The marks on the edge of the fingerboard.', { also: ['side-markers'] }),
  fret.count('frets.count', 'How many frets there are.', {
    freeze: SCALE_FREEZE,
    ranges: [range('', 18, 20, 24, 'common practice')],
  }),
  fret.quantity('frets.crown-height', 'mm', 'Height of the fret’s crown over the fingerboard.', {
    also: ['height'],
    ranges: [range('mm', 0.9, 1.1, 1.4, 'classicalguitars.ca; from memory', { note: 'classical 1.0-1.1' })],
  }),
  fret.quantity('frets.crown-width', 'mm', 'Width of the fret’s crown.', {
    also: ['width'],
    ranges: [range('mm', 1.9, 2.2, 2.9, 'from memory')],
  }),
  fret.text('frets.material', 'What the fret wire is made of.', { also: ['wire'] }),
  fret.choice('frets.zero', ['yes', 'no'], 'Whether a zero fret stands in front of the nut.', { freeze: SCALE_FREEZE }),
  fret.choice('frets.fanned', ['yes', 'no'], 'Whether the frets are fanned for a longer bass scale.', {
    class: 'body',
    freeze: SCALE_FREEZE,
  }),
  fret.count('frets.perpendicular', 'The fret that stays square to the centre line when the frets are fanned.', {
    freeze: SCALE_FREEZE,
    ranges: [range('', 0, 7, 12, 'from memory')],
  }),

  board.quantity('nut.width', 'mm', 'Width of the neck at the nut.', {
    also: ['nut-width'],
    ranges: [
      range('mm', 42, 44.5, 48, 'lonewolfguitars.com; soundpure.com', {
        of: 'steel-string',
        note: '1-11/16, 1-3/4, 1-7/8 in',
      }),
      range('mm', 43, 46, 49, 'from memory', { of: 'parlor' }),
      range('mm', 46, 47.6, 50, 'ultimate-guitar-building.com', { of: '12-string' }),
      range('mm', 48, 52, 54, 'classicalguitars.ca; ultimate-guitar-building.com', { of: 'classical' }),
    ],
  }),
  fitted.text('nut.material', 'What the nut is made of.', { class: 'option' }),
  fitted.quantity('nut.thickness', 'mm', 'Thickness of the nut along the string.', {
    ranges: [range('mm', 4.5, 6, 8, 'from memory')],
  }),
  fitted.quantity('nut.mass', 'g', 'Mass of the nut.', { ranges: [range('g', 1, 2, 5, 'from memory')] }),
  fitted.quantity('nut.string-spread', 'mm', 'Distance between the centres of the outer strings at the nut.', {
    class: 'option',
    also: ['string-spacing', 'spacing', 'spread'],
    ranges: [
      range('mm', 34.5, 37.5, 41, 'from memory', { of: 'steel-string', note: 'outer string centres' }),
      range('mm', 41, 43, 45, 'classicalguitars.ca', { of: 'classical' }),
    ],
  }),
  fitted.choice(
    'nut.spacing-rule',
    ['centres', 'gaps'],
    'Whether the strings are spaced by equal centres or by equal gaps.',
  ),
];

export const FINGERBOARD_PARTS: readonly Part[] = [
  part('fingerboard', 'The board the strings are stopped on.', ['fretboard', 'griffbrett']),
  part('fingerboard.width', 'How wide the fingerboard is along its length.', []),
  part('frets', 'The wires in the fingerboard.', ['fret', 'fretwire', 'fret-wire']),
  part('nut', 'The bone the strings bear on at the head.', ['top-nut']),
];
