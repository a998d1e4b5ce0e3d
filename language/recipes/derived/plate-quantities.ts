/** Top and back as plates: area, mass, bending stiffness, sag in the shop's rig, movement with the weather. */
import { taken } from './taken.js';
import { equilibriumMoisture, movement } from '../../mechanics/wood/moisture.js';
import { plankDeflection } from '../../mechanics/wood/plank.js';
import { plateBending } from '../../mechanics/wood/orthotropic-plate.js';
import { domeRise } from '../../mechanics/wood/dome-movement.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { thicknessesOf } from './plate-thickness.js';
import { areaOfSoundhole } from './layout/soundhole.js';

type Plate = 'top' | 'back';

const PLATE_FORMULA = 'D = Q·h³/12, Q = E/(1 − ν_LR·ν_RL), ν_RL = ν_LR·E_R/E_L; h the cube-mean thickness';
const PLATE_SOURCE = 'R. M. Jones, Mechanics of Composite Materials: orthotropic plate';

export const PLATE_QUANTITIES: readonly DerivedQuantity[] = (['top', 'back'] as const).flatMap(quantitiesOf);

function quantitiesOf(plate: Plate): readonly DerivedQuantity[] {
  return [
    {
      path: `${plate}.area`,
      dimension: DIMENSION.area,
      unit: 'cm²',
      sentence: `Area of the ${plate} cut to outline${plate === 'top' ? ', less the soundhole' : ''}.`,
      formula: plate === 'top' ? 'A = ∫ 2b dx − π·d²/4' : 'A = ∫ 2b dx',
      source: 'geometry',
      compute: (ask) => ask.number('body.top-area') - (plate === 'top' ? areaOfSoundhole(ask) : 0),
    },
    {
      path: `${plate}.mass`,
      dimension: DIMENSION.mass,
      unit: 'g',
      voicing: true,
      sentence: `Mass of the bare ${plate}, cut to outline.`,
      formula: 'm = ρ·A·h, h the mean thickness',
      source: 'geometry and density',
      compute: (ask) =>
        ask.number(`${plate}.wood.density`) * ask.number(`${plate}.area`) * thicknessesOf(ask, plate).mean,
    },
    {
      path: `${plate}.stiffness.along`,
      dimension: DIMENSION.plateStiffness,
      unit: 'N·m',
      voicing: true,
      sentence: `Bending stiffness of the bare ${plate} along the grain, per width.`,
      formula: PLATE_FORMULA,
      source: PLATE_SOURCE,
      compute: (ask) => bending(ask, plate).along,
    },
    {
      path: `${plate}.stiffness.across`,
      dimension: DIMENSION.plateStiffness,
      unit: 'N·m',
      voicing: true,
      sentence: `Bending stiffness of the bare ${plate} across the grain, per width.`,
      formula: PLATE_FORMULA,
      source: PLATE_SOURCE,
      compute: (ask) => bending(ask, plate).across,
    },
    {
      path: `${plate}.stiffness.twist`,
      dimension: DIMENSION.plateStiffness,
      unit: 'N·m',
      sentence: `Resistance of the bare ${plate} to twist, per width.`,
      formula: 'D66 = G·h³/12',
      source: PLATE_SOURCE,
      compute: (ask) => bending(ask, plate).twist,
    },
    {
      path: `${plate}.sag`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: `How far the bare ${plate} would sag along the grain in the rig named by ${plate}.rig. Compare only within one rig.`,
      formula: 'y = F·a²·b²/(3·E·I·L) under the load; centre load F·L³/(48·E·I)',
      source: 'simple beam',
      compute: (ask) => sag(ask, plate),
    },
    {
      path: `${plate}.dome-rise`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: `Rise of the ${plate}’s dome across the lower bout.`,
      formula: 'R − √(R² − w²/4)',
      source: 'geometry of a sphere',
      compute: (ask) =>
        ask.word(`body.${plate}-radius`) === 'flat'
          ? 0
          : domeRise(ask.number(`body.${plate}-radius`), ask.number('body.lower-bout.width')),
    },
    {
      path: `${plate}.dry-shrinkage`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: `How much the ${plate} would narrow across the lower bout, unrestrained, from the shop’s climate to 30 %RH.`,
      formula: 'ΔW = W·C·ΔM',
      source: 'Wood Handbook FPL-GTR-190 (2010), Table 13-5, Eq. 13-2; Eq. 4-5 for the moisture contents',
      compute: (ask) => dryShrinkage(ask, plate),
    },
  ];
}

function bending(ask: Ask, plate: Plate) {
  const elasticity = {
    along: ask.number(`${plate}.wood.modulus.along`),
    across: ask.number(`${plate}.wood.modulus.across`),
    shear: ask.number(`${plate}.wood.modulus.twist`),
    poissonLR: ask.number(`${plate}.wood.poisson`),
  };
  return plateBending(elasticity, thicknessesOf(ask, plate).stiff);
}

const STANDARD_GRAVITY = 9.80665;

function sag(ask: Ask, plate: Plate): number {
  const rig = `${plate}.rig`;
  const across = ask.word(`${rig}.direction`) === 'across';
  const span = ask.number(`${rig}.span`);
  const test = {
    span,
    load: ask.number(`${rig}.load`) * STANDARD_GRAVITY,
    loadAt: span / 2 + taken(ask, `${rig}.at`, 'deflection.rig.at'),
    width: ask.number(`${rig}.width`),
    thickness: ask.number(`${plate}.thickness`),
  };
  return plankDeflection(test, ask.number(`${plate}.wood.modulus.${across ? 'across' : 'along'}`));
}

function dryShrinkage(ask: Ask, plate: Plate): number {
  const coefficient = ask.number(`${plate}.wood.movement`);
  const here = ask.number(`${plate}.wood.moisture-in-shop`);
  const dry = equilibriumMoisture(20, 0.3);
  return -movement(ask.number('body.lower-bout.width'), coefficient, here, dry);
}
