/** The box: outline, air and the resonance of that air between rigid walls. */
import { taken } from './taken.js';
import { rigidAirFrequency } from '../../mechanics/body/air.js';
import { airVolume } from '../../mechanics/body/air-space.js';
import { bodyArea, bodyPerimeter } from '../../mechanics/body/cutaway-outline.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { openingsOf } from './layout/openings.js';
import { RIGID_AIR_ERROR } from './model-errors.js';
import { bodyOf } from './layout/outline.js';

export const BODY_QUANTITIES: readonly DerivedQuantity[] = [
  {
    path: 'body.top-area',
    dimension: DIMENSION.area,
    unit: 'cm²',
    sentence: 'Area inside the outline of the body.',
    formula: '∫ 2·b(x) dx; b(x)² = x·(L − x)·q(x), q a natural cubic spline through the bouts and the waist',
    source: 'geometry',
    compute: (ask) => bodyArea(bodyOf(ask)),
  },
  {
    path: 'body.perimeter',
    dimension: DIMENSION.length,
    unit: 'mm',
    sentence: 'Length of the outline of the body, once round.',
    formula: 'arc length of the outline',
    source: 'geometry',
    compute: (ask) => bodyPerimeter(bodyOf(ask)),
  },
  {
    path: 'body.outer-volume',
    dimension: DIMENSION.volume,
    unit: 'L',
    sentence: 'Room inside the outline and between the outer faces of top and back.',
    formula: '∫ depth(x)·2b dx, depth even from tail to neck, plus the domes',
    source: 'geometry',
    compute: (ask) =>
      airVolume({
        body: bodyOf(ask),
        tailDepth: ask.number('body.depth.tail'),
        neckDepth: ask.number('body.depth.neck'),
        topRadius: ask.numberIf('body.top-radius'),
        backRadius: ask.numberIf('body.back-radius'),
      }),
  },
  {
    path: 'body.volume',
    dimension: DIMENSION.volume,
    unit: 'L',
    voicing: true,
    sentence: 'Air inside the body.',
    formula: 'V = outer volume − (thickness of top + back)·A; blocks and braces not taken off',
    source: 'geometry',
    compute: volume,
  },
  {
    path: 'resonance.rigid-air',
    dimension: DIMENSION.frequency,
    unit: 'Hz',
    voicing: true,
    sentence:
      'Resonance of the air if the box were rigid; on the finished guitar the plates bring it 15 to 25 % lower.',
    formula: 'f = (c/2π)·√(S/(L′·V)), L′ = thickness + 16r/3π',
    source: 'Helmholtz; end corrections after Fletcher & Rossing, The Physics of Musical Instruments (from memory)',
    compute: (ask) => {
      ask.doubt(RIGID_AIR_ERROR);
      return rigidAir(ask);
    },
  },
];

function volume(ask: Ask): number {
  const plates = taken(ask, 'top.thickness') + taken(ask, 'back.thickness');
  const box = ask.number('body.outer-volume') - plates * ask.number('body.top-area');
  return box * (1 + taken(ask, 'cutaway.volume-change'));
}

function rigidAir(ask: Ask): number {
  const kelvin = taken(ask, 'shop.climate.temperature');
  return rigidAirFrequency({ volume: ask.number('body.volume'), openings: openingsOf(ask), celsius: kelvin - 273.15 });
}
