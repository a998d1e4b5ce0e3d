/**
 * What can be worked out about a piece of wood, from the best evidence there is: a figure the maker states, then taps of
 * the blank, then a deflection test, then the species' handbook figures. All at the shop's climate.
 */
import { taken } from './taken.js';
import { TYPICAL_RATIOS, alongFromBendingModulus, guessedAcross, guessedShear } from '../../mechanics/wood/handbook.js';
import { equilibriumMoisture, moistureFactor, movementCoefficient } from '../../mechanics/wood/moisture.js';
import { modulusFromPlank } from '../../mechanics/wood/plank.js';
import {
  blankDensity,
  densityAtMoisture,
  densityFromSpecificGravity,
  modulusFromBendingTap,
  panelMerit,
  radiationRatio,
  shearFromTwistTapCorrected,
  soundSpeed,
  specificGravityAt,
} from '../../mechanics/wood/measured-wood.js';
import type { Climate } from '../../mechanics/wood/climate.js';
import { USUAL_LOSS_RATIOS } from '../../mechanics/voice/index.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { tapOf } from './tapped.js';
import type { Ask, DerivedQuantity } from '../evaluation/evaluation.js';
import { RATIO_ERRORS, READING_ERRORS } from './model-errors.js';

const HANDBOOK_MOISTURE = 0.12;

