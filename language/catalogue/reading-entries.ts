/** Readings on a build, with the conditions that make a reading a datum. */
import { entries, part, range } from './entry.js';
import type { Part, Property } from './property.js';

const reading = entries({ where: ['build'], class: 'record' });

/** What the instrument was when it was read. */
export const READING_STAGES = ['free-plate', 'braced', 'box-closed', 'in-the-white', 'strung'] as const;

const HEARD: readonly (readonly [name: string, sentence: string])[] = [
  ['response', 'How readily it speaks under a light touch.'],
  ['sustain', 'How long a note rings.'],
  ['volume', 'How loud it is for the same effort.'],
  ['bass', 'How full the low strings are.'],
  ['treble', 'How full the high strings are.'],
  ['balance', 'How even the strings are against each other.'],
  ['clarity', 'How well the notes of a chord stand apart.'],
  ['warmth', 'How round the tone is.'],
  ['range', 'How much louder and brighter it gets when it is played harder.'],
  ['evenness', 'How free it is of wolf notes and dead spots.'],
];

export const READING_PROPERTIES: readonly Property[] = [
  reading.choice('stage', READING_STAGES, 'What the instrument was when it was read.', { also: ['state'] }),
  reading.choice('strings-damped', ['yes', 'no'], 'Whether the strings were kept from ringing.', {
    also: ['damped', 'muted'],
  }),
  reading.date('date', 'The day of the reading.', { also: ['on', 'read', 'day'] }),
  reading.quantity('days-strung', 'days', 'Days since it was first strung to pitch.', {
    also: ['days', 'days-since-stringing', 'age'],
    ranges: [range('days', 0, 30, 20_000, 'common practice')],
  }),
  reading.quantity('humidity', '%RH', 'Relative humidity at the reading, or in the room where it was built.', {
    also: ['rh', 'relative-humidity'],
    ranges: [range('%RH', 35, 45, 55, 'genone-luthier-supply.com', { note: 'short spells 25-65' })],
  }),
  reading.quantity('temperature', '°C', 'Temperature at the reading.', {
    ranges: [range('°C', 16, 21, 25, 'common practice')],
  }),
  reading.quantity('moisture', '%MC', 'Moisture content of the wood, by meter or by weighing.', {
    also: ['mc'],
    ranges: [
      range('%MC', 6, 8.3, 9.5, 'customguitars.com; USDA Wood Handbook, Table 4-2', {
        note: '6-8 by one maker; 45 %RH at 21 C = 8.5 at equilibrium',
      }),
    ],
  }),
  reading.text('hygrometer', 'The hygrometer the humidity was read on.'),
  reading.name('rig', 'rig', 'The rig a deflection was read in.', { also: ['in'] }),
  reading.choice(
    'method',
    ['tap', 'hammer', 'shaker', 'loudspeaker', 'powder', 'played'],
    'How the resonance was driven.',
    { also: ['driven-by'] },
  ),
  reading.choice('held', ['hung', 'lap', 'back-against-body', 'mould', 'bench'], 'How the instrument was held.', {
    also: ['support'],
  }),
  reading.text('reader', 'Who took the reading, by initials or a code.', { also: ['read-by', 'measured-by'] }),
  reading.text('instrument', 'Microphone, dial or program the reading was made with.', { also: ['meter'] }),
  reading.choice('blind', ['yes', 'no'], 'Whether the listener did not know which instrument it was.'),
  reading.text('listener', 'Who listened, by initials or a code.', { also: ['heard-by', 'player'] }),

  reading.quantity('resonance.air', 'Hz', 'Main air resonance.', {
    also: ['main-air', 'helmholtz', 'a0'],
    ranges: [
      range('Hz', 105, 118, 135, 'from memory', { of: 'parlor', note: 'strings on, damped' }),
      range('Hz', 90, 98, 108, 'from memory', { of: 'om', note: 'strings on, damped' }),
      range('Hz', 84, 93, 102, 'from memory', { of: 'dreadnought', note: 'strings on, damped' }),
      range('Hz', 80, 89, 98, 'from memory', { of: 'jumbo', note: 'strings on, damped' }),
      range('Hz', 86, 96, 106, 'from memory', { of: 'classical', note: 'strings on, damped' }),
    ],
  }),
  reading.quantity('resonance.top', 'Hz', 'Main top resonance.', {
    also: ['main-top', 'monopole', 't1'],
    ranges: [
      range('Hz', 180, 203, 235, 'from memory', { of: 'parlor', note: 'strings on, damped' }),
      range('Hz', 160, 182, 205, 'from memory', { of: 'om', note: 'strings on, damped' }),
      range('Hz', 150, 172, 195, 'from memory', { of: 'dreadnought', note: 'strings on, damped' }),
      range('Hz', 145, 166, 190, 'from memory', { of: 'jumbo', note: 'strings on, damped' }),
      range('Hz', 160, 183, 210, 'from memory', { of: 'classical', note: 'strings on, damped' }),
      range('Hz', 140, 173, 210, 'vdocument.in', { of: 'clamped-form', note: 'one thesis value 173' }),
      range('Hz', 170, 200, 235, 'luthiersforum.com (about 20 drop); from memory', {
        of: 'box-closed',
        note: 'bridge then lowers it by 15-25',
      }),
    ],
  }),
  reading.quantity('resonance.back', 'Hz', 'Main back resonance.', {
    also: ['main-back', 'b1'],
    ranges: [
      range('Hz', 210, 240, 285, 'from memory', { of: 'parlor', note: 'strings on, damped' }),
      range('Hz', 190, 220, 260, 'from memory', { of: 'om', note: 'strings on, damped' }),
      range('Hz', 180, 208, 240, 'from memory', { of: 'dreadnought', note: 'strings on, damped' }),
      range('Hz', 170, 200, 235, 'from memory', { of: 'jumbo', note: 'strings on, damped' }),
      range('Hz', 185, 212, 250, 'from memory', { of: 'classical', note: 'strings on, damped' }),
    ],
  }),
  reading.quantity('resonance.rigid-air', 'Hz', 'Air resonance of the box with both plates held still.', {
    ranges: [
      range('Hz', 115, 130, 145, 'mwguitars.com.au; worked out from the other ranges', {
        of: 'om',
        note: 'parlour cavity about 150 measured',
      }),
    ],
  }),
  reading.quantity('resonance.top-plugged', 'Hz', 'Main top resonance with the soundhole plugged.', {
    also: ['uncoupled-top'],
    ranges: [range('Hz', 130, 165, 220, 'from memory')],
  }),
  reading.quantity('resonance.top-loaded', 'Hz', 'The same with a mass added at the bridge.', {
    ranges: [range('Hz', 100, 145, 215, 'from memory')],
  }),
  reading.quantity('resonance.long-dipole', 'Hz', 'The top rocking along the centre line.', {
    ranges: [range('Hz', 230, 290, 400, 'from memory', { of: 'om' })],
  }),
  reading.quantity('resonance.cross-dipole', 'Hz', 'The top rocking across the centre line.', {
    ranges: [
      range('Hz', 230, 300, 400, 'luthiersforum.com; from memory', { of: 'om', note: 'weak dipole at 293 seen' }),
    ],
  }),
  reading.quantity('resonance.*', 'Hz', 'Any other peak, under a name of the maker’s own.'),
  reading.quantity('added-mass', 'g', 'The mass put on the bridge for `resonance.top-loaded`.', {
    ranges: [range('g', 5, 20, 60, 'common practice')],
  }),
  reading.quantity('resonance-gap.back-top', 'cents', 'Interval from main top up to main back.', {
    ranges: [
      range('cents', 100, 350, 600, 'strongfirst.com; from memory', {
        note: '4 used by one maker; below 1 they drag each other',
      }),
    ],
  }),

  reading.quantity('tap.along', 'Hz', 'Tap tone of the free plate bending along the grain.', {
    also: ['long'],
    ranges: [range('Hz', 58, 69, 82, 'worked out from the other ranges', { note: 'E 8-14 GPa' })],
  }),
  reading.quantity('tap.across', 'Hz', 'Tap tone of the free plate bending across the grain.', {
    also: ['cross'],
    ranges: [range('Hz', 85, 126, 165, 'worked out from the other ranges')],
  }),
  reading.quantity('tap.twist', 'Hz', 'Tap tone of the free plate twisting.', {
    also: ['torsion'],
    ranges: [range('Hz', 40, 52, 64, 'worked out from the other ranges')],
  }),
  reading.quantity('deflection.along', 'mm', 'Sag of the plate along the grain in the rig named.', {
    also: ['long'],
    ranges: [
      range('mm', 5, 7.2, 10, 'worked out from the other ranges', { note: 'shop-specific; rig must be recorded' }),
      range('mm', 6, 7.1, 8.5, 'lint.org', { of: 'size-00' }),
    ],
  }),
  reading.quantity('deflection.across', 'mm', 'Sag of the plate across the grain in the rig named.', {
    also: ['cross'],
    ranges: [range('mm', 8, 9.5, 11, 'erikshjoerne.blogspot.com', { of: 'classical' })],
  }),
  reading.quantity('deflection.bridge', 'mm', 'Sag of the top at the bridge in the rig named.', {
    ranges: [range('mm', 0.1, 0.8, 4, 'from memory')],
  }),

  reading.quantity('bridge.rotation', 'deg', 'How far the bridge tips under string load, against unstrung.', {
    also: ['roll', 'tilt'],
    ranges: [range('deg', 0.5, 1.5, 2.5, 'from memory', { note: 'warn above 3' })],
  }),
  reading.quantity('bridge.belly', 'mm', 'Rise of the top behind the bridge above its dome, strung.', {
    also: ['bulge'],
    ranges: [range('mm', 0.5, 2, 4, 'from memory', { note: 'above dome, strung; warn above 5' })],
  }),
  reading.quantity('bridge.dip', 'mm', 'Sink of the top in front of the bridge, strung.', {
    also: ['sink'],
    ranges: [range('mm', 0, 0.5, 1.5, 'from memory')],
  }),
  reading.quantity('bridge.stiffness', 'kN/m', 'Load at the bridge over the sag it makes.', {
    also: ['monopole-stiffness'],
    ranges: [
      range('kN/m', 35, 52, 85, 'from memory', { of: 'steel-string' }),
      range('kN/m', 20, 33, 55, 'from memory', { of: 'classical' }),
    ],
  }),
  reading.quantity(
    'bridge.mobility',
    's/kg',
    'How readily the top moves at the bridge: one over the root of stiffness times effective mass.',
    {
      ranges: [
        range('s/kg', 0.009, 0.015, 0.021, 'from memory', { of: 'steel-string' }),
        range('s/kg', 0.015, 0.023, 0.033, 'from memory', { of: 'classical' }),
      ],
    },
  ),
  reading.quantity('bridge.effective-mass', 'g', 'Mass that seems to move at the bridge, from an added-mass test.', {
    also: ['monopole-mass'],
    ranges: [
      range('g', 45, 61, 90, 'from memory', { of: 'steel-string' }),
      range('g', 38, 52, 70, 'from memory', { of: 'classical' }),
    ],
  }),
  ...HEARD.map(([name, sentence]) =>
    reading.ratio(`heard.${name}`, '', `${sentence.slice(0, -1)}, in the maker’s own marks.`, {
      ranges: [range('', 0, 0.7, 1, 'marks out of the full mark')],
    }),
  ),
  reading.ratio('heard.*', '', 'Any other quality, in the maker’s own marks.', {
    ranges: [range('', 0, 0.7, 1, 'marks out of the full mark')],
  }),
];

export const READING_PARTS: readonly Part[] = [
  part('resonance', 'The peaks of the response.', ['resonances', 'peaks', 'modes']),
  part('heard', 'What the ear said, dated and apart from readings.', ['ear', 'sound', 'tone', 'listening']),
  part('resonance-gap', 'Intervals between peaks.', []),
];
