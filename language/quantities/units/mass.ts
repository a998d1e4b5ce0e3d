import { DIMENSION } from '../dimension.js';
import type { Unit } from '../unit.js';
import { CUBIC_FOOT, CUBIC_INCH, defineUnit, INCH, POUND, SOURCE } from './define.js';

const { mass, density, lineDensity, areaDensity } = DIMENSION;
const OUNCE = POUND / 16;

/** Masses and what is measured by mass. */
export const MASS_UNITS: readonly Unit[] = [
  defineUnit('g', mass, 1e-3, {
    beside: 'oz',
    bare: 0,
    shown: { digits: 3, decimals: 1 },
    ucum: 'g',
    also: ['gram', 'grams', 'gramme', 'grammes'],
    source: SOURCE.si,
    sentence: 'Gram, a thousandth of a kilogram.',
  }),
  defineUnit('oz', mass, OUNCE, {
    beside: 'g',
    bare: 0,
    shown: { digits: 3, decimals: 2 },
    ucum: '[oz_av]',
    also: ['ounce', 'ounces'],
    system: 'inch',
    source: SOURCE.nist,
    sentence: 'Ounce (avoirdupois), a sixteenth of a pound, 28.35 g.',
  }),
  defineUnit('lb', mass, POUND, {
    beside: 'kg',
    bare: 0,
    shown: { digits: 3, decimals: 2 },
    ucum: '[lb_av]',
    also: ['lbs', 'pound', 'pounds'],
    system: 'inch',
    source: SOURCE.nist,
    sentence: 'Pound (avoirdupois), a mass of exactly 0.45359237 kg; for a pull or a load write lbf.',
  }),
  defineUnit('kg', mass, 1, {
    beside: 'lb',
    bare: 0.1,
    shown: { digits: 4, decimals: 3 },
    ucum: 'kg',
    also: ['kilogram', 'kilograms', 'kilo', 'kilos'],
    source: SOURCE.si,
    sentence: 'Kilogram, the SI unit of mass.',
  }),
  defineUnit('mg', mass, 1e-6, {
    beside: 'itself',
    bare: 0,
    ucum: 'mg',
    also: ['milligram', 'milligrams'],
    source: SOURCE.si,
    sentence: 'Milligram, a thousandth of a gram.',
  }),

  defineUnit('kg/m³', density, 1, {
    beside: 'lb/ft³',
    bare: 0,
    shown: { digits: 3, decimals: 0 },
    ucum: 'kg/m3',
    source: SOURCE.si,
    sentence: 'Kilogram per cubic metre, the usual unit for the density of wood.',
  }),
  defineUnit('g/cm³', density, 1e3, {
    beside: 'lb/ft³',
    bare: 0,
    ucum: 'g/cm3',
    also: ['g/cc', 'g/mL', 'g/ml'],
    source: SOURCE.si,
    sentence: 'Gram per cubic centimetre, 1000 kg/m³; the same number as specific gravity.',
  }),
  defineUnit('lb/ft³', density, POUND / CUBIC_FOOT, {
    beside: 'kg/m³',
    bare: 0,
    shown: { digits: 3, decimals: 1 },
    ucum: '[lb_av]/[ft_i]3',
    also: ['pcf', 'lbs/ft³', 'lb/cu ft'],
    system: 'inch',
    exact: false,
    source: SOURCE.derived,
    sentence: 'Pound per cubic foot, 16.02 kg/m³.',
  }),
  defineUnit('lb/in³', density, POUND / CUBIC_INCH, {
    beside: 'g/cm³',
    bare: 0,
    ucum: '[lb_av]/[in_i]3',
    system: 'inch',
    exact: false,
    source: SOURCE.derived,
    sentence: 'Pound per cubic inch, 27 680 kg/m³.',
  }),
  defineUnit('mg/m³', density, 1e-6, {
    beside: 'itself',
    bare: 0,
    ucum: 'mg/m3',
    source: SOURCE.si,
    sentence: 'Milligram per cubic metre, used for dust in the air.',
  }),

  defineUnit('g/m', lineDensity, 1e-3, {
    beside: 'lb/in',
    bare: 0,
    shown: { digits: 4, decimals: 3 },
    ucum: 'g/m',
    source: SOURCE.si,
    sentence: 'Gram per metre, the unit weight of a string.',
  }),
  defineUnit('kg/m', lineDensity, 1, {
    beside: 'lb/in',
    bare: 0,
    ucum: 'kg/m',
    source: SOURCE.si,
    sentence: 'Kilogram per metre.',
  }),
  defineUnit('lb/in', lineDensity, POUND / INCH, {
    beside: 'g/m',
    bare: 0,
    ucum: '[lb_av]/[in_i]',
    also: ['lbs/in'],
    system: 'inch',
    exact: false,
    source: SOURCE.derived,
    sentence: 'Pound of mass per inch, as string charts give unit weight; for a spring rate write lbf/in.',
  }),

  defineUnit('kg/m²', areaDensity, 1, {
    beside: 'itself',
    bare: 0,
    ucum: 'kg/m2',
    source: SOURCE.si,
    sentence: 'Kilogram per square metre.',
  }),
  defineUnit('g/m²', areaDensity, 1e-3, {
    beside: 'itself',
    bare: 0,
    ucum: 'g/m2',
    also: ['gsm'],
    source: SOURCE.si,
    sentence: 'Gram per square metre.',
  }),
  defineUnit('g/cm²', areaDensity, 10, {
    beside: 'itself',
    bare: 0,
    ucum: 'g/cm2',
    source: SOURCE.si,
    sentence: 'Gram per square centimetre.',
  }),
];