export const WOOD_QUANTITIES: readonly DerivedQuantity[] = [
  {
    path: 'density',
    dimension: DIMENSION.density,
    unit: 'kg/m³',
    sentence: 'Mass of a cubic metre of this wood.',
    formula: 'ρ = m / (L·W·h), or 1000·G·(1 + M) from the specific gravity G at moisture M',
    source: 'Wood Handbook FPL-GTR-282 (2021), Eqs. 4-13, 4-14',
    compute: density,
  },
  {
    path: 'modulus.along',
    dimension: DIMENSION.pressure,
    unit: 'GPa',
    sentence: 'Stiffness of the wood along the grain.',
    formula: 'E = 0.946·ρ·f²·L⁴/h² from the long tap; F·L³/(48·I·y) from a deflection; 1.10 × bending modulus',
    source: 'free-free beam (β·L = 4.730); simple beam; Wood Handbook FPL-GTR-282 (2021), Table 5-1 note, Eq. 5-3',
    compute: (ask) => modulus(ask, 'along'),
  },
  {
    path: 'modulus.across',
    dimension: DIMENSION.pressure,
    unit: 'GPa',
    sentence: 'Stiffness of the wood across the grain, in the plane of the plate.',
    formula: 'E = 0.946·ρ·f²·W⁴/h² from the cross tap; otherwise a ratio of E along',
    source: 'free-free beam (β·L = 4.730); Wood Handbook FPL-GTR-282 (2021), Table 5-1',
    compute: (ask) => modulus(ask, 'across'),
  },
  {
    path: 'modulus.twist',
    dimension: DIMENSION.pressure,
    unit: 'GPa',
    sentence: 'Resistance of the plate to twist (in-plane shear modulus).',
    formula: 'G ≈ 0.822·ρ·f²·L²·W²/h², corrected for reading low; otherwise a ratio of E along',
    source: 'twist mode of a free rectangular plate; Wood Handbook FPL-GTR-282 (2021), Table 5-1',
    compute: shear,
  },
  {
    path: 'poisson',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'How much the wood narrows across the grain when stretched along it (Poisson ratio).',
    formula: 'tabulated ν_LR; its counterpart follows by reciprocity',
    source: 'Wood Handbook FPL-GTR-282 (2021), Table 5-2',
    compute: (ask) => {
      const cut = isFlatsawn(ask) ? 'LT' : 'LR';
      const given = ask.numberIf(`poisson.${cut}`) ?? ask.numberIf(`species.poisson.${cut}`);
      return given ?? assumed(ask, TYPICAL_RATIOS[kindOf(ask)].poissonLR, 'a typical Poisson ratio is used');
    },
  },
  {
    path: 'modulus.through-shear',
    dimension: DIMENSION.pressure,
    unit: 'GPa',
    sentence: 'Shear of the wood through its thickness, along the grain.',
    formula: 'G_LT = E along × tabulated ratio',
    source: 'Wood Handbook FPL-GTR-282 (2021), Table 5-1',
    compute: (ask) => throughShear(ask, 'GLT', 0.06),
  },
  {
    path: 'modulus.rolling-shear',
    dimension: DIMENSION.pressure,
    unit: 'MPa',
    sentence: 'Rolling shear of the wood across the grain; low in all softwoods, and known only roughly.',
    formula: 'G_RT = E along × tabulated ratio',
    source: 'Wood Handbook FPL-GTR-282 (2021), Table 5-1',
    compute: (ask) => throughShear(ask, 'GRT', kindOf(ask) === 'softwood' ? 0.005 : 0.02),
  },
  {
    path: 'merit',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'E^(1/3)/ρ along the grain: the higher, the lighter a plate of one given stiffness.',
    formula: 'E^(1/3)/ρ, E in Pa, ρ in kg/m³',
    source: 'M. F. Ashby, Materials Selection in Mechanical Design: light stiff panel',
    compute: (ask) => panelMerit(ask.number('modulus.along'), ask.number('density')),
  },
  {
    path: 'radiation',
    dimension: DIMENSION.radiation,
    unit: 'm⁴/(kg·s)',
    sentence: '√(E/ρ³): how readily a plate of this wood turns force into sound.',
    formula: '√(E/ρ³)',
    source: 'U. G. K. Wegst, Wood for sound, Am. J. Botany 93 (2006)',
    compute: (ask) => radiationRatio(ask.number('modulus.along'), ask.number('density')),
  },
  {
    path: 'sound-speed',
    dimension: DIMENSION.speed,
    unit: 'm/s',
    sentence: 'Speed of sound along the grain.',
    formula: '√(E/ρ)',
    source: 'longitudinal waves in a bar',
    compute: (ask) => soundSpeed(ask.number('modulus.along'), ask.number('density')),
  },
  {
    path: 'loss.along',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'Share of its swing that the wood takes when it bends along the grain (loss tangent, 1/Q).',
    formula: '1/Q of the long tap; otherwise the species’ figure',
    source: 'definition of Q; typical figures from memory',
    compute: lossAlong,
  },
  lossBeside('across', 'Share of its swing that the wood takes when it bends across the grain.'),
  lossBeside('twist', 'Share of its swing that the wood takes in shear and twist.'),
  {
    path: 'moisture-in-shop',
    dimension: DIMENSION.moisture,
    unit: '%MC',
    sentence: 'Moisture content the wood settles at in the shop’s climate.',
    formula: 'Eq. 4-5 with the shop’s temperature and humidity',
    source: 'Wood Handbook FPL-GTR-190 (2010), Eq. 4-5, Table 4-2',
    compute: shopMoisture,
  },
  {
    path: 'density-when-read',
    dimension: DIMENSION.density,
    unit: 'kg/m³',
    sentence: 'Mass of a cubic metre of this wood when it was measured: what goes with its taps.',
    formula: 'ρ = m / (L·W·h); a stated density is taken to be that of the reading',
    source: 'geometry and mass',
    compute: (ask) =>
      isWeighed(ask) && ask.value('density') === undefined ? weighedDensity(ask) : ask.number('density'),
  },
  {
    path: 'moisture-when-read',
    dimension: DIMENSION.moisture,
    unit: '%MC',
    sentence: 'Moisture content the wood had when it was measured.',
    formula: 'as told, or Eq. 4-5 with the humidity it was measured at',
    source: 'Wood Handbook FPL-GTR-190 (2010), Eq. 4-5, Table 4-2',
    compute: (ask) => moistureWhenRead(ask) ?? ask.missing('humidity'),
  },
  {
    path: 'stiffer-since-read',
    dimension: DIMENSION.number,
    unit: '%',
    sentence: 'How much stiffer (or less stiff) the wood is in the shop’s climate than when it was measured.',
    formula: 'P = P12·(P12/Pg)^((12−M)/(Mp−12)), between the two moistures',
    source: 'Wood Handbook FPL-GTR-282 (2021), Eq. 5-3',
    compute: (ask) => (moistureWhenRead(ask) === undefined ? ask.missing('humidity') : sinceMeasured(ask) - 1),
  },
  {
    path: 'heavier-since-read',
    dimension: DIMENSION.number,
    unit: '%',
    sentence: 'How much denser (or less dense) the wood is in the shop’s climate than when it was weighed.',
    formula: 'ρ = 1000·G·(1 + M), G with the wood’s own swelling, between the two moistures',
    source: 'Wood Handbook FPL-GTR-282 (2021), Eqs. 4-13, 4-14',
    compute: (ask) => {
      if (!isWeighed(ask)) return ask.missing('mass');
      return moistureWhenRead(ask) === undefined ? ask.missing('humidity') : heavierSince(ask) - 1;
    },
  },
  {
    path: 'movement',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'Share of its width that the wood gains across the grain for each per cent of moisture.',
    formula: 'C_R for a quartersawn, C_T for a flatsawn plate',
    source: 'Wood Handbook FPL-GTR-190 (2010), Table 13-5',
    compute: (ask) => movementAcross(ask, isFlatsawn(ask) ? 'tangential' : 'radial'),
  },
  {
    path: 'movement-through',
    dimension: DIMENSION.number,
    unit: '',
    sentence: 'Share of its thickness that the wood gains for each per cent of moisture.',
    formula: 'C_T for a quartersawn, C_R for a flatsawn plate',
    source: 'Wood Handbook FPL-GTR-190 (2010), Table 13-5',
    compute: (ask) => movementAcross(ask, isFlatsawn(ask) ? 'radial' : 'tangential'),
  },
];

