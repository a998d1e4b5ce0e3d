/** The tops of the set. Sizes are common practice for their kind; shapes and names are invented. */
import type { PointMm, SolidBrace, SolidPatch, SolidTop, WoodName } from './inputs.js';
import { symmetric, withCutaway } from './outlines.js';

const brace = (
  name: string,
  from_mm: PointMm,
  to_mm: PointMm,
  width_mm: number,
  height_mm: SolidBrace['height_mm'],
): SolidBrace => ({ name, wood: 'spruce', from_mm, to_mm, width_mm, height_mm });

const block = (
  name: string,
  wood: WoodName,
  side: SolidPatch['side'],
  x_mm: readonly [number, number],
  half: number,
  thickness_mm: number,
): SolidPatch => ({ name, wood, x_mm, y_mm: [-half, half], thickness_mm, grain_deg: 90, side });

const parlorPlaces: readonly PointMm[] = [
  [0, 0],
  [4, 44],
  [16, 84],
  [37, 120],
  [66, 147],
  [104, 161.5],
  [142, 160.5],
  [182, 143],
  [222, 119.5],
  [262, 106],
  [300, 104],
  [338, 110.5],
  [376, 117.5],
  [408, 115.5],
  [436, 100],
  [456, 72],
  [466, 38],
  [470, 0],
];

const parlor: SolidTop = {
  name: 'parlor',
  about: 'small twelve-fret parlor body 470 × 323 mm, X of even rectangular braces, one tone bar, upper bar',
  outline_mm: symmetric(parlorPlaces),
  hole_mm: { x: 318, y: 0, diameter: 90 },
  plate: { wood: 'spruce', thickness_mm: 2.6 },
  braces: [
    brace('X, bass to treble', [112, 141], [336, -98], 7, 12),
    brace('X, treble to bass', [112, -141], [336, 98], 7, 12),
    brace('tone bar', [92, -88], [52, 84], 6, 9),
    brace('upper bar', [388, -104], [388, 104], 8, 13),
  ],
  patches: [
    block('bridge plate', 'rosewood', 'under', [128, 176], 58, 2.3),
    block('bridge', 'ebony', 'over', [139, 165], 74, 8),
  ],
  edge: 'hinged',
  crossing: 'solid',
  load: { patch: 'bridge', tension_N: 620, height_mm: 11 },
};

const omPlaces: readonly PointMm[] = [
  [0, 0],
  [4, 50],
  [17, 98],
  [40, 141],
  [72, 173],
  [112, 190.5],
  [150, 188],
  [188, 165.5],
  [226, 138.5],
  [264, 122.5],
  [302, 120],
  [342, 127],
  [380, 138],
  [414, 140],
  [446, 126],
  [470, 96],
  [485, 52],
  [491, 0],
];

const omBridge: readonly SolidPatch[] = [
  block('bridge plate', 'rosewood', 'under', [127, 181], 60, 2.5),
  block('bridge', 'ebony', 'over', [140, 168], 76, 9),
];

const cutaway: SolidTop = {
  name: 'cutaway',
  about: 'OM-size body 491 × 381 mm with a rounded cutaway on the treble side, X with half-lap, tone bar, upper bar',
  outline_mm: withCutaway(omPlaces, 340, [
    [338, 126],
    [368, 133.5],
    [394, 133],
    [412, 121],
    [417, 101],
    [419, 82],
    [426, 63],
    [441, 46],
    [463, 34],
    [488, 28],
  ]),
  hole_mm: { x: 336, y: 0, diameter: 100 },
  plate: { wood: 'spruce', thickness_mm: 2.8 },
  braces: [
    brace('X, treble to bass', [106, 165], [350, -110], 8, 14),
    brace('X, bass to treble', [106, -165], [350, 110], 8, 14),
    brace('tone bar', [108, -112], [44, 112], 6.5, 10),
    brace('upper bar', [399, -124], [399, 106], 9, 14),
  ],
  patches: omBridge,
  edge: 'hinged',
  crossing: 'half-lap',
  load: { patch: 'bridge', tension_N: 730, height_mm: 12 },
};

