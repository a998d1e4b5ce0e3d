/**
 * What the move from the shop's climate to the one it will live in does to plates, braces and domes, once they have settled.
 * Unknown until somebody says where the instrument will live.
 */
import { braceHeight } from '../../mechanics/braces/brace-height.js';
import { braceSection } from '../../mechanics/braces/sections.js';
import { type ClimateChange, climateChange } from '../../mechanics/wood/climate.js';
import { domeRiseChange, swellingCurvature } from '../../mechanics/wood/dome-movement.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { braceOf, stripAngle, stripModulus, woodPath } from './brace-quantities.js';
import { thicknessesOf } from './plate-thickness.js';
import { taken } from './taken.js';
import { shopClimate, whenGreen } from './wood-quantities.js';

type Plate = 'top' | 'back';

const HANDBOOK = 'Wood Handbook FPL-GTR-190 (2010), Table 13-5, Eq. 13-2; Eq. 4-5 for the moisture contents';
const BIMETAL =
  'two glued layers, S. Timoshenko, J. Opt. Soc. Am. 11 (1925) 233 (from memory); an upper bound, the rim giving way';

export const CLIMATE_QUANTITIES: readonly DerivedQuantity[] = [
  ...ofPlate('top', 'bracing'),
  ...ofPlate('back', 'back-bracing'),
];

function ofPlate(plate: Plate, root: string): readonly DerivedQuantity[] {
  return [
    {
      path: `${plate}.climate.width`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: `How much the ${plate} would widen across the lower bout, unrestrained, from the shop’s climate to where it will live.`,
      formula: 'ΔW = W·C·ΔM',
      source: HANDBOOK,
      compute: (ask) => changeOf(ask, plate).width,
    },
    {
      path: `${plate}.climate.mass`,
      dimension: DIMENSION.number,
      unit: '%',
      sentence: `How much heavier the ${plate} gets from the shop’s climate to where it will live.`,
      formula: '(1 + M₂)/(1 + M₁) − 1',
      source: HANDBOOK,
      compute: (ask) => changeOf(ask, plate).mass - 1,
    },
    {
      path: `${plate}.climate.stiffness`,
      dimension: DIMENSION.number,
      unit: '%',
      sentence: `How much stiffer the bare ${plate} gets along the grain, swelling and all, from the shop’s climate to where it will live.`,
      formula: 'E₂·h₂³/(E₁·h₁³) − 1; P = P12·(P12/Pg)^((12−M)/(Mp−12))',
      source: 'Wood Handbook FPL-GTR-282 (2021), Eq. 5-3; FPL-GTR-190 (2010), Table 13-5',
      compute: (ask) => changeOf(ask, plate).bending! - 1,
    },
    {
      path: `${plate}.climate.dome`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: `How far the dome of the ${plate} rises at the brace where it moves most, from the shop’s climate to where it will live.`,
      formula: 'the greatest of ℓ²·κ/8 over the braces',
      source: BIMETAL,
      compute: (ask) => {
        const members = ask.members(root);
        if (members.length === 0) return ask.missing(root);
        const rises = members.map((member) => ask.number(`${root}.${member}.climate-rise`));
        return rises.reduce((most, rise) => (Math.abs(rise) > Math.abs(most) ? rise : most));
      },
    },
    {
      path: `${root}.*.climate-rise`,
      dimension: DIMENSION.length,
      unit: 'mm',
      sentence: `How far the middle of the brace rises against its ends as the ${plate} swells across the grain, from the shop’s climate to where it will live.`,
      formula: 'ℓ²·κ/8, κ = ε·d/((1/EA_p + 1/EA_b)·(EI_p + EI_b) + d²), ε = C·ΔM·sin²θ',
      source: BIMETAL,
      compute: (ask) => riseOf(ask, root, plate),
    },
  ];
}

function changeOf(ask: Ask, plate: Plate): ClimateChange {
  const wood = `${plate}.wood`;
  const [at12, green] = whenGreen(ask, `${wood}.species`);
  const shop = shopClimate(ask);
  const home = {
    humidity: ask.number('home.humidity'),
    celsius: taken(ask, 'home.temperature') - 273.15,
  };
  return climateChange(
    {
      width: ask.number('body.lower-bout.width'),
      thickness: thicknessesOf(ask, plate).stiff,
      widthCoefficient: ask.number(`${wood}.movement`),
      thicknessCoefficient: ask.number(`${wood}.movement-through`),
      at12,
      green,
      intersection: ask.numberIf(`${wood}.species.turning-point`),
    },
    shop,
    home,
  );
}

/** The brace holds its length, the strip of plate under it does not. */
function riseOf(ask: Ask, root: string, plate: Plate): number {
  const brace = braceOf(ask, root);
  const thickness = ask.number(`${plate}.thickness`);
  const width = brace.width + 20 * thickness;
  const height = braceHeight(brace)(brace.length / 2);
  const section = braceSection(brace.profile, brace.width, height, brace.gable);
  const [plateModulus, modulus] = [
    stripModulus(ask, root, plate),
    ask.number(`${woodPath(ask, root, plate)}.modulus.along`),
  ];
  const swelling = changeOf(ask, plate).width / ask.number('body.lower-bout.width');
  const strip = {
    plateAxial: plateModulus * width * thickness,
    plateBending: (plateModulus * width * thickness ** 3) / 12,
    braceAxial: modulus * section.area,
    braceBending: modulus * section.secondMoment,
    offset: section.centroid + thickness / 2,
  };
  return domeRiseChange(brace.length, swellingCurvature(strip, swelling * Math.sin(stripAngle(ask, root, plate)) ** 2));
}