/** As the table has it; of a species it does not list, from its whole shrinkage. */
function movementAcross(ask: Ask, way: 'radial' | 'tangential'): number {
  const listed = ask.numberIf(`species.shrinkage.${way}`);
  if (listed !== undefined) return listed;
  const whole = ask.numberIf(`species.total-shrinkage.${way}`);
  return whole === undefined ? ask.number(`species.shrinkage.${way}`) : movementCoefficient(whole);
}

/** 1/Q of the tap where it was read; the species' figure; a typical one. */
function lossAlong(ask: Ask): number {
  const sharp = ask.numberIf('q.along');
  if (sharp !== undefined && sharp > 0) return 1 / sharp;
  return ask.numberOr('species.loss', 0.01, 'the wood is taken to lose as most do, 1/Q 0.01');
}

function lossBeside(way: 'across' | 'twist', sentence: string): DerivedQuantity {
  return {
    path: `loss.${way}`,
    dimension: DIMENSION.number,
    unit: '',
    sentence,
    formula: `1/Q of the tap; otherwise ${USUAL_LOSS_RATIOS[way]} times the loss along the grain`,
    source: 'M. Ono & M. Norimoto, Jpn. J. Appl. Phys. 22 (1983) 611, 24 (1985) 960 (from memory)',
    compute: (ask) => {
      const sharp = ask.numberIf(`q.${way}`);
      if (sharp !== undefined && sharp > 0) return 1 / sharp;
      ask.assume(`the loss ${way} is taken as a typical multiple of that along the grain`);
      return USUAL_LOSS_RATIOS[way] * ask.number('loss.along');
    },
  };
}

