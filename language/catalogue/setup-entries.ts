/** Setup: heights, relief, slots, compensation and intonation. */
import { entries, OPTIONAL, part, range } from './entry.js';
import { NECK_ANGLE_FREEZE } from './freeze.js';
import type { Part, Property } from './property.js';

const setup = entries({ where: OPTIONAL, class: 'setup' });
const reading = entries({ where: ['build'], class: 'record' });

export const SETUP_PROPERTIES: readonly Property[] = [
  setup.quantity('setup.action.bass', 'mm', 'Height of the lowest string over the twelfth fret.', {
    also: ['low', 'low-e', 'sixth'],
    ranges: [
      range('mm', 1.8, 2.3, 2.9, 'guitareboucher.com; startingvossguitars.blogspot.com', {
        of: 'steel-string',
        note: '2.4 and 2.0 seen',
      }),
      range('mm', 2.8, 3.6, 4.4, 'classicalguitars.ca', { of: 'classical' }),
    ],
  }),
  setup.quantity('setup.action.treble', 'mm', 'Height of the highest string over the twelfth fret.', {
    also: ['high', 'high-e', 'first'],
    ranges: [
      range('mm', 1.2, 1.7, 2.3, 'guitareboucher.com; startingvossguitars.blogspot.com', {
        of: 'steel-string',
        note: '1.6 seen twice',
      }),
      range('mm', 2.3, 2.7, 3.4, 'classicalguitars.ca', { of: 'classical', note: '2.6 seen' }),
    ],
  }),
  setup.quantity('setup.relief', 'mm', 'Forward bow of the neck, measured about the seventh fret.', {
    also: ['bow', 'neck-relief'],
    ranges: [
      range('mm', 0, 0.15, 0.35, 'manualshive.com; thbecker.net; guitarrepairshop.com', {
        note: '0-0.30; 0.25; under 0.40',
      }),
    ],
  }),
  setup.quantity(
    'setup.string-height',
    'mm',
    'Height of the strings over the top, in front of the saddle; it is the lever that turns the bridge.',
    {
      also: ['string-height-over-top', 'height-over-top'],
      ranges: [
        range('mm', 10.5, 12.7, 15.5, 'from memory', { of: 'steel-string', note: 'at saddle' }),
        range('mm', 8, 10, 13, 'classicalguitars.ca; from memory', { of: 'classical' }),
      ],
    },
  ),
  setup.quantity('setup.break-angle', 'deg', 'Angle by which the strings bend down behind the saddle.', {
    ranges: [
      range('deg', 12, 25, 45, 'classical-guitars.plus; from memory for steel', {
        note: '15-45 useful range on classicals',
      }),
    ],
  }),
  setup.quantity('setup.nut-clearance.plain', 'mm', 'Height of the plain strings over the first fret.', {
    also: ['treble'],
    ranges: [range('mm', 0.12, 0.3, 0.5, 'manualshive.com')],
  }),
  setup.quantity('setup.nut-clearance.wound', 'mm', 'Height of the wound strings over the first fret.', {
    also: ['bass'],
    ranges: [range('mm', 0.2, 0.5, 0.7, 'manualshive.com')],
  }),
  setup.quantity(
    'setup.compensation.middle',
    'mm',
    'How much longer than the scale the string is at the middle of the saddle.',
    {
      also: ['centre', 'center'],
      ranges: [range('mm', 2.5, 3.8, 5.5, 'buildyourguitar.com', { note: 'scale 635-654 mm' })],
    },
  ),
  setup.quantity('setup.compensation.treble', 'mm', 'How much longer than the scale the highest string is.', {
    also: ['high-e', 'high'],
    ranges: [range('mm', 1, 2.3, 3.5, 'from memory')],
  }),
  setup.quantity('setup.compensation.bass', 'mm', 'How much longer than the scale the lowest string is.', {
    also: ['low-e', 'low'],
    ranges: [range('mm', 3, 5, 7, 'from memory')],
  }),
  setup.quantity('setup.compensation.nut', 'mm', 'How much the nut is moved towards the first fret.', {
    ranges: [range('mm', 0, 0.3, 1, 'from memory')],
  }),
  setup.quantity('setup.compensation.*', 'mm', 'How much longer than the scale this string is.', {
    ranges: [range('mm', 0, 3, 7, 'from memory')],
  }),
  reading.quantity(
    'setup.intonation.*',
    'cents',
    'How far the string stopped at the twelfth fret is from its octave.',
    {
      ranges: [
        range('cents', -3, 0, 3, 'docslib.org; hobbydocbox.com; startingvossguitars.blogspot.com', {
          note: 'players themselves vary about +-2',
        }),
      ],
    },
  ),
  setup.quantity(
    'setup.straightedge.bridge',
    'mm',
    'Gap between a straightedge on the frets and the top of the bridge, unstrung.',
    {
      freeze: NECK_ANGLE_FREEZE,
      ranges: [
        range('mm', -0.3, 0.6, 1.6, 'manualshive.com; from memory for shop range', {
          note: 'straightedge on frets, gap over bridge top; kit instruction allows 0-3.2',
        }),
      ],
    },
  ),
  setup.quantity(
    'setup.straightedge.top',
    'mm',
    'Gap between a straightedge on the neck and the bare top at the saddle line.',
    {
      freeze: NECK_ANGLE_FREEZE,
      ranges: [
        range('mm', 1.5, 2.5, 3.5, 'harvestmoonguitars.com', {
          note: 'measured over top line before bridge and fingerboard thickness; shop-specific',
        }),
      ],
    },
  ),
  reading.quantity(
    'setup.alignment',
    'mm',
    'How far the neck’s centre line misses the bridge’s centre, bass side negative.',
    { ranges: [range('mm', -0.8, 0, 0.8, 'common practice', { note: 'centre line of strings to centre of bridge' })] },
  ),
  reading.quantity(
    'setup.saddle-line-error',
    'mm',
    'How far the distance from nut to saddle came out from what was meant.',
    {
      ranges: [range('mm', -0.25, 0, 0.25, 'worked out from the other ranges', { note: '0.25 mm = 0.7 cent on 645' })],
    },
  ),
  setup.quantity('home.humidity', '%RH', 'Relative humidity of the place where the instrument will live.', {
    also: ['rh'],
    ranges: [range('%RH', 20, 45, 75, 'common practice', { note: 'heated rooms in winter to the damp tropics' })],
  }),
  setup.quantity('home.temperature', '°C', 'Temperature of the place where the instrument will live.', {
    ranges: [range('°C', 15, 21, 30, 'common practice')],
  }),
];

export const SETUP_PARTS: readonly Part[] = [
  part('home', 'The air where the instrument will live: what plates and domes will settle to.', []),
  part('setup', 'What is adjusted on the finished instrument.', ['set-up', 'adjustment']),
  part('setup.action', 'Height of the strings over the twelfth fret.', ['string-action']),
  part('setup.nut-clearance', 'Height of the strings over the first fret.', ['nut-slots', 'nut-height', 'first-fret']),
  part('setup.compensation', 'What is added to the scale so that stopped notes are in tune.', []),
  part('setup.intonation', 'How far stopped notes are out of tune, string by string.', []),
  part('setup.straightedge', 'What a straightedge on the neck shows at the bridge.', ['straight-edge']),
];

/** Names for the strings of a six-string guitar, from the highest to the lowest. */
export const STRING_NAMES: readonly string[] = ['e4', 'b3', 'g3', 'd3', 'a2', 'e2'];
