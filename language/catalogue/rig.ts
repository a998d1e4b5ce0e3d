/** The rig a deflection is read in; without it a deflection means nothing. */
import { entries, part, range } from './entry.js';
import type { Part, Property } from './property.js';

const rig = entries({ where: ['rig'], class: 'record' });

export const RIG_PROPERTIES: readonly Property[] = [
  rig.choice(
    'kind',
    ['plank', 'edge-held', 'clamped-form', 'bridge-push', 'lever'],
    'How the piece is held and pushed.',
    { also: ['type'] },
  ),
  rig.quantity('span', 'mm', 'Distance between the supports.', {
    also: ['length', 'between'],
    ranges: [range('mm', 180, 500, 560, 'common practice')],
  }),
  rig.quantity('load', 'kg', 'The mass that is hung on.', {
    also: ['weight', 'mass'],
    ranges: [range('kg', 0.2, 2.27, 10, 'common practice')],
  }),
  rig.quantity('at', 'mm', 'How far from the middle of the span the load hangs; `middle` is no distance.', {
    words: ['middle'],
    also: ['off-centre', 'off-center', 'from-middle', 'place', 'position'],
    ranges: [range('mm', 0, 0, 120, 'common practice')],
  }),
  rig.quantity('width', 'mm', 'Width of the plate in the rig, across the span.', {
    also: ['plate-width'],
    ranges: [range('mm', 100, 400, 560, 'common practice')],
  }),
  rig.choice('direction', ['along', 'across'], 'Whether the span runs along the grain or across it.', {
    also: ['grain'],
  }),
  rig.quantity('supports.diameter', 'mm', 'Diameter of the round supports.', {
    ranges: [range('mm', 3, 12, 30, 'common practice')],
  }),
  rig.quantity('preload', 'g', 'Mass left on before the dial is set to nothing.', {
    ranges: [range('g', 0, 50, 500, 'from memory')],
  }),
  rig.ratio('lever', '', 'Load at the plate over load on the lever, from a weighing with the arm level.', {
    ranges: [range('', 0.2, 1, 5, 'from memory')],
  }),
  rig.quantity('resolution', 'mm', 'Smallest step the dial shows.', {
    ranges: [range('mm', 0.001, 0.01, 0.1, 'common practice')],
  }),
  rig.ratio('repeatability', '%', 'How closely a reading repeats in this rig.', {
    ranges: [range('%', 0.5, 1.5, 3, 'from memory')],
  }),
];

export const RIG_PARTS: readonly Part[] = [part('supports', 'What the piece rests on.', ['rods', 'bearers'])];
