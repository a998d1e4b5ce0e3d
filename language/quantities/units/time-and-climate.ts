import { DIMENSION } from '../dimension.js';
import type { Unit } from '../unit.js';
import { defineUnit, SOURCE } from './define.js';

const { time, frequency, speed, acceleration, temperature, humidity, moisture, interval, number } = DIMENSION;
const both = { system: 'both' } as const;

/** Time and what is counted by it, pitch, temperature, humidity, ratios. */
export const TIME_AND_CLIMATE_UNITS: readonly Unit[] = [
  defineUnit('s', time, 1, {
    ...both,
    ucum: 's',
    also: ['second', 'seconds'],
    source: SOURCE.si,
    sentence: 'Second, the SI unit of time.',
  }),
  defineUnit('min', time, 60, {
    ...both,
    ucum: 'min',
    also: ['minute', 'minutes'],
    source: SOURCE.accepted,
    sentence: 'Minute, 60 seconds.',
  }),
  defineUnit('h', time, 3600, {
    ...both,
    ucum: 'h',
    also: ['hour', 'hours'],
    source: SOURCE.accepted,
    sentence: 'Hour, 3600 seconds.',
  }),
  defineUnit('days', time, 86400, {
    ...both,
    ucum: 'd',
    also: ['day', 'd'],
    source: SOURCE.accepted,
    sentence: 'Day of 24 hours.',
  }),
  defineUnit('weeks', time, 604800, {
    ...both,
    ucum: 'wk',
    also: ['week'],
    source: SOURCE.ucum,
    sentence: 'Week of seven days.',
  }),
  defineUnit('ms', time, 1e-3, {
    ...both,
    ucum: 'ms',
    source: SOURCE.si,
    sentence: 'Millisecond, a thousandth of a second.',
  }),

  defineUnit('Hz', frequency, 1, {
    ...both,
    ucum: 'Hz',
    also: ['hertz'],
    source: SOURCE.si,
    sentence: 'Hertz, vibrations per second.',
  }),
  defineUnit('kHz', frequency, 1e3, {
    ...both,
    ucum: 'kHz',
    also: ['kilohertz'],
    source: SOURCE.si,
    sentence: 'Kilohertz, 1000 Hz.',
  }),

  defineUnit('m/s', speed, 1, { ucum: 'm/s', source: SOURCE.si, sentence: 'Metre per second.' }),
  defineUnit('m/s²', acceleration, 1, { ucum: 'm/s2', source: SOURCE.si, sentence: 'Metre per second squared.' }),

  defineUnit('°C', temperature, 1, {
    ucum: 'Cel',
    also: ['degC', '℃', 'Celsius', 'celsius'],
    offset: 273.15,
    source: SOURCE.si,
    sentence: 'Degree Celsius; 0 °C is 273.15 K.',
  }),
  defineUnit('°F', temperature, 5 / 9, {
    ucum: '[degF]',
    also: ['degF', '℉', 'Fahrenheit', 'fahrenheit'],
    offset: 459.67 * (5 / 9),
    system: 'inch',
    exact: false,
    source: SOURCE.ucum,
    sentence: 'Degree Fahrenheit; 68 °F is 20 °C.',
  }),
  defineUnit('K', temperature, 1, {
    ucum: 'K',
    also: ['kelvin', 'kelvins'],
    source: SOURCE.si,
    sentence: 'Kelvin, the SI unit of temperature.',
  }),

  defineUnit('%RH', humidity, 0.01, {
    ...both,
    also: ['% RH'],
    source: SOURCE.practice,
    sentence: 'Relative humidity of the air, in per cent.',
  }),
  defineUnit('%MC', moisture, 0.01, {
    ...both,
    also: ['% MC'],
    source: SOURCE.practice,
    sentence: 'Moisture content of the wood, per cent of its oven-dry mass.',
  }),

  defineUnit('cents', interval, 1 / 1200, {
    ...both,
    also: ['cent', '¢'],
    source: 'Definition: 1200 cents are one octave, 1200 log₂(f₂/f₁) (from memory)',
    sentence: 'Cent, a hundredth of an equal-tempered semitone.',
  }),
  defineUnit('semitones', interval, 1 / 12, {
    ...both,
    also: ['semitone'],
    source: 'Definition: 12 equal semitones are one octave (from memory)',
    sentence: 'Semitone, one fret: a twelfth of an octave.',
  }),
  defineUnit('octaves', interval, 1, {
    ...both,
    also: ['octave'],
    source: 'Definition: an octave doubles the frequency (from memory)',
    sentence: 'Octave, a doubling of frequency.',
  }),

  defineUnit('%', number, 0.01, {
    ...both,
    ucum: '%',
    also: ['percent', 'per cent'],
    source: SOURCE.ucum,
    sentence: 'Per cent, one hundredth.',
  }),
];
