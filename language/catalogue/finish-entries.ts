/** What the wood is coated with. */
import { entries, OPTIONAL, part, range } from './entry.js';
import { FINISH_FREEZE, SHEEN_FREEZE } from './freeze.js';
import type { Part, PlausibleRange, Property } from './property.js';

const finish = entries({ where: OPTIONAL, class: 'option', freeze: FINISH_FREEZE });
const record = entries({ where: ['build'], class: 'record' });

export const FINISH_SYSTEMS: readonly string[] = [
  'french-polish',
  'shellac',
  'nitrocellulose',
  'oil',
  'oil-varnish',
  'waterborne',
  'uv-polyester',
  'polyurethane-two-pack',
  'acid-catalysed',
  'wax',
  'none',
];

const FILM: readonly PlausibleRange[] = [
  range('mm', 0.02, 0.05, 0.09, 'woodweb.com', { of: 'french-polish', note: 'about 2 mil stated' }),
  range('mm', 0.06, 0.13, 0.2, 'from memory', { of: 'nitrocellulose' }),
  range('mm', 0.08, 0.18, 0.35, 'from memory', { of: 'uv-polyester' }),
  range('mm', 0, 0.02, 0.05, 'from memory', { of: 'oil' }),
  range('mm', 0, 0.1, 0.35, 'from memory, over the systems listed'),
];

export const FINISH_PROPERTIES: readonly Property[] = [
  finish.choice('finish.system', FINISH_SYSTEMS, 'What the body is finished with.', {
    also: ['kind', 'type', 'material'],
  }),
  finish.quantity('finish.film', 'mm', 'Thickness of the dry film.', {
    also: ['thickness', 'film-thickness'],
    ranges: FILM,
  }),
  finish.quantity('finish.top-film', 'mm', 'Thickness of the dry film on the top, where it differs.', { ranges: FILM }),
  finish.quantity('finish.density', 'kg/m³', 'Density of the dry film.', {
    ranges: [range('kg/m³', 900, 1200, 1500, 'from memory')],
  }),
  finish.quantity(
    'finish.modulus',
    'GPa',
    'Stiffness of the dry film, where it is known: it stiffens a plate as well as weighing on it.',
    {
      also: ['stiffness'],
      ranges: [range('GPa', 0.5, 2, 5, 'from memory', { note: 'soft lacquers and oils low, hard polyester high' })],
    },
  ),
  finish.choice('finish.sheen', ['gloss', 'semi-gloss', 'satin', 'matt'], 'How much the surface shines.', {
    class: 'appointment',
    freeze: SHEEN_FREEZE,
    also: ['lustre', 'luster', 'gloss'],
  }),
  finish.text('finish.colour', 'Colour, stain or burst.', {
    class: 'appointment',
    also: ['color', 'stain', 'tint', 'burst'],
  }),
  finish.text('finish.pore-fill', 'What the pores are filled with.', {
    also: ['filler', 'pore-filler', 'grain-filler'],
  }),
  finish.text('finish.seal', 'What the bare wood is sealed with.', { also: ['sealer'] }),
  finish.choice('finish.neck-system', FINISH_SYSTEMS, 'What the neck is finished with, where it differs.'),
  finish.choice(
    'finish.neck-sheen',
    ['gloss', 'semi-gloss', 'satin', 'matt'],
    'How much the neck shines, where it differs.',
    { class: 'appointment', freeze: SHEEN_FREEZE },
  ),
  finish.count('finish.coats', 'How many coats are put on.', { ranges: [range('', 1, 10, 120, 'common practice')] }),
  finish.quantity('finish.wet-coat', 'mil', 'Thickness of one wet coat.', {
    class: 'record',
    ranges: [range('mil', 2, 4, 6, 'woodweb.com', { note: '1 mil = 0.0254 mm; spray coat' })],
  }),
  finish.quantity('finish.cure', 'days', 'Time between the last coat and rubbing out.', {
    class: 'record',
    also: ['cure-time', 'drying'],
    ranges: [
      range('days', 14, 28, 60, 'othertime.com; from memory', {
        of: 'nitrocellulose',
        note: '4-8 weeks for the whole finish stage',
      }),
    ],
  }),
  record.text('finish.batch', 'Batch of the finishing material.'),
  record.quantity('finish.mass', 'g', 'Mass the finish added, weighed before and after.', {
    ranges: [
      range('g', 10, 25, 45, 'worked out from the other ranges', { of: 'french-polish' }),
      range('g', 35, 65, 110, 'worked out from the other ranges', { of: 'nitrocellulose' }),
    ],
  }),
  record.quantity('finish.top-mass', 'g', 'Mass the finish added to the top alone.', {
    ranges: [
      range('g', 4, 9, 16, 'worked out from the other ranges', {
        of: 'french-polish',
        note: 'film x area x 1200 kg/m3',
      }),
      range('g', 10, 22, 35, 'worked out from the other ranges', { of: 'nitrocellulose' }),
    ],
  }),
];

export const FINISH_PARTS: readonly Part[] = [
  part('finish', 'What the wood is coated with.', ['lacquer', 'polish', 'varnish', 'coating']),
];
