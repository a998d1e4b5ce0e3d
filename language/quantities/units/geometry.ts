import { DIMENSION } from '../dimension.js';
import type { Unit } from '../unit.js';
import { CUBIC_INCH, defineUnit, FOOT, INCH, SOURCE, SQUARE_FOOT, SQUARE_INCH } from './define.js';

const { length, area, volume, secondMomentOfArea, angle } = DIMENSION;

/** Lengths, areas, volumes and angles; in each dimension the unit a maker reaches for first stands first. */
export const GEOMETRY_UNITS: readonly Unit[] = [
  defineUnit('mm', length, 1e-3, {
    ucum: 'mm',
    also: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
    source: SOURCE.si,
    sentence: 'Millimetre, a thousandth of a metre.',
  }),
  defineUnit('in', length, INCH, {
    ucum: '[in_i]',
    also: ['"', '″', '”', 'inch', 'inches'],
    system: 'inch',
    source: SOURCE.nist,
    sentence: 'Inch, exactly 25.4 mm; fractions such as 7/64 in are fine.',
  }),
  defineUnit('thou', length, 2.54e-5, {
    ucum: '[mil_i]',
    also: ['thousandth', 'thousandths'],
    system: 'inch',
    source: SOURCE.ucum,
    sentence: 'A thousandth of an inch, exactly 0.0254 mm.',
  }),
  defineUnit('ft', length, FOOT, {
    ucum: '[ft_i]',
    also: ["'", '′', '’', 'foot', 'feet'],
    system: 'inch',
    source: SOURCE.nist,
    sentence: 'Foot, exactly 304.8 mm; dome radii are often given in feet.',
  }),
  defineUnit('cm', length, 1e-2, {
    ucum: 'cm',
    also: ['centimetre', 'centimetres', 'centimeter', 'centimeters'],
    source: SOURCE.si,
    sentence: 'Centimetre, a hundredth of a metre.',
  }),
  defineUnit('m', length, 1, {
    ucum: 'm',
    also: ['metre', 'metres', 'meter', 'meters'],
    source: SOURCE.si,
    sentence: 'Metre, the SI unit of length.',
  }),
  defineUnit('mil', length, 2.54e-5, {
    ucum: '[mil_i]',
    also: ['mils'],
    system: 'inch',
    source: SOURCE.ucum,
    sentence: 'A thousandth of an inch (0.0254 mm), as used for finish films; never a millimetre.',
  }),
  defineUnit('µm', length, 1e-6, {
    ucum: 'um',
    also: ['micron', 'microns', 'micrometre', 'micrometres', 'micrometer', 'micrometers'],
    source: SOURCE.si,
    sentence: 'Micrometre, a thousandth of a millimetre.',
  }),

  defineUnit('cm²', area, 1e-4, { ucum: 'cm2', source: SOURCE.si, sentence: 'Square centimetre.' }),
  defineUnit('m²', area, 1, { ucum: 'm2', source: SOURCE.si, sentence: 'Square metre.' }),
  defineUnit('mm²', area, 1e-6, { ucum: 'mm2', source: SOURCE.si, sentence: 'Square millimetre.' }),
  defineUnit('in²', area, SQUARE_INCH, {
    ucum: '[sin_i]',
    also: ['sq in'],
    system: 'inch',
    source: SOURCE.derived,
    sentence: 'Square inch, exactly 6.4516 cm².',
  }),
  defineUnit('ft²', area, SQUARE_FOOT, {
    ucum: '[sft_i]',
    also: ['sq ft'],
    system: 'inch',
    source: SOURCE.derived,
    sentence: 'Square foot, 144 square inches.',
  }),

  defineUnit('L', volume, 1e-3, {
    ucum: 'L',
    also: ['l', 'litre', 'litres', 'liter', 'liters'],
    source: SOURCE.accepted,
    sentence: 'Litre, 1000 cm³; the air in a guitar body is counted in litres.',
  }),
  defineUnit('cm³', volume, 1e-6, {
    ucum: 'cm3',
    also: ['cc', 'mL', 'ml'],
    source: SOURCE.si,
    sentence: 'Cubic centimetre.',
  }),
  defineUnit('m³', volume, 1, { ucum: 'm3', source: SOURCE.si, sentence: 'Cubic metre.' }),
  defineUnit('mm³', volume, 1e-9, { ucum: 'mm3', source: SOURCE.si, sentence: 'Cubic millimetre.' }),
  defineUnit('in³', volume, CUBIC_INCH, {
    ucum: '[cin_i]',
    also: ['cu in'],
    system: 'inch',
    source: SOURCE.derived,
    sentence: 'Cubic inch, exactly 16.387064 cm³.',
  }),

  defineUnit('mm⁴', secondMomentOfArea, 1e-12, {
    ucum: 'mm4',
    source: SOURCE.si,
    sentence: 'Millimetre to the fourth: the second moment of area of a brace section.',
  }),

  defineUnit('deg', angle, Math.PI / 180, {
    ucum: 'deg',
    also: ['°', 'degree', 'degrees'],
    system: 'both',
    exact: false,
    source: SOURCE.accepted,
    sentence: 'Degree of arc, π/180 of a radian.',
  }),
  defineUnit('rad', angle, 1, {
    ucum: 'rad',
    also: ['radian', 'radians'],
    system: 'both',
    source: SOURCE.si,
    sentence: 'Radian, the SI unit of angle.',
  }),
];
