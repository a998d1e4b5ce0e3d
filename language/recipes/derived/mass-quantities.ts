/** What things weigh: bridge, sides, finish, the whole box. */
import { taken } from './taken.js';
import { finishMass, sidesArea } from '../../mechanics/wood/finish-film.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { AT_BRIDGE } from './option-masses.js';

export const MASS_QUANTITIES: readonly DerivedQuantity[] = [
  {
    path: 'bridge.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the bare bridge, where it was not weighed.',
    formula: 'ρ × length × width × height × 0.65',
    source: 'geometry; 0.65 for wings, bevels and slots: common practice',
    compute: (ask) => {
      ask.assume('the bridge is taken to fill 0.65 of its block');
      return (
        ask.number('bridge.wood.density') *
        ask.number('bridge.length') *
        ask.number('bridge.width') *
        ask.number('bridge.height') *
        BRIDGE_FILL
      );
    },
  },
  {
    path: 'bridge.plate.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the bridge plate, where it was not weighed.',
    formula: 'ρ × length × width × thickness',
    source: 'geometry and density',
    compute: (ask) =>
      ask.number('bridge.plate.wood.density') *
      ask.number('bridge.plate.length') *
      ask.number('bridge.plate.width') *
      ask.number('bridge.plate.thickness'),
  },
  {
    path: 'bridge.moving-mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    voicing: true,
    sentence: 'All that the top carries at the bridge: bridge, saddle, pins, bridge plate, pickups there.',
    formula: 'Σ m of what is known',
    source: 'sum',
    compute: movingMass,
  },
  {
    path: 'sides.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the bare sides.',
    formula: 'ρ × outline length × mean depth × thickness',
    source: 'geometry and density',
    compute: (ask) =>
      ask.number('sides.wood.density') *
      ask.number('sides.thickness') *
      sidesArea(ask.number('body.perimeter'), ask.number('body.depth.tail'), ask.number('body.depth.neck')),
  },
  {
    path: 'finish.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the dry finish on the body.',
    formula: 'area of top, back and sides × film × density of the film',
    source: 'geometry; film 1200 kg/m³ where not stated: common practice',
    compute: (ask) => {
      const sides = sidesArea(
        ask.number('body.perimeter'),
        ask.number('body.depth.tail'),
        ask.number('body.depth.neck'),
      );
      const plates = ask.number('top.area') + ask.number('body.top-area');
      return finishMass(sides + plates, ask.number('finish.film'), ask.numberIf('finish.density'));
    },
  },
  {
    path: 'finish.top-mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    voicing: true,
    sentence: 'Mass of the dry finish on the top, where it was not weighed: the top carries it in every mode.',
    formula: 'area of the top × film × density of the film',
    source: 'geometry; film 1200 kg/m³ where not stated: common practice',
    compute: (ask) =>
      finishMass(
        ask.number('top.area'),
        ask.numberIf('finish.top-film') ?? ask.number('finish.film'),
        ask.numberIf('finish.density'),
      ),
  },
  {
    path: 'top.braced-mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the top with its braces and bridge plate, before the bridge.',
    formula: 'top + braces + bridge plate',
    source: 'sum',
    compute: (ask) => ask.number('top.mass') + ask.number('bracing.mass') + taken(ask, 'bridge.plate.mass'),
  },
  {
    path: 'back.braced-mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the back with its braces.',
    formula: 'back + braces',
    source: 'sum',
    compute: (ask) => ask.number('back.mass') + ask.number('back-bracing.mass'),
  },
];

/** A bridge's wings, bevels and slots leave about two thirds of the block it is cut from. (common practice) */
const BRIDGE_FILL = 0.65;

function movingMass(ask: Ask): number {
  let sum = ask.number('bridge.mass');
  for (const path of ['saddle.mass', 'bridge.pins.mass', 'bridge.plate.mass']) sum += taken(ask, path);
  for (const device of ask.members('electronics')) {
    if (!AT_BRIDGE.includes(ask.word(`electronics.${device}.on`) ?? '')) continue;
    sum += taken(ask, `electronics.${device}.mass`);
  }
  return sum;
}
