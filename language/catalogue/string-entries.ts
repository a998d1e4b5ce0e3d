/** String sets, and the line that says which set an instrument wears. */
import { entries, OPTIONAL, part, range } from './entry.js';
import type { Part, Property } from './property.js';
import { STRING_NAMES } from './setup-entries.js';

const set = entries({ where: ['strings'], class: 'record' });
const worn = entries({ where: OPTIONAL, class: 'setup' });

export const STRING_MATERIALS: readonly string[] = [
  'plain-steel',
  'phosphor-bronze',
  'bronze-80-20',
  'nickel-plated-steel',
  'pure-nickel',
  'stainless-steel',
  'silk-and-steel',
  'nylon',
  'silver-plated-copper',
  'fluorocarbon',
  'gut',
  'titanium-nylon',
];

export const STRING_PROPERTIES: readonly Property[] = [
  worn.name(
    'strings',
    'strings',
    'The set of strings the instrument is made for, or wears; in a reading also just `on` or `off`.',
    {
      words: ['on', 'off'],
      also: ['string-set'],
    },
  ),
  set.choice('kind', ['steel', 'nylon', 'silk-and-steel', 'gut'], 'What sort of set it is.', { also: ['type'] }),
  set.text('maker', 'Who makes the set.', { also: ['brand'] }),
  set.choice(
    'material',
    STRING_MATERIALS,
    'What the wound strings are wrapped with, or what all strings are made of.',
    { also: ['wrap', 'alloy'] },
  ),
  set.list('tuning', '', 'The open notes from the highest string to the lowest, as note names.', {
    also: ['notes', 'pitches'],
  }),
  set.list('gauges', 'in', 'Diameters from the highest string to the lowest.', {
    also: ['gauge', 'diameters'],
    ranges: [range('in', 0.008, 0.025, 0.08, 'string makers’ charts')],
  }),
  set.list('wound', '', 'For each string from the highest to the lowest: `plain` or `wound`.', { also: ['winding'] }),
  set.list('unit-weights', 'g/m', 'Mass per length from the highest string to the lowest, from the maker’s chart.', {
    also: ['unit-weight'],
  }),
  set.list(
    'losses',
    '',
    'Share of its swing (1/Q) that each open string loses by itself, from the highest to the lowest.',
    {
      also: ['loss', 'damping'],
      ranges: [range('', 0.0003, 0.001, 0.004, 'from memory')],
    },
  ),
  set.list('tensions', 'N', 'Tension from the highest string to the lowest, from the maker’s chart.', {
    also: ['chart-tensions'],
  }),
  set.quantity('chart-scale', 'mm', 'The scale at which the maker’s chart gives its tensions.', {
    ranges: [range('mm', 600, 648, 700, 'string makers’ charts')],
  }),
  set.quantity('total-tension', 'N', 'Tension of the whole set, from the maker’s chart.', {
    also: ['tension'],
    ranges: [
      range('N', 560, 640, 700, 'watchalan.com; from memory', {
        of: 'extra-light',
        note: '10-47 or 10-48; 156 lb in one table',
      }),
      range('N', 630, 680, 730, 'from memory', { of: 'custom-light', note: '11-52' }),
      range('N', 690, 730, 800, 'jakewildwood.blogspot.com; watchalan.com; bourgeoisguitars.net', {
        of: 'light',
        note: '12-53/54; 163-179 lb stated, scale-dependent',
      }),
      range('N', 790, 820, 880, 'jakewildwood.blogspot.com; watchalan.com', {
        of: 'medium',
        note: '13-56; 184-198 lb stated',
      }),
      range('N', 620, 654, 690, 'jakewildwood.blogspot.com', { of: 'light short-scale', note: '147 lb' }),
      range('N', 900, 1050, 1250, 'from memory', { of: '12-string', note: 'often over 200 lb' }),
      range('N', 340, 395, 430, 'ukuleles.com', { of: 'classical', note: 'about 90 lb' }),
    ],
  }),
  set.quantity('string.*.gauge', 'in', 'Diameter of this string.', {
    also: ['diameter'],
    ranges: [range('in', 0.008, 0.025, 0.08, 'string makers’ charts')],
  }),
  set.text('string.*.note', 'The open note of this string, such as E4.', { also: ['pitch', 'tuning'] }),
  set.choice('string.*.material', STRING_MATERIALS, 'What this string is made of, or wrapped with.', {
    also: ['wrap'],
  }),
  set.choice('string.*.winding', ['plain', 'wound'], 'Whether this string is plain or wound.', { also: ['kind'] }),
  set.quantity('string.*.core', 'in', 'Diameter of the core of a wound string.', {
    ranges: [range('in', 0.008, 0.016, 0.028, 'from memory')],
  }),
  set.quantity('string.*.unit-weight', 'g/m', 'Mass per length of this string.', {
    ranges: [range('g/m', 0.15, 2, 12, 'string makers’ charts')],
  }),
  set.ratio('string.*.loss', '', 'Share of its swing (1/Q) that this open string loses by itself.', {
    also: ['damping'],
    ranges: [range('', 0.0003, 0.001, 0.004, 'from memory')],
  }),
  set.quantity('string.*.tension', 'N', 'Tension of this string, from the maker’s chart.', {
    ranges: [range('N', 40, 115, 200, 'string makers’ charts')],
  }),
];

export const STRING_PARTS: readonly Part[] = [
  part('string', 'The strings of the set, one by one.', ['each']),
  part('string.*', 'One string, under its note.', [], STRING_NAMES),
];
