/** The properties every glued brace has, written once for the top's bracing and the back's. */
import { entries, INSTRUMENT, part, range } from './entry.js';
import { BRACE_HEIGHT_FREEZE, BRACE_PLACE_FREEZE } from './freeze.js';
import type { Part, PlausibleRange, Property } from './property.js';

const place = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRACE_PLACE_FREEZE });
const carve = entries({ where: INSTRUMENT, class: 'voicing', freeze: BRACE_HEIGHT_FREEZE });

export const BRACE_PROFILES = ['rectangular', 'triangular', 'parabolic', 'gabled'] as const;

export interface MemberRanges {
  readonly width: readonly PlausibleRange[];
  readonly height: readonly PlausibleRange[];
  readonly endHeight: readonly PlausibleRange[];
  readonly scallopHeight: readonly PlausibleRange[];
  readonly peakHeight: readonly PlausibleRange[];
}

/** `root` is the part the braces belong to (`bracing`), `plate` the plate they are glued to. */
export function bracePropertiesOf(root: string, plate: string, ranges: MemberRanges): readonly Property[] {
  const at = (name: string) => `${root}.*.${name}`;
  const height = (name: string, sentence: string, also: readonly string[] = [], own = ranges.height) =>
    carve.quantity(at(name), 'mm', sentence, { also, ranges: own });
  return [
    place.point(at('from'), 'mm', `Where the brace begins on the ${plate}: station from the tail, then offset.`, {
      also: ['start'],
    }),
    place.point(at('to'), 'mm', `Where the brace ends on the ${plate}: station from the tail, then offset.`, {
      also: ['end'],
    }),
    place.list(at('curve'), 'mm', 'Points a curved brace passes through between its ends.'),
    place.name(at('wood'), 'wood', 'The billet this brace was split or sawn from.', { also: ['billet', 'stock'] }),
    carve.quantity(at('width'), 'mm', `Width of the brace at its foot, where it is glued to the ${plate}.`, {
      also: ['thickness', 'foot'],
      ranges: ranges.width,
    }),
    height('height', 'Greatest height of the brace, where no scallop or taper has lowered it.', ['tall', 'depth']),
    carve.choice(at('profile'), BRACE_PROFILES, 'Shape of the brace across its length, as seen from its end.', {
      also: ['section', 'shape', 'cross-section'],
    }),
    height(
      'end-height',
      'Height left at both ends, where the brace meets the lining.',
      ['rim-height'],
      ranges.endHeight,
    ),
    height('from-height', 'Height left at the beginning, where it differs from the other end.', [], ranges.endHeight),
    height('to-height', 'Height left at the end, where it differs from the beginning.', [], ranges.endHeight),
    carve.list(
      at('heights'),
      'mm',
      'Heights along the brace at the places named by `stations`, or evenly spaced from beginning to end.',
      {
        ranges: ranges.height,
      },
    ),
    carve.list(at('stations'), 'mm', 'Distances along the brace, from its beginning, at which `heights` are given.'),
    carve.quantity(at('shoulder'), 'mm', 'Breadth left at the top of a gabled brace.', {
      also: ['crest', 'ridge'],
      ranges: [range('mm', 0, 2.5, 6, 'from memory')],
    }),
    carve.quantity(at('taper.length'), 'mm', 'Length over which the brace runs down to its end height.', {
      ranges: [range('mm', 15, 50, 120, 'from memory')],
    }),
    carve.choice(at('taper.shape'), ['straight', 'hollow', 'round'], 'How the height runs down over the taper.'),
    carve.quantity(at('taper.width'), 'mm', 'Width of the brace at its ends, where it narrows.', {
      also: ['end-width'],
      ranges: [range('mm', 2, 5, 9, 'from memory')],
    }),
    height(
      'scallop.height',
      'Height left at the bottom of the scallop.',
      ['valley', 'valley-height'],
      ranges.scallopHeight,
    ),
    carve.quantity(at('scallop.depth'), 'mm', 'How much the scallop takes off the full height at its lowest place.', {
      ranges: [range('mm', 2, 6, 12, 'from memory')],
    }),
    carve.quantity(
      at('scallop.at'),
      'mm',
      'Distance along the brace, from its beginning, to the lowest place of the scallop.',
      {
        also: ['centre', 'center', 'station'],
        ranges: [range('mm', 30, 110, 350, 'from memory')],
      },
    ),
    carve.quantity(at('scallop.length'), 'mm', 'Length of the scallop along the brace.', {
      ranges: [range('mm', 40, 100, 200, 'from memory')],
    }),
    height(
      'scallop.peak-height',
      'Height of the rise between the scallop and the end of the brace.',
      ['peak'],
      ranges.peakHeight,
    ),
    carve.choice(at('scallop.ends'), ['from', 'to', 'both'], 'Which halves of the brace are scalloped.'),
    place.name(at('over'), 'part', 'The brace that this one is notched over where they cross.', {
      also: ['laps-over', 'crosses'],
    }),
    place.choice(
      at('ends'),
      ['tucked', 'free', 'butted'],
      'Whether the ends reach into the lining, stop short of it, or meet another brace.',
    ),
    place.quantity(at('gap'), 'mm', 'Distance between the end of a free brace and the lining.', {
      ranges: [
        range('mm', 0, 4.8, 10, 'larryeubanks.blogspot.com', {
          note: 'finger braces and tone bars stop short of lining',
        }),
      ],
    }),
    place.name(at('cap.wood'), 'wood', 'The wood of a cap glued on top of the brace.'),
    place.quantity(at('cap.thickness'), 'mm', 'Thickness of a cap glued on top of the brace.', {
      ranges: [range('mm', 0.5, 1.5, 4, 'from memory')],
    }),
    place.quantity(at('cap.length'), 'mm', 'Length of a cap glued on top of the brace.', {
      ranges: [range('mm', 20, 60, 500, 'from memory')],
    }),
    place.choice(at('cap.material'), ['wood', 'carbon', 'cloth'], 'What the cap is made of.'),
    carve.quantity(at('mass'), 'g', 'Mass of this brace, as weighed.', {
      where: ['build'],
      class: 'record',
      ranges: [range('g', 1, 12, 60, 'worked out from size and density')],
    }),
    place.quantity(at('density'), 'kg/m³', 'Density of this brace’s stock, as weighed.', {
      where: ['build'],
      class: 'record',
      ranges: [range('kg/m³', 340, 420, 520, 'from memory', { note: 'spruce' })],
    }),
  ];
}

export function bracePartsOf(root: string): readonly Part[] {
  return [
    part(`${root}.*.scallop`, 'A hollow carved into the brace’s height.', ['scoop']),
    part(`${root}.*.taper`, 'How the brace runs out towards its ends.', ['feather', 'runout']),
    part(`${root}.*.cap`, 'A strip glued on top of the brace.', ['lamination']),
  ];
}
