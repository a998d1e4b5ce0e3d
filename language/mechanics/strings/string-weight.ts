/** Weight per length of strings from their gauge. SI throughout. */
import { MechanicsError, between, positive } from '../error.js';

export type StringKind =
  | 'plain steel'
  | 'phosphor bronze'
  | '80/20 bronze'
  | 'nickel-plated steel'
  | 'stainless steel'
  | 'stainless flat wound'
  | 'nylon'
  | 'fluorocarbon'
  | 'silver-plated on nylon';

/**
 * Music wire, kg/m³: fits the unit weights of fifteen plain strings of a published chart (D'Addario string tension
 * brochure) within 0.1 %.
 */
export const STEEL_WIRE_DENSITY = 7807;

export interface StringWeight {
  /** kg/m */
  readonly massPerLength: number;
  /** relative standard uncertainty */
  readonly uncertainty: number;
  /** m: the part that carries the tension; for wound strings the core the rule assumes */
  readonly core: number;
  /** Pa, Young's modulus of the core */
  readonly coreModulus: number;
}

/**
 * Weight per length of a string of outside diameter `gauge` (m).
 *
 * Plain: ρ π d²/4. Wound: `woundMassPerLength` with the core taken from `core` when given, otherwise from a
 * straight-line rule for the ratio of core to outside diameter, fitted to the same chart (round-wound nickel and
 * stainless: largest error 2.1 % over 34 strings; phosphor bronze, eight strings known from memory: 1.6 %; flat wound:
 * 4 %; silver on nylon: from memory, 8 %). The fitted core is an effective one: it also absorbs plating, the hexagon
 * of the core and how tightly the wrap sits. Throws on a gauge outside 0.1 … 3 mm and on a core not thinner than the
 * string.
 */
export function stringWeight(kind: StringKind, gauge: number, core?: number): StringWeight {
  between('string gauge', gauge, 0.0001, 0.003, (bound) => `${bound * 1000} mm`);
  if (!Object.hasOwn(MAKES, kind)) throw new MechanicsError('string kind', 'That kind of string is not known.');
  const make = MAKES[kind];
  const { coreDensity, coreModulus, wrap } = make;
  if (!wrap) {
    const massPerLength = (coreDensity * Math.PI * gauge ** 2) / 4;
    return { massPerLength, uncertainty: make.uncertainty, core: gauge, coreModulus };
  }
  if (core !== undefined && positive('string core', core) >= gauge) {
    throw new MechanicsError('string core', 'The core of a wound string must be thinner than the string.');
  }
  const inner =
    core ?? gauge * Math.min(MOST_CORE, Math.max(wrap.least, wrap.ratio - wrap.slope * (gauge - wrap.from)));
  return {
    massPerLength: woundMassPerLength(gauge, inner, coreDensity, wrap.density, wrap.packing),
    uncertainty: make.uncertainty,
    core: inner,
    coreModulus,
  };
}

/** Share of the ring around the core that a close-wound round wire fills: π/4. */
export const ROUND_PACKING = Math.PI / 4;

/**
 * Mass per length (kg/m) of a wound string of outside diameter `gauge` and round core `core` (m). A wire of diameter w
 * = (D − d)/2 wound close has, per length of string, π(d + w)/w of wire of area πw²/4: π² w (d + w)/4, which is π/4 of
 * the ring's area. `packing` is that share; flat ribbon fills more.
 */
export function woundMassPerLength(
  gauge: number,
  core: number,
  coreDensity: number,
  wrapDensity: number,
  packing = ROUND_PACKING,
): number {
  const inner = positive('string core', core) ** 2;
  const ring = positive('string gauge', gauge) ** 2 - inner;
  if (ring < 0) throw new MechanicsError('string core', 'The core of a wound string must be thinner than the string.');
  const perArea = positive('density', coreDensity) * inner + positive('density', wrapDensity) * packing * ring;
  return (Math.PI / 4) * perArea;
}

/** No wound string has a core thicker than this share of its gauge. */
const MOST_CORE = 0.8;

interface Make {
  readonly coreDensity: number;
  readonly coreModulus: number;
  readonly uncertainty: number;
  readonly wrap?: {
    readonly density: number;
    readonly packing: number;
    /** Ratio of core to gauge: `ratio − slope (gauge − from)`, never below `least`. Slope in 1/m. */
    readonly ratio: number;
    readonly slope: number;
    readonly from: number;
    readonly least: number;
  };
}

const STEEL = { coreDensity: STEEL_WIRE_DENSITY, coreModulus: 2.05e11 };

/** Densities of the wraps: common handbook values for the alloys (from memory). */
const MAKES: Readonly<Record<StringKind, Make>> = {
  'plain steel': { ...STEEL, uncertainty: 0.005 },
  'phosphor bronze': {
    ...STEEL,
    uncertainty: 0.015,
    wrap: { density: 8800, packing: ROUND_PACKING, ratio: 0.59, slope: 0, from: 0, least: 0.28 },
  },
  '80/20 bronze': {
    ...STEEL,
    uncertainty: 0.025,
    wrap: { density: 8670, packing: ROUND_PACKING, ratio: 0.59, slope: 0, from: 0, least: 0.28 },
  },
  'nickel-plated steel': {
    ...STEEL,
    uncertainty: 0.015,
    wrap: { density: 7870, packing: ROUND_PACKING, ratio: 0.57, slope: 250, from: 0.0004, least: 0.36 },
  },
  'stainless steel': {
    ...STEEL,
    uncertainty: 0.015,
    wrap: { density: 7930, packing: ROUND_PACKING, ratio: 0.78, slope: 250, from: 0.0004, least: 0.28 },
  },
  'stainless flat wound': {
    ...STEEL,
    uncertainty: 0.03,
    wrap: { density: 7930, packing: 0.825, ratio: 0.5, slope: 0, from: 0, least: 0.28 },
  },
  nylon: { coreDensity: 1060, coreModulus: 4.5e9, uncertainty: 0.03 },
  fluorocarbon: { coreDensity: 1780, coreModulus: 3.5e9, uncertainty: 0.03 },
  'silver-plated on nylon': {
    coreDensity: 1100,
    coreModulus: 3.5e9,
    uncertainty: 0.08,
    wrap: { density: 8900, packing: ROUND_PACKING, ratio: 0.65, slope: 1150, from: 0.00074, least: 0.48 },
  },
};