/** Over a length of 372.5 mm: low ends, a hollow on each side of the crossing at 228 mm, where it is highest and level. */
const scallopedX: readonly PointMm[] = [
  [0, 3],
  [32, 8],
  [80, 13],
  [145, 8.5],
  [206, 15],
  [250, 15],
  [290, 11],
  [330, 10],
  [372.48, 3],
];

const scalloped: SolidTop = {
  name: 'scalloped',
  about: 'OM-size body 491 × 381 mm, X and two tone bars hollowed and tapered to 3 mm, half-lap, tapered upper bar',
  outline_mm: symmetric(omPlaces),
  hole_mm: { x: 336, y: 0, diameter: 100 },
  plate: { wood: 'spruce', thickness_mm: 2.7 },
  braces: [
    brace('X, bass to treble', [100, 168], [352, -106.3], 8, scallopedX),
    brace('X, treble to bass', [100, -168], [352, 106.3], 8, scallopedX),
    brace('first tone bar', [122, -96], [78, 116], 7, [
      [0, 3],
      [30, 9],
      [108, 6.5],
      [180, 9],
      [216.52, 3],
    ]),
    brace('second tone bar', [80, -112], [34, 90], 7, [
      [0, 3],
      [30, 8],
      [104, 6],
      [172, 8],
      [207.17, 3],
    ]),
    brace('upper bar', [402, -126], [402, 126], 10, [
      [0, 4],
      [50, 14],
      [202, 14],
      [252, 4],
    ]),
  ],
  patches: omBridge,
  edge: 'hinged',
  crossing: 'half-lap',
  load: { patch: 'bridge', tension_N: 730, height_mm: 12 },
};

const classicalPlaces: readonly PointMm[] = [
  [0, 0],
  [4, 50],
  [16, 98],
  [38, 139],
  [70, 169],
  [108, 184],
  [146, 183],
  [184, 164],
  [222, 140],
  [260, 122.5],
  [298, 117],
  [336, 122],
  [374, 134],
  [408, 140],
  [438, 132],
  [462, 106],
  [478, 62],
  [485, 0],
];

/** Struts that spread from a place beyond the hole: `y` where they pass under the saddle at x = 157. */
const struts = [-81, -54, -27, 0, 27, 54, 81].map((y, i): SolidBrace => {
  const at = (x: number): PointMm => [x, Math.round(y * (1 + (157 - x) / 330) * 100) / 100];
  return brace(`strut ${i + 1}`, at(Math.abs(y) > 60 ? 58 : 44), at(264), 5, 4.5);
});

const classical: SolidTop = {
  name: 'classical',
  about:
    'classical body 485 × 368 mm, seven fan struts, bars below and above the hole, bridge with a tie block on a thin base',
  outline_mm: symmetric(classicalPlaces),
  hole_mm: { x: 337, y: 0, diameter: 85 },
  plate: { wood: 'spruce', thickness_mm: 2.5 },
  braces: [
    ...struts,
    brace('lower bar', [279, -110], [279, 110], 7, 14),
    brace('upper bar', [393, -128], [393, 128], 7, 14),
  ],
  patches: [
    block('bridge base', 'rosewood', 'over', [143, 171], 95, 3.5),
    block('tie block', 'rosewood', 'over', [143, 171], 41, 5.5),
  ],
  edge: 'hinged',
  crossing: 'half-lap',
  load: { patch: 'tie block', tension_N: 400, height_mm: 11 },
};

export const solidTops: readonly SolidTop[] = [
  parlor,
  cutaway,
  scalloped,
  classical,
  { ...parlor, name: 'parlor, clamped', about: `${parlor.about}; edge clamped`, edge: 'clamped' },
  {
    ...scalloped,
    name: 'scalloped, graduated',
    about: `${scalloped.about}; plate thinner towards the outline, edge free in plane`,
    plate: { wood: 'spruce', thickness_mm: 2.9, taper: { edge_mm: 2.3, width_mm: 60 } },
    edge: 'hinged, free in plane',
  },
];
