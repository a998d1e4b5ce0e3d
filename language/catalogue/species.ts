/** What the species library says of a wood. */
import { entries, part, range } from './entry.js';
import type { Part, Property } from './property.js';

const species = entries({ where: ['species'], class: 'record' });

const ELASTIC_RATIOS: readonly (readonly [
  name: string,
  sentence: string,
  low: number,
  typical: number,
  high: number,
])[] = [
  ['ET', 'Young’s modulus tangential to the rings, over the one along the grain.', 0.01, 0.055, 0.15],
  ['ER', 'Young’s modulus across the rings (radial), over the one along the grain.', 0.03, 0.1, 0.25],
  [
    'GLR',
    'Shear modulus in the plane along the grain and across the rings, over the modulus along the grain.',
    0.03,
    0.08,
    0.25,
  ],
  [
    'GLT',
    'Shear modulus in the plane along the grain and tangential to the rings, over the modulus along the grain.',
    0.02,
    0.07,
    0.22,
  ],
  [
    'GRT',
    'Shear modulus in the plane across the grain (rolling shear), over the modulus along the grain.',
    0.002,
    0.012,
    0.05,
  ],
];

const POISSON: readonly (readonly [name: string, sentence: string])[] = [
  ['LR', 'Poisson’s ratio: contraction across the rings over extension along the grain.'],
  ['LT', 'Poisson’s ratio: contraction tangential to the rings over extension along the grain.'],
  ['RT', 'Poisson’s ratio: contraction tangential to the rings over extension across them.'],
];

export const SPECIES_PROPERTIES: readonly Property[] = [
  species.text('latin', 'Botanical name, genus and species.', { also: ['botanical'] }),
  species.list('also', '', 'Other names the wood goes by.', { also: ['aliases', 'other-names'] }),
  species.choice('kind', ['softwood', 'hardwood'], 'Whether the tree is a conifer or a broad-leaved tree.', {
    also: ['type'],
  }),
  species.ratio(
    'specific-gravity',
    '',
    'Ovendry mass over the mass of the same volume of water; `basis` says at which moisture the volume was taken.',
    {
      also: ['sg'],
      ranges: [range('', 0.1, 0.5, 1.2, 'USDA Wood Handbook FPL-GTR-282, Tables 5-3a and 5-5a; bounds from memory')],
    },
  ),
  species.choice(
    'basis',
    ['at-12-percent', 'green'],
    'Whether the volume of `specific-gravity` was taken at 12 % moisture content or green.',
  ),
  species.quantity(
    'density',
    'kg/m³',
    'Density at the moisture content named, where specific gravity is not tabulated.',
    {
      ranges: [range('kg/m³', 250, 600, 1300, 'from memory')],
    },
  ),
  species.quantity(
    'bending-modulus',
    'GPa',
    'Modulus from a bending test at 12 % moisture content; the modulus along the grain is taken as 1.10 times this.',
    {
      also: ['moe', 'modulus-of-elasticity'],
      ranges: [range('GPa', 4, 10.8, 22, 'USDA Wood Handbook FPL-GTR-282, Tables 5-3a and 5-5a; bounds from memory')],
    },
  ),
  species.quantity(
    'green-bending-modulus',
    'GPa',
    'Modulus from a bending test on green wood, used to correct for moisture.',
    {
      ranges: [range('GPa', 3, 9, 20, 'USDA Wood Handbook FPL-GTR-282, Tables 5-3a and 5-5a; bounds from memory')],
    },
  ),
  species.quantity(
    'bending-strength',
    'MPa',
    'Modulus of rupture at 12 % moisture content; a design aid, never a promise of safety.',
    {
      also: ['mor', 'modulus-of-rupture'],
      ranges: [range('MPa', 40, 80, 220, 'USDA Wood Handbook FPL-GTR-282, Tables 5-3a and 5-5a; bounds from memory')],
    },
  ),
  species.quantity('hardness', 'N', 'Side hardness at 12 % moisture content.', {
    also: ['janka', 'side-hardness'],
    ranges: [range('N', 800, 3500, 18_000, 'USDA Wood Handbook FPL-GTR-282, Tables 5-3a and 5-5a; bounds from memory')],
  }),
  ...ELASTIC_RATIOS.map(([name, sentence, low, typical, high]) =>
    species.ratio(`ratio.${name}`, '', sentence, {
      ranges: [range('', low, typical, high, 'USDA Wood Handbook FPL-GTR-282, Table 5-1; bounds from memory')],
    }),
  ),
  ...POISSON.map(([name, sentence]) =>
    species.ratio(`poisson.${name}`, '', sentence, {
      ranges: [range('', 0.2, 0.4, 0.95, 'USDA Wood Handbook FPL-GTR-282, Table 5-2; bounds from memory')],
    }),
  ),
  species.ratio(
    'shrinkage.radial',
    '',
    'Fraction by which width across the rings changes for each 1 %MC, between 6 and 14 %MC.',
    {
      ranges: [range('', 0.0008, 0.0016, 0.003, 'USDA Wood Handbook FPL-GTR-190, Table 13-5; bounds from memory')],
    },
  ),
  species.ratio(
    'shrinkage.tangential',
    '',
    'Fraction by which width along the rings changes for each 1 %MC, between 6 and 14 %MC.',
    {
      ranges: [range('', 0.0012, 0.0026, 0.0045, 'USDA Wood Handbook FPL-GTR-190, Table 13-5; bounds from memory')],
    },
  ),
  species.ratio('total-shrinkage.radial', '%', 'Shrinkage across the rings from green to ovendry.', {
    ranges: [range('%', 1.5, 4, 9, 'USDA Wood Handbook FPL-GTR-190, Tables 4-3 and 4-4; bounds from memory')],
  }),
  species.ratio('total-shrinkage.tangential', '%', 'Shrinkage along the rings from green to ovendry.', {
    ranges: [range('%', 3, 7, 14, 'USDA Wood Handbook FPL-GTR-190, Tables 4-3 and 4-4; bounds from memory')],
  }),
  species.ratio('loss', '', 'Loss tangent along the grain.', {
    ranges: [range('', 0.004, 0.008, 0.02, 'from memory')],
  }),
  species.quantity('moisture', '%MC', 'Moisture content the figures hold at.', {
    ranges: [range('%MC', 0, 12, 30, 'USDA Wood Handbook FPL-GTR-282')],
  }),
  species.quantity(
    'turning-point',
    '%MC',
    'Moisture content at which strength begins to rise as the wood dries (Mp in the Wood Handbook).',
    {
      ranges: [range('%MC', 20, 25, 30, 'USDA Wood Handbook FPL-GTR-282, Table 5-13')],
    },
  ),
  species.text('dust', 'What its dust can do to a person.', { also: ['health'] }),
  species.text('trade', 'What is known of rules on its trade, with the date it was looked up.', { also: ['cites'] }),
  species.text('uses', 'What guitar makers use it for.', { also: ['use'] }),
];

export const SPECIES_PARTS: readonly Part[] = [
  part('ratio', 'Elastic moduli over the modulus along the grain.', ['ratios', 'elastic-ratios']),
  part('poisson', 'Poisson’s ratios.', ['poissons-ratio']),
  part('shrinkage', 'Change of width for each 1 %MC.', ['movement']),
  part('total-shrinkage', 'Shrinkage from green to ovendry.', []),
];
