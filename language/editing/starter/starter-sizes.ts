/** The numbers of the starter shop, in millimetres and in inches, for a steel-string and for a classical guitar. */

/** Lines of the language, ready to be set into its blocks. */
export interface Sizes {
  readonly tolerance: string;
  readonly strings: readonly string[];
  /** A species of the library. */
  readonly top: string;
  readonly blank: readonly string[];
  readonly moreBlank: readonly string[];
  readonly braces: string;
  readonly body: readonly string[];
  readonly bracing: readonly string[];
  readonly backBracing: readonly string[];
  readonly bridge: readonly string[];
  readonly rest: readonly string[];
  readonly thickness: string;
  readonly thinner: string;
  readonly mass: string;
}

export function sizesOf(kind: 'steel-string' | 'classical', units: 'metric' | 'inch'): Sizes {
  /** A length given in mm, as a maker of either system writes it. */
  const mm = (length: number, decimals = 3) =>
    units === 'metric' ? `${length} mm` : `${Number((length / 25.4).toFixed(decimals))} in`;
  const grams = (mass: number) => (units === 'metric' ? `${mass} g` : `${Number((mass / 28.3495).toFixed(2))} oz`);
  return kind === 'classical' ? classical(mm, grams) : steelString(mm, grams);
}

type Length = (mm: number, decimals?: number) => string;
type Mass = (grams: number) => string;

/** A straight brace from one place to another, both as station and offset, mm. */
type Brace = readonly [name: string, from: readonly [number, number], to: readonly [number, number], shape: string];

function braces(mm: Length, list: readonly Brace[]): readonly string[] {
  const place = ([station, offset]: readonly [number, number]) => `(${mm(station, 2)}, ${mm(offset, 2)})`;
  return list.map(([name, from, to, shape]) => `${name} { from: ${place(from)}   to: ${place(to)}   ${shape} }`);
}

function steelString(mm: Length, grams: Mass): Sizes {
  const leg = `width: ${mm(8)}   height: ${mm(16)}   profile: parabolic   end-height: ${mm(3)}   taper.length: ${mm(60, 2)}`;
  const bar = `width: ${mm(6)}   height: ${mm(10)}   profile: triangular   end-height: ${mm(2)}   taper.length: ${mm(45, 2)}`;
  const across = `width: ${mm(8)}   height: ${mm(14)}   profile: parabolic`;
  const wide = `width: ${mm(16)}   height: ${mm(9)}   profile: parabolic`;
  return {
    tolerance: `thickness: ${mm(0.05)}   mass: ${grams(1)}`,
    strings: [
      'kind: steel',
      'material: phosphor-bronze',
      'tuning: E4, B3, G3, D3, A2, E2',
      'gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in',
    ],
    top: 'sitka-spruce',
    blank: [
      `blank: ${mm(560, 2)} x ${mm(212, 2)} x ${mm(4.4)}`,
      `mass: ${grams(214)}`,
      'tap { along: 75.5 Hz   across: 120 Hz   twist: 52 Hz }',
    ],
    moreBlank: [
      `blank: ${mm(560, 2)} x ${mm(212, 2)} x ${mm(4.4)}`,
      `mass: ${grams(221)}`,
      'tap { along: 74 Hz   across: 122 Hz   twist: 53 Hz }',
    ],
    braces: 'density: 420 kg/m³',
    body: [
      'form: om',
      'body {',
      `  length: ${mm(489, 2)}`,
      `  lower-bout { width: ${mm(381, 2)}   station: ${mm(114, 2)} }`,
      `  waist { width: ${mm(241, 2)}   station: ${mm(292, 2)} }`,
      `  upper-bout { width: ${mm(286, 2)}   station: ${mm(420, 2)} }`,
      `  depth { tail: ${mm(105)}   neck: ${mm(86)} }`,
      '  top-radius: 28 ft',
      '  back-radius: 15 ft',
      '}',
      `scale: ${mm(645, 2)}`,
      `soundhole { diameter: ${mm(101, 2)}   station: ${mm(335, 2)} }`,
    ],
    bracing: [
      'wood: brace-stock',
      ...braces(mm, [
        ['x-bass', [69, -174], [389, 130], leg],
        ['x-treble', [69, 174], [389, -130], leg],
        ['tone-bar-1', [150, 70], [92, -110], bar],
        ['tone-bar-2', [95, 72], [48, -66], bar],
        ['upper-transverse', [412, -137], [412, 137], `width: ${mm(14)}   height: ${mm(12)}   profile: rectangular`],
      ]),
    ],
    backBracing: [
      'wood: brace-stock',
      ...braces(mm, [
        ['back-1', [410, -140], [410, 140], across],
        ['back-2', [308, -119], [308, 119], across],
        ['back-3', [204, -144], [204, 144], wide],
        ['back-4', [104, -186], [104, 186], wide],
      ]),
    ],
    bridge: [
      `back { wood: black-walnut   thickness: ${mm(2.5)} }`,
      `sides { wood: black-walnut   thickness: ${mm(2.1)} }`,
      'bridge {',
      '  kind: pin',
      `  length: ${mm(153, 2)}   width: ${mm(37, 2)}   height: ${mm(9.2)}`,
      `  mass: ${grams(27)}   // weigh yours`,
      `  pins { mass: ${grams(4)}   distance: ${mm(13)} }`,
      '}',
      `saddle { protrusion: ${mm(3.3)}   mass: ${grams(3)} }`,
    ],
    rest: [
      'neck { join-fret: 14 }',
      `nut { width: ${mm(44.5)} }`,
      `setup { action { bass: ${mm(2.4)}   treble: ${mm(1.8)} } }`,
      `finish { system: nitrocellulose   film: ${mm(0.12, 4)} }`,
    ],
    thickness: mm(2.8),
    thinner: mm(2.65),
    mass: grams(170),
  };
}