/** At the shop’s moisture: what was weighed in other air has taken up water since, or given some off. */
function density(ask: Ask): number {
  if (isWeighed(ask)) return ask.number('density-when-read') * heavierSince(ask);

  const gravity = ask.numberIf('species.specific-gravity');
  if (gravity === undefined) return ask.number('mass') / blankVolume(ask);
  const at = ask.number('moisture-in-shop');
  // Tabulated on green volume, or on the volume at 12 %: bring either to the shop's moisture.
  if (ask.word('species.basis') === 'green') return densityFromSpecificGravity(specificGravityAt(gravity, at), at);
  return densityFromSpecificGravity(gravity, HANDBOOK_MOISTURE);
}

function isWeighed(ask: Ask): boolean {
  return has(ask, 'blank.length', 'blank.width', 'blank.thickness', 'mass');
}

/** As it was when it was read: what goes with the taps of that day. */
function weighedDensity(ask: Ask): number {
  const blank = {
    length: ask.number('blank.length'),
    width: ask.number('blank.width'),
    thickness: ask.number('blank.thickness'),
  };
  return blankDensity(blank, ask.number('mass'));
}

/** Factor of the density between the air it was weighed in and the shop’s. */
function heavierSince(ask: Ask): number {
  const read = moistureWhenRead(ask);
  if (read === undefined) return 1;
  const weighed = ask.number('density-when-read');
  return densityAtMoisture(weighed, read, ask.number('moisture-in-shop')) / weighed;
}

/** Moisture the wood had settled at in the air it was read in; undefined where that is not told. */
function moistureWhenRead(ask: Ask): number | undefined {
  const moisture = ask.numberIf('moisture');
  if (moisture !== undefined) return moisture;
  const humidity = ask.numberIf('humidity');
  if (humidity === undefined) return undefined;
  const kelvin = ask.numberIf('temperature') ?? taken(ask, 'shop.climate.temperature');
  return equilibriumMoisture(kelvin - 273.15, humidity);
}

function blankVolume(ask: Ask): number {
  return ask.number('blank.length') * ask.number('blank.width') * ask.number('blank.thickness');
}

function modulus(ask: Ask, direction: 'along' | 'across'): number {
  const tapped = fromTap(ask, direction) ?? fromDeflection(ask, direction);
  if (tapped !== undefined) return tapped * sinceMeasured(ask);
  if (direction === 'along') {
    const bending = ask.numberIf('species.bending-modulus');
    if (bending !== undefined) return alongFromBendingModulus(bending) * sinceHandbook(ask);
    return ask.number('tap.along');
  }
  const along = ask.number('modulus.along');
  ask.doubt(RATIO_ERRORS.across);
  const ratio = ask.numberIf(isFlatsawn(ask) ? 'species.ratio.ET' : 'species.ratio.ER');
  if (ratio !== undefined) return along * ratio;
  ask.assume('E across is taken as a typical share of E along');
  return guessedAcross(along, kindOf(ask), isFlatsawn(ask) ? 'flatsawn' : 'quartersawn');
}

function fromTap(ask: Ask, direction: 'along' | 'across'): number | undefined {
  if (!has(ask, 'blank.length', 'blank.width', 'blank.thickness')) return undefined;
  const frequency = tapOf(ask, direction);
  if (frequency === undefined) return undefined;
  ask.doubt(READING_ERRORS[direction]);
  const extent = ask.number(direction === 'along' ? 'blank.length' : 'blank.width');
  return modulusFromBendingTap(ask.number('density-when-read'), frequency, extent, ask.number('blank.thickness'));
}

export const STANDARD_GRAVITY = 9.80665;

function fromDeflection(ask: Ask, direction: 'along' | 'across'): number | undefined {
  const test = `deflection.${direction}`;
  if (!has(ask, test, 'blank.thickness', 'deflection.rig.span', 'deflection.rig.load')) return undefined;
  ask.doubt(READING_ERRORS.plank);
  const across = direction === 'along' ? 'blank.width' : 'blank.length';
  return modulusFromPlank(
    {
      span: ask.number('deflection.rig.span'),
      load: ask.number('deflection.rig.load') * STANDARD_GRAVITY,
      loadAt: ask.number('deflection.rig.span') / 2 + taken(ask, 'deflection.rig.at'),
      width: ask.numberIf('deflection.rig.width') ?? ask.number(across),
      thickness: ask.numberIf('deflection.thickness') ?? ask.number('blank.thickness'),
    },
    ask.number(test),
  );
}

