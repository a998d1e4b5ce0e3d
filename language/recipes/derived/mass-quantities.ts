/** What things weigh: bridge, sides, finish, the whole box. */
import { taken } from './taken.js';
import { finishMass, sidesArea } from '../../mechanics/wood/finish-film.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import {
  backStripMass,
  bevelMass,
  hasBackStrip,
  hasHolePatch,
  holePatchMass,
  massIfThere,
  rosetteRing,
} from './glued-parts.js';
import { weighedAtBridge } from './option-masses.js';

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
    path: 'soundhole.patch.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the patch around the soundhole, inside.',
    formula: 'ρ × (girth of the hole × width + π × width²) × thickness',
    source: 'geometry and density; a ring of even width (Steiner)',
    compute: holePatchMass,
  },
  {
    path: 'back.reinforcement.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the strip inside over the back’s centre joint.',
    formula: 'ρ × length of the body × width × thickness',
    source: 'geometry and density',
    compute: backStripMass,
  },
  {
    path: 'rosette.added-mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'What the rosette weighs beyond the wood it takes the place of.',
    formula: 'm − ρ × area of the channel × its depth',
    source: 'geometry and density',
    compute: (ask) => rosetteRing(ask)?.more ?? ask.number('rosette.mass'),
  },
  {
    path: 'arm-bevel.mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass the arm bevel adds to the rim, where it was not weighed.',
    formula: 'ρ × depth × width × length / 2',
    source:
      'geometry: the block behind the bevel; what it takes off top and side its veneer brings back: common practice',
    compute: bevelMass,
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
    formula: 'top + braces + bridge plate + patch around the soundhole',
    source: 'sum',
    compute: (ask) =>
      ask.number('top.mass') +
      ask.number('bracing.mass') +
      taken(ask, 'bridge.plate.mass') +
      massIfThere(ask, 'soundhole.patch', hasHolePatch(ask)),
  },
  {
    path: 'back.braced-mass',
    dimension: DIMENSION.mass,
    unit: 'g',
    sentence: 'Mass of the back with its braces and the strip over its joint.',
    formula: 'back + braces + strip over the joint',
    source: 'sum',
    compute: (ask) =>
      ask.number('back.mass') +
      ask.number('back-bracing.mass') +
      massIfThere(ask, 'back.reinforcement', hasBackStrip(ask)),
  },
];

/** A bridge's wings, bevels and slots leave about two thirds of the block it is cut from. (common practice) */
const BRIDGE_FILL = 0.65;

function movingMass(ask: Ask): number {
  let sum = ask.number('bridge.mass');
  for (const path of ['saddle.mass', 'bridge.pins.mass', 'bridge.plate.mass']) sum += taken(ask, path);
  for (const path of weighedAtBridge(ask)) sum += taken(ask, path);
  return sum;
}