function classical(mm: Length, grams: Mass): Sizes {
  const strut = `width: ${mm(5)}   height: ${mm(4)}   profile: triangular   end-height: ${mm(1)}   taper.length: ${mm(40, 2)}`;
  const bar = `width: ${mm(7)}   height: ${mm(16)}   profile: parabolic   end-height: ${mm(4)}   taper.length: ${mm(40, 2)}`;
  const across = `width: ${mm(8)}   height: ${mm(14)}   profile: parabolic`;
  return {
    tolerance: `thickness: ${mm(0.05)}   mass: ${grams(1)}`,
    strings: [
      'kind: nylon',
      'material: silver-plated-copper',
      'tuning: E4, B3, G3, D3, A2, E2',
      'gauges: .028 in, .032 in, .040 in, .029 in, .035 in, .043 in',
    ],
    top: 'norway-spruce',
    blank: [
      `blank: ${mm(550, 2)} x ${mm(200, 2)} x ${mm(4.4)}`,
      `mass: ${grams(198)}`,
      'tap { along: 82 Hz   across: 138 Hz   twist: 56 Hz }',
    ],
    moreBlank: [
      `blank: ${mm(550, 2)} x ${mm(200, 2)} x ${mm(4.4)}`,
      `mass: ${grams(204)}`,
      'tap { along: 80 Hz   across: 140 Hz   twist: 57 Hz }',
    ],
    braces: 'density: 420 kg/m³',
    body: [
      'form: classical-body',
      'body {',
      `  length: ${mm(485, 2)}`,
      `  lower-bout { width: ${mm(370, 2)}   station: ${mm(114, 2)} }`,
      `  waist { width: ${mm(240, 2)}   station: ${mm(290, 2)} }`,
      `  upper-bout { width: ${mm(280, 2)}   station: ${mm(415, 2)} }`,
      `  depth { tail: ${mm(100)}   neck: ${mm(94)} }`,
      '  top-radius: 25 ft',
      '  back-radius: 15 ft',
      '}',
      `scale: ${mm(650, 2)}`,
      `soundhole { diameter: ${mm(85, 2)}   station: ${mm(336, 2)} }`,
    ],
    bracing: [
      'pattern: fan',
      'wood: brace-stock',
      ...braces(mm, [
        ['fan-1', [60, -95], [255, -62], strut],
        ['fan-2', [45, -48], [258, -30], strut],
        ['fan-3', [40, 0], [260, 0], strut],
        ['fan-4', [45, 48], [258, 30], strut],
        ['fan-5', [60, 95], [255, 62], strut],
        ['transverse-1', [275, -117], [275, 117], bar],
        ['transverse-2', [396, -134], [396, 134], bar],
      ]),
    ],
    backBracing: [
      'wood: brace-stock',
      ...braces(mm, [
        ['back-1', [400, -136], [400, 136], across],
        ['back-2', [285, -117], [285, 117], across],
        ['back-3', [130, -181], [130, 181], across],
      ]),
    ],
    bridge: [
      `back { wood: black-walnut   thickness: ${mm(2.4)} }`,
      `sides { wood: black-walnut   thickness: ${mm(2)} }`,
      'bridge {',
      '  kind: tie-block',
      `  length: ${mm(190, 2)}   width: ${mm(28, 2)}   height: ${mm(8)}`,
      `  mass: ${grams(19)}   // weigh yours`,
      `  tie-height: ${mm(4.5)}   tie-distance: ${mm(9)}`,
      '}',
      `saddle { protrusion: ${mm(3)}   mass: ${grams(2)} }`,
    ],
    rest: [
      'neck { join-fret: 12 }',
      `nut { width: ${mm(52)} }`,
      `setup { action { bass: ${mm(4)}   treble: ${mm(3)} } }`,
      'finish { system: french-polish   film: 0.03 mm }',
    ],
    thickness: mm(2.5),
    thinner: mm(2.35),
    mass: grams(150),
  };
}