function shear(ask: Ask): number {
  const twist = has(ask, 'blank.length', 'blank.width', 'blank.thickness') ? tapOf(ask, 'twist') : undefined;
  if (twist !== undefined) {
    ask.doubt(READING_ERRORS.twist);
    const blank = {
      length: ask.number('blank.length'),
      width: ask.number('blank.width'),
      thickness: ask.number('blank.thickness'),
    };
    return shearFromTwistTapCorrected(ask.number('density-when-read'), twist, blank) * sinceMeasured(ask);
  }
  ask.doubt(RATIO_ERRORS.twist);
  const ratio = ask.numberIf(isFlatsawn(ask) ? 'species.ratio.GLT' : 'species.ratio.GLR');
  if (ratio !== undefined) return ask.number('modulus.along') * ratio;
  ask.assume('G is taken as a typical share of E along');
  return guessedShear(ask.number('modulus.along'), kindOf(ask));
}

function throughShear(ask: Ask, ratio: 'GLT' | 'GRT', typical: number): number {
  ask.doubt(ratio === 'GRT' ? RATIO_ERRORS.rollingShear : RATIO_ERRORS.throughShear);
  const tabulated = ask.numberIf(`species.ratio.${ratio}`);
  return (
    ask.number('modulus.along') *
    (tabulated ?? assumed(ask, typical, `a typical share of E along is used for ${ratio}`))
  );
}

function shopMoisture(ask: Ask): number {
  const { celsius, humidity } = shopClimate(ask);
  return equilibriumMoisture(celsius, humidity);
}

export function shopClimate(ask: Ask): Climate {
  const humidity = taken(ask, 'shop.climate.humidity');
  const kelvin = taken(ask, 'shop.climate.temperature');
  return { humidity, celsius: kelvin - 273.15 };
}

/** How much stiffer (or less) the wood is in the shop's climate than when it was measured. */
export function sinceMeasured(ask: Ask): number {
  const read = moistureWhenRead(ask);
  return read === undefined ? 1 : stiffening(ask, read);
}

function sinceHandbook(ask: Ask): number {
  return stiffening(ask, HANDBOOK_MOISTURE);
}

/** Green wood is about four fifths as stiff as at 12 %: the mean of the handbook's guitar woods, where the species is silent. */
const USUAL_GREEN_SHARE = 0.8;

/** Bending stiffness of the species at 12 %MC and green; only their ratio matters. `species`: the path to it. */
export function whenGreen(ask: Ask, species = 'species'): readonly [at12: number, green: number] {
  const [at12, green] = [ask.numberIf(`${species}.bending-modulus`), ask.numberIf(`${species}.green-bending-modulus`)];
  return at12 === undefined || green === undefined
    ? [1, assumed(ask, USUAL_GREEN_SHARE, 'green wood is taken to be four fifths as stiff as at 12 %MC')]
    : [at12, green];
}

function stiffening(ask: Ask, from: number): number {
  const [at12, green] = whenGreen(ask);
  return moistureFactor(at12, green, from, ask.number('moisture-in-shop'), ask.numberIf('species.turning-point'));
}

function has(ask: Ask, ...paths: readonly string[]): boolean {
  return paths.every((path) => ask.numberIf(path) !== undefined);
}

function assumed(ask: Ask, value: number, text: string): number {
  ask.assume(text);
  return value;
}

function isFlatsawn(ask: Ask): boolean {
  return ask.word('cut') === 'flatsawn';
}

function kindOf(ask: Ask): 'softwood' | 'hardwood' {
  return ask.word('species.kind') === 'hardwood' ? 'hardwood' : 'softwood';
}
