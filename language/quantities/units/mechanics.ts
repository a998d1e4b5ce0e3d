import { DIMENSION } from '../dimension.js';
import type { Unit } from '../unit.js';
import { defineUnit, FOOT, INCH, POUND_FORCE, SOURCE, SQUARE_INCH, STANDARD_GRAVITY } from './define.js';

const { force, pressure, stiffness, compliance, torque, beamStiffness, rotationalStiffness, mobility, radiation } =
  DIMENSION;
const PSI = POUND_FORCE / SQUARE_INCH;
const inch = { system: 'inch', source: SOURCE.derived } as const;

/** Forces, pressures and moduli, stiffnesses, torques. */
export const MECHANICAL_UNITS: readonly Unit[] = [
  defineUnit('N', force, 1, {
    ucum: 'N',
    also: ['newton', 'newtons'],
    source: SOURCE.si,
    sentence: 'Newton, the SI unit of force; the pull of 102 g hanging at rest.',
  }),
  defineUnit('lbf', force, POUND_FORCE, {
    ucum: '[lbf_av]',
    system: 'inch',
    source: SOURCE.nist,
    sentence: 'Pound-force, the pull of one pound hanging at rest, 4.448 N.',
  }),
  defineUnit('kgf', force, STANDARD_GRAVITY, {
    ucum: 'kgf',
    also: ['kp'],
    source: SOURCE.nist,
    sentence: 'Kilogram-force, the pull of one kilogram hanging at rest, exactly 9.80665 N.',
  }),
  defineUnit('ozf', force, POUND_FORCE / 16, {
    ucum: '[lbf_av]/16',
    ...inch,
    sentence: 'Ounce-force, a sixteenth of a pound-force.',
  }),
  defineUnit('gf', force, STANDARD_GRAVITY / 1000, {
    ucum: 'gf',
    source: SOURCE.nist,
    sentence: 'Gram-force, the pull of one gram hanging at rest.',
  }),
  defineUnit('kN', force, 1e3, { ucum: 'kN', source: SOURCE.si, sentence: 'Kilonewton, 1000 N.' }),

  defineUnit('GPa', pressure, 1e9, {
    ucum: 'GPa',
    source: SOURCE.si,
    sentence: 'Gigapascal, the usual unit for the elastic modulus of wood along the grain.',
  }),
  defineUnit('Mpsi', pressure, PSI * 1e6, {
    ucum: '10*6.[psi]',
    ...inch,
    exact: false,
    sentence: 'Million pounds-force per square inch, 6.895 GPa.',
  }),
  defineUnit('MPa', pressure, 1e6, { ucum: 'MPa', source: SOURCE.si, sentence: 'Megapascal, one newton per mm².' }),
  defineUnit('N/mm²', pressure, 1e6, {
    ucum: 'N/mm2',
    source: SOURCE.si,
    sentence: 'Newton per square millimetre, the same as a megapascal.',
  }),
  defineUnit('psi', pressure, PSI, {
    ucum: '[psi]',
    also: ['lbf/in²'],
    ...inch,
    exact: false,
    sentence: 'Pound-force per square inch, 6895 Pa.',
  }),
  defineUnit('ksi', pressure, PSI * 1e3, {
    ucum: '10*3.[psi]',
    ...inch,
    exact: false,
    sentence: 'Thousand pounds-force per square inch, 6.895 MPa.',
  }),
  defineUnit('kPa', pressure, 1e3, { ucum: 'kPa', source: SOURCE.si, sentence: 'Kilopascal, 1000 Pa.' }),
  defineUnit('Pa', pressure, 1, { ucum: 'Pa', source: SOURCE.si, sentence: 'Pascal, one newton per square metre.' }),

  defineUnit('kN/m', stiffness, 1e3, {
    ucum: 'kN/m',
    source: SOURCE.si,
    sentence: 'Kilonewton per metre of deflection; the same number as N/mm.',
  }),
  defineUnit('N/mm', stiffness, 1e3, {
    ucum: 'N/mm',
    source: SOURCE.si,
    sentence: 'Newton per millimetre of deflection.',
  }),
  defineUnit('lbf/in', stiffness, POUND_FORCE / INCH, {
    ucum: '[lbf_av]/[in_i]',
    ...inch,
    exact: false,
    sentence: 'Pound-force per inch of deflection, 175.1 N/m.',
  }),
  defineUnit('N/m', stiffness, 1, { ucum: 'N/m', source: SOURCE.si, sentence: 'Newton per metre of deflection.' }),

  defineUnit('mm/N', compliance, 1e-3, {
    ucum: 'mm/N',
    source: SOURCE.si,
    sentence: 'Millimetre of deflection per newton.',
  }),
  defineUnit('m/N', compliance, 1, { ucum: 'm/N', source: SOURCE.si, sentence: 'Metre of deflection per newton.' }),

  defineUnit('N·m', torque, 1, {
    ucum: 'N.m',
    also: ['Nm', 'N m'],
    source: SOURCE.si,
    sentence: 'Newton metre, the SI unit of torque; also of the bending stiffness of a plate.',
  }),
  defineUnit('N·mm', torque, 1e-3, {
    ucum: 'N.mm',
    also: ['Nmm'],
    source: SOURCE.si,
    sentence: 'Newton millimetre, a thousandth of a newton metre.',
  }),
  defineUnit('lbf·in', torque, 0.1129848290276167, {
    ucum: '[lbf_av].[in_i]',
    also: ['in·lbf', 'lbf-in', 'in-lbf'],
    ...inch,
    sentence: 'Pound-force inch, 0.113 N·m.',
  }),
  defineUnit('lbf·ft', torque, POUND_FORCE * FOOT, {
    ucum: '[lbf_av].[ft_i]',
    also: ['ft·lbf', 'lbf-ft', 'ft-lbf'],
    ...inch,
    sentence: 'Pound-force foot, 1.356 N·m.',
  }),

  defineUnit('N·m²', beamStiffness, 1, {
    ucum: 'N.m2',
    also: ['Nm²'],
    source: SOURCE.si,
    sentence: 'Newton square metre: the bending stiffness E·I of a brace.',
  }),
  defineUnit('lbf·in²', beamStiffness, POUND_FORCE * SQUARE_INCH, {
    ucum: '[lbf_av].[sin_i]',
    ...inch,
    sentence: 'Pound-force square inch, the bending stiffness of a brace.',
  }),

  defineUnit('N·m/rad', rotationalStiffness, 1, {
    ucum: 'N.m/rad',
    also: ['Nm/rad'],
    source: SOURCE.si,
    sentence: 'Newton metre per radian of turn.',
  }),
  defineUnit('N·m/deg', rotationalStiffness, 180 / Math.PI, {
    ucum: 'N.m/deg',
    also: ['Nm/deg', 'N·m/°'],
    exact: false,
    source: SOURCE.si,
    sentence: 'Newton metre per degree of turn.',
  }),

  defineUnit('s/kg', mobility, 1, {
    ucum: 's/kg',
    also: ['m/(N·s)', 'm/s/N'],
    system: 'both',
    source: SOURCE.si,
    sentence: 'Second per kilogram: how fast the top moves per newton of driving force.',
  }),
  defineUnit('m⁴/(kg·s)', radiation, 1, {
    ucum: 'm4/(kg.s)',
    also: ['m⁴/kg/s', 'm⁴/kg·s'],
    system: 'both',
    source: SOURCE.si,
    sentence: 'The radiation ratio of a wood, √(E/ρ³): the higher, the louder for its weight.',
  }),
];
