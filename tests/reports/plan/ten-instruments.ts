/** Ten instruments of an invented shop, one of each kind a plan has to cope with, each with the lengths it is made to (mm). */
import { shopOf, type TestShop } from '../../recipes/shop-of.js';

export interface Made {
  readonly name: string;
  readonly kind: string;
  readonly form: string;
  readonly length: number;
  /** Width and station of lower bout, waist, upper bout. */
  readonly bouts: readonly (readonly [width: number, station: number])[];
  readonly depth: readonly [tail: number, neck: number];
  readonly scale: number;
  readonly joinFret: number;
  readonly frets: number;
  readonly hole: number;
  readonly holeStation: number;
  readonly nut: number;
  readonly twelfth: number;
  readonly bridge: readonly [across: number, along: number];
  readonly plate: readonly [across: number, along: number];
  readonly spread: number;
  readonly strings: number;
  /** What else is said of it. */
  readonly more?: string;
}

const OM: Omit<Made, 'name'> = {
  ...{ kind: 'steel-string', form: 'om', length: 496, depth: [105, 86], scale: 645, joinFret: 14, frets: 20 },
  ...{
    bouts: [
      [388, 114],
      [246, 295],
      [292, 425],
    ],
    hole: 101,
    holeStation: 338,
    nut: 44.5,
    twelfth: 56,
  },
  ...{ bridge: [153, 37], plate: [130, 38], spread: 57, strings: 6 },
};

export const TEN: readonly Made[] = [
  { name: 'om', ...OM },
  { name: 'venetian', ...OM, more: 'cutaway { kind: venetian  depth: 68 mm  station: 378 mm }' },
  { name: 'florentine', ...OM, more: 'cutaway { kind: florentine  depth: 62 mm  station: 384 mm }' },
  {
    ...OM,
    name: 'dread',
    form: 'dreadnought',
    length: 508,
    bouts: [
      [397, 120],
      [273, 300],
      [292, 430],
    ],
    depth: [124, 99],
  },
  {
    ...OM,
    name: 'jumbo',
    form: 'jumbo',
    length: 521,
    bouts: [
      [432, 120],
      [265, 305],
      [318, 440],
    ],
    hole: 103,
    holeStation: 352,
  },
  {
    ...OM,
    name: 'parlor',
    form: 'parlor',
    length: 482,
    bouts: [
      [343, 110],
      [229, 285],
      [254, 412],
    ],
    depth: [102, 83],
    scale: 622.3,
    joinFret: 12,
    frets: 19,
    hole: 92,
    holeStation: 332,
    nut: 46,
    twelfth: 57,
    bridge: [146, 27],
    plate: [110, 30],
    more: 'headstock.kind: slotted',
  },
  {
    ...OM,
    name: 'small',
    form: '00',
    length: 489,
    bouts: [
      [362, 112],
      [238, 290],
      [270, 418],
    ],
    scale: 632.5,
    joinFret: 12,
  },
  {
    ...OM,
    name: 'twelve',
    kind: 'steel-string',
    form: 'dreadnought',
    length: 508,
    bouts: [
      [397, 120],
      [273, 300],
      [292, 430],
    ],
    nut: 47.6,
    twelfth: 58.5,
    spread: 59,
    strings: 12,
  },
  {
    ...OM,
    name: 'nylon',
    kind: 'classical',
    form: 'classical',
    length: 488,
    bouts: [
      [370, 118],
      [241, 292],
      [284, 415],
    ],
    depth: [100, 94],
    scale: 650,
    joinFret: 12,
    frets: 19,
    hole: 86,
    holeStation: 336,
    nut: 52,
    twelfth: 62,
    bridge: [190, 28],
    plate: [180, 40],
    spread: 58,
    more: 'bridge.kind: tie-block',
  },
  {
    ...OM,
    name: 'baritone',
    form: 'jumbo',
    length: 521,
    bouts: [
      [420, 120],
      [262, 305],
      [310, 440],
    ],
    scale: 700,
    frets: 21,
    holeStation: 352,
  },
];

export function shopOfTen(): TestShop {
  return shopOf(...TEN.map(textOf), SETS);
}

const SETS = `strings six { gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in  tuning: E4, B3, G3, D3, A2, E2 }
strings twelve { gauges: .010 in, .010 in, .014 in, .014 in, .023 in, .009 in, .030 in, .012 in, .039 in, .018 in, .047 in, .027 in  tuning: E4, E4, B3, B3, G3, G4, D3, D4, A2, A3, E2, E3 }`;

function textOf(made: Made): string {
  const [lower, waist, upper] = made.bouts as readonly [
    readonly [number, number],
    readonly [number, number],
    readonly [number, number],
  ];
  const bout = (name: string, [width, station]: readonly [number, number]) =>
    `${name} { width: ${width} mm  station: ${station} mm }`;
  return `model ${made.name}-body {
  kind: ${made.kind}
  body { length: ${made.length} mm  ${bout('lower-bout', lower)}  ${bout('waist', waist)}  ${bout('upper-bout', upper)}
    depth { tail: ${made.depth[0]} mm  neck: ${made.depth[1]} mm }  top-radius: 8500 mm  back-radius: 4600 mm }
  scale: ${made.scale} mm
  soundhole { diameter: ${made.hole} mm  station: ${made.holeStation} mm }
  rosette { inner-diameter: ${made.hole + 8} mm  width: 12 mm }
  sides.thickness: 2.1 mm  lining { width: 7 mm  height: 16 mm }  neck-block { length: 55 mm  width: 75 mm }  tail-block { thickness: 19 mm  width: 70 mm }
  bracing {
    x-bass { from: (69 mm, -160 mm)  to: (385 mm, 120 mm)  width: 7.9 mm  height: 15.9 mm  profile: parabolic  end-height: 3 mm  taper.length: 60 mm  scallop { at: 90 mm  height: 8 mm  length: 100 mm } }
    x-treble { from: (69 mm, 160 mm)  to: (385 mm, -120 mm)  width: 7.9 mm  height: 15.9 mm  profile: parabolic  end-height: 3 mm  taper.length: 60 mm }
    tone-bar-1 { from: (150 mm, 60 mm)  to: (92 mm, -110 mm)  width: 6 mm  height: 11 mm  profile: triangular }
  }
  bridge { length: ${made.bridge[0]} mm  width: ${made.bridge[1]} mm  height: 9 mm  pins.distance: 13 mm  plate { length: ${made.plate[0]} mm  width: ${made.plate[1]} mm  thickness: 2.4 mm } }
  saddle { length: 76 mm  thickness: 3 mm  string-spread: ${made.spread} mm  protrusion: 3 mm }
  setup.compensation { bass: 5 mm  treble: 2.2 mm }
  neck { join-fret: ${made.joinFret}  angle: 1.2 deg  depth { fret-1: 21 mm  fret-10: 23.4 mm } }
  headstock { length: 180 mm  width: 74 mm }
  fingerboard { thickness: 6.4 mm  width.fret-12: ${made.twelfth} mm }  frets.count: ${made.frets}
  nut { width: ${made.nut} mm  thickness: 6 mm  string-spread: ${made.nut - 7} mm }
  strings: ${made.strings === 12 ? 'twelve' : 'six'}
}
recipe ${made.name} for ${made.name}-body { top { thickness: 2.8 mm  edge-thickness: 2.3 mm }  ${made.more ?? ''} }
`;
}
