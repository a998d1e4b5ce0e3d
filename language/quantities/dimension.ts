import { ENGLISH, type Wording } from '../wording/wording.js';
/**
 * Dimensions as data: a vector of exponents over the base dimensions, and a name for those the trade uses.
 * Relative humidity, moisture content, musical interval, level and angle are base dimensions of their own, so that none can
 * be mistaken for another or for a bare number.
 */
export const BASES = [
  'length',
  'mass',
  'time',
  'temperature',
  'angle',
  'humidity',
  'moisture',
  'interval',
  'level',
] as const;
export type Base = (typeof BASES)[number];

export interface Dimension {
  /** One exponent per base, in the order of `BASES`. */
  readonly exponents: readonly number[];
  /** `length`, `pressure`, … or a product such as `kg·m⁻³` for a dimension without a name. */
  readonly name: string;
}

/**
 * The dimensions with a name, in plain words. Some share their exponents (torque, energy and plate bending stiffness;
 * density and concentration; pressure and elastic modulus): they are the same dimension to every check, and a computed
 * product takes the first name listed here.
 */
export const DIMENSION = {
  number: named('number', {}),
  length: named('length', { length: 1 }),
  area: named('area', { length: 2 }),
  volume: named('volume', { length: 3 }),
  secondMomentOfArea: named('second moment of area', { length: 4 }),
  mass: named('mass', { mass: 1 }),
  density: named('density', { mass: 1, length: -3 }),
  concentration: named('concentration', { mass: 1, length: -3 }),
  lineDensity: named('mass per length', { mass: 1, length: -1 }),
  areaDensity: named('mass per area', { mass: 1, length: -2 }),
  time: named('time', { time: 1 }),
  frequency: named('frequency', { time: -1 }),
  speed: named('speed', { length: 1, time: -1 }),
  acceleration: named('acceleration', { length: 1, time: -2 }),
  force: named('force', { mass: 1, length: 1, time: -2 }),
  /** Also elastic moduli and stresses. */
  pressure: named('pressure', { mass: 1, length: -1, time: -2 }),
  /** Force per deflection, N/m. */
  stiffness: named('stiffness', { mass: 1, time: -2 }),
  /** Deflection per force, m/N. */
  compliance: named('compliance', { mass: -1, time: 2 }),
  torque: named('torque', { mass: 1, length: 2, time: -2 }),
  energy: named('energy', { mass: 1, length: 2, time: -2 }),
  /** D = E h³ / 12(1 − ν²), N·m. */
  plateStiffness: named('plate stiffness', { mass: 1, length: 2, time: -2 }),
  /** E·I, N·m². */
  beamStiffness: named('beam stiffness', { mass: 1, length: 3, time: -2 }),
  /** Torque per turn, N·m/rad. */
  rotationalStiffness: named('rotational stiffness', { mass: 1, length: 2, time: -2, angle: -1 }),
  /** Speed per force, s/kg. */
  mobility: named('mobility', { mass: -1, time: 1 }),
  /** √(E/ρ³), m⁴/(kg·s). */
  radiation: named('radiation ratio', { length: 4, mass: -1, time: -1 }),
  temperature: named('temperature', { temperature: 1 }),
  angle: named('angle', { angle: 1 }),
  humidity: named('relative humidity', { humidity: 1 }),
  moisture: named('moisture content', { moisture: 1 }),
  /** Musical interval; its base unit is the octave: log₂ of a frequency ratio. */
  interval: named('musical interval', { interval: 1 }),
  /** Ten times the logarithm of a ratio of powers; its base unit is the decibel. Levels add and take away, they are never in per cent. */
  level: named('sound level', { level: 1 }),
} as const satisfies Record<string, Dimension>;

export function multiply(a: Dimension, b: Dimension): Dimension {
  return fromExponents(a.exponents.map((exponent, i) => exponent + (b.exponents[i] ?? 0)));
}

export function divide(a: Dimension, b: Dimension): Dimension {
  return fromExponents(a.exponents.map((exponent, i) => exponent - (b.exponents[i] ?? 0)));
}

export function power(a: Dimension, exponent: number): Dimension {
  return fromExponents(a.exponents.map((one) => one * exponent));
}

/** Equal exponents; names do not matter. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a === b || BASES.every((_, i) => (a.exponents[i] ?? 0) === (b.exponents[i] ?? 0));
}

/** A pure number: a count, a ratio or per cent. */
export function isNumber(a: Dimension): boolean {
  return a.exponents.every((exponent) => exponent === 0);
}

/** The name with its article, for a sentence: `a length`, `an angle`. */
export function withArticle(dimension: Dimension, { say, text }: Wording = ENGLISH): string {
  const isNamed = Object.values(DIMENSION).some(({ name }) => name === dimension.name);
  if (!isNamed) return say`a ${dimension.name}`;
  return text(`${/^[aeiou]/.test(dimension.name) ? 'an' : 'a'} ${dimension.name}`);
}

/** SI symbol of each base, mass first as is usual in products. */
const BASE_SYMBOLS: readonly (readonly [Base, string])[] = [
  ['mass', 'kg'],
  ['length', 'm'],
  ['time', 's'],
  ['temperature', 'K'],
  ['angle', 'rad'],
  ['humidity', 'RH'],
  ['moisture', 'MC'],
  ['interval', 'octave'],
];

function named(name: string, exponents: Partial<Record<Base, number>>): Dimension {
  return { name, exponents: BASES.map((base) => exponents[base] ?? 0) };
}

function fromExponents(raw: readonly number[]): Dimension {
  const exponents = raw.map((exponent) => exponent + 0); // turns -0 into 0
  const known = Object.values(DIMENSION).find((one) => one.exponents.every((exponent, i) => exponent === exponents[i]));
  return known ?? { name: productName(exponents), exponents };
}

/** The dimension as a product of SI symbols, e.g. `kg·m⁻³`; `1` for a pure number. */
export function productName(exponents: readonly number[]): string {
  const factors = BASE_SYMBOLS.flatMap(([base, symbol]) => {
    const exponent = exponents[BASES.indexOf(base)] ?? 0;
    return exponent === 0 ? [] : [symbol + superscript(exponent)];
  });
  return factors.length === 0 ? '1' : factors.join('·');
}

function superscript(exponent: number): string {
  if (exponent === 1) return '';
  if (!Number.isInteger(exponent)) return `^${Number(exponent.toPrecision(4))}`;
  return String(exponent).replace(/./g, (digit) => (digit === '-' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'.charAt(Number(digit))));
}
