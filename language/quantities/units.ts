/** The unit table, and how a spelling finds its unit. To add a unit, add a row to one of the tables in `units/`. */
import { isNumber, sameDimension, type Dimension } from './dimension.js';
import type { Quantity } from './quantity.js';
import { didYouMean } from './suggest.js';
import type { Unit } from './unit.js';
import { GEOMETRY_UNITS } from './units/geometry.js';
import { MASS_UNITS } from './units/mass.js';
import { MECHANICAL_UNITS } from './units/mechanics.js';
import { TIME_AND_CLIMATE_UNITS } from './units/time-and-climate.js';

/** Every unit of the language. Within a dimension the one a maker reaches for first stands first. */
export const UNITS: readonly Unit[] = [
  ...GEOMETRY_UNITS,
  ...MASS_UNITS,
  ...MECHANICAL_UNITS,
  ...TIME_AND_CLIMATE_UNITS,
];

const BY_SPELLING: ReadonlyMap<string, Unit> = new Map(
  UNITS.flatMap((one) => one.spellings.map((spelling) => [spelling, one] as const)),
);

/** Every accepted spelling, longest first, for a lexer that must take the longest that fits. */
export const SPELLINGS: readonly string[] = [...BY_SPELLING.keys()].sort(
  (a, b) => b.length - a.length || (a < b ? -1 : 1),
);

/** The unit with this spelling. Case matters: `MPa` is a pressure, `mpa` is nothing. */
export function unit(spelling: string): Unit | undefined {
  return BY_SPELLING.get(spelling) ?? BY_SPELLING.get(spelling.trim().replace(/\s+/g, ' '));
}

/** The canonical spelling of a unit, for a formatter; undefined for an unknown one. */
export function canonicalSpelling(spelling: string): string | undefined {
  return unit(spelling)?.symbol;
}

/** All units of a dimension, the usual ones first. */
export function unitsOf(dimension: Dimension): readonly Unit[] {
  return UNITS.filter((one) => sameDimension(one.dimension, dimension));
}

/**
 * Units the maker may have meant, canonical spellings, best first; of the given dimension only, when there are any
 * (in `2.8 mn` for a thickness, `mm` is likelier than `min`).
 */
export function suggestUnits(spelling: string, dimension?: Dimension): string[] {
  const word = spelling.trim();
  const habit = HABITS.get(word) ?? HABITS.get(word.toLowerCase());
  const all = [...new Set(habit ?? nearSpellings(word))];
  if (dimension === undefined || isNumber(dimension)) return all.slice(0, 3);
  const fitting = all.filter((symbol) => sameDimension(unit(symbol)?.dimension ?? dimension, dimension));
  return (fitting.length > 0 ? fitting : all).slice(0, 3);
}

/** Value in SI of a number of this unit. */
export function toSi(number: number, of: Unit): number {
  return inStepsOf(number, of) + (of.offset ?? 0);
}

/** Value in this unit of an SI value. */
export function fromSi(si: number, of: Unit): number {
  return backInStepsOf(si - (of.offset ?? 0), of);
}

/** A difference or tolerance of so many of this unit, in SI: as `toSi` but without the offset of a temperature scale. */
export function differenceToSi(number: number, of: Unit): number {
  return inStepsOf(number, of);
}

/** A difference or tolerance given in SI, in this unit: without the offset of a temperature scale. */
export function differenceFromSi(si: number, of: Unit): number {
  return backInStepsOf(si, of);
}

/** The number the maker wrote, in the unit it was written in (SI where none was written). */
export function numberOf(quantity: Quantity): number {
  return quantity.unit === undefined ? quantity.si : fromSi(quantity.si, quantity.unit);
}

/**
 * Factors such as 0.001 or 0.0254 have no exact double, but are a ratio of two whole numbers: multiplying by the one
 * and dividing by the other rounds less than multiplying by the nearest double (2.85 mm is 0.00285 m to the last bit).
 */
function inStepsOf(number: number, of: Unit): number {
  const [top, bottom] = ratio(of.factor);
  return (number * top) / bottom;
}

function backInStepsOf(si: number, of: Unit): number {
  const [top, bottom] = ratio(of.factor);
  return (si * bottom) / top;
}

function ratio(factor: number): readonly [top: number, bottom: number] {
  if (Number.isInteger(factor)) return [factor, 1];
  const parts = Math.round(1 / factor);
  if (1 / parts === factor) return [1, parts];
  for (let bottom = 10; bottom <= 1e9; bottom *= 10) {
    const top = Math.round(factor * bottom);
    if (top / bottom === factor) return [top, bottom];
  }
  return [factor, 1];
}

/** What makers write out of habit where this language wants something else. */
const HABITS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    gr: ['g'],
    gm: ['g'],
    gms: ['g'],
    grs: ['g'],
    gramm: ['g'],
    q: ['g'],
    unze: ['oz'],
    unzen: ['oz'],
    pfund: ['lb'],
    kilogramm: ['kg'],
    nm: ['mm', 'N·m'],
    mill: ['mm', 'mil'],
    millimeters: ['mm'],
    thousand: ['thou'],
    th: ['thou'],
    zoll: ['in'],
    fuß: ['ft'],
    fuss: ['ft'],
    grad: ['deg'],
    grade: ['deg'],
    hertz: ['Hz'],
    tag: ['days'],
    tage: ['days'],
    tagen: ['days'],
    woche: ['weeks'],
    wochen: ['weeks'],
    'kg/cbm': ['kg/m³'],
    'kg/m^3': ['kg/m³'],
    kgm3: ['kg/m³'],
    'g/ccm': ['g/cm³'],
    rel: ['%RH'],
    rf: ['%RH'],
    '%rf': ['%RH'],
    '%rel': ['%RH'],
    '%r': ['%RH'],
    C: ['°C'],
    c: ['°C', 'cents'],
    F: ['°F'],
    f: ['°F'],
    RH: ['%RH'],
    rh: ['%RH'],
    '%rh': ['%RH'],
    MC: ['%MC'],
    mc: ['%MC'],
    emc: ['%MC'],
    '%mc': ['%MC'],
    '#': ['lb'],
    pound: ['lb', 'lbf'],
    '64ths': ['in'],
    ths: ['thou', 'in'],
    'lb·in': ['lbf·in'],
    'lb*in': ['lbf·in'],
    'lb-in': ['lbf·in'],
    'in-lb': ['lbf·in'],
    'ft-lb': ['lbf·ft'],
    'lb-ft': ['lbf·ft'],
    'lb/in²': ['psi'],
    'lb/in2': ['psi'],
    cps: ['Hz'],
  }),
);

function nearSpellings(word: string): string[] {
  const inTableOrder = UNITS.flatMap((one) => one.spellings);
  return didYouMean(word, inTableOrder, { most: 12 }).flatMap((known) => unit(known)?.symbol ?? []);
}
