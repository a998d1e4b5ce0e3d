/**
 * The main job on real input: five measured half-plates of guitar spruce, written as `wood` definitions from size, mass
 * and the three peaks of a free plate, against the data set's own elastic constants.
 *
 * Source: D. G. Badiane, R. Malvermi, S. Gonzalez, F. Antonacci, A. Sarti, data set with "A neural network-based method
 * for spruce tonewood characterization" (J. Acoust. Soc. Am.), github.com/David-Badiane/Data-driven-characterization-of-
 * spruce-tonewood-plates. Which peak is which mode: see the note in data/spruce-plates-taps.json.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { shopOf } from '../recipes/shop-of.js';
import { number, readTable } from './table.js';

interface Plate {
  readonly plate: string;
  readonly length_mm: number;
  readonly width_mm: number;
  readonly thickness_mm: number;
  readonly mass_g: number;
  readonly taps_Hz: { readonly along: number; readonly across: number; readonly twist: number };
}

const { plates } = JSON.parse(readFileSync(new URL('./data/spruce-plates-taps.json', import.meta.url), 'utf8')) as {
  plates: readonly Plate[];
};
const published = readTable('spruce-plates-measured.csv');

function definition({ plate, length_mm, width_mm, thickness_mm, mass_g, taps_Hz }: Plate): string {
  return `wood half-${plate} is norway-spruce {
    use: top
    blank: ${length_mm} mm x ${width_mm} mm x ${thickness_mm} mm
    mass: ${mass_g} g
    tap { along: ${taps_Hz.along} Hz  across: ${taps_Hz.across} Hz  twist: ${taps_Hz.twist} Hz }
  }`;
}

describe.each(plates)('half-plate $plate as a wood definition', (plate) => {
  const wood = shopOf(definition(plate)).workshop.wood(`half-${plate.plate}`)!;
  const row = published.find((each) => each.plate === plate.plate)!;
  const off = (path: string, column: string) => Math.abs(wood.number(path)! / number(row, column) - 1);

  it('gives E along within 4 %', () => {
    expect(off('modulus.along', 'est_EL_Pa')).toBeLessThan(0.04);
  });
  it('gives G within 13 %', () => {
    expect(off('modulus.twist', 'est_GLR_Pa')).toBeLessThan(0.13);
  });
  it('gives E across within 6 %', () => {
    expect(off('modulus.across', 'est_ER_Pa')).toBeLessThan(0.06);
  });
  it('takes E along from the measurement, not the handbook', () => {
    const derived = wood.derived('modulus.along')!;
    expect(derived.known && [...derived.basis]).toEqual(['measured']);
  });
});
