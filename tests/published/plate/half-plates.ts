/**
 * The first five peaks of five measured free half-plates of guitar spruce, from the data set's own constants. Source: D.G.
 * Badiane, R. Malvermi, S. Gonzalez, F. Antonacci, A. Sarti, data set with "A neural network-based method for spruce tonewood
 * characterization" (J. Acoust. Soc. Am.); peaks taken from its raw records to ±0.5 Hz. Which peak is which mode was identified
 * here: see the remarks in `spruce-plates-taps.json`. The two shear moduli through the thickness, which the estimates leave out,
 * are those of the first plate of the same authors' finite-element set.
 */
import { readFileSync } from 'node:fs';
import type { TopModel } from '../../../language/mechanics/plate/index.js';
import { number, readTable } from '../table.js';
import { freePlate } from './free-plates.js';

export interface HalfPlate {
  readonly plate: string;
  readonly peaks_Hz: Readonly<Record<string, number>>;
  readonly remarks: readonly string[];
}

export const { plates: halfPlates } = JSON.parse(
  readFileSync(new URL('../data/spruce-plates-taps.json', import.meta.url), 'utf8'),
) as { readonly plates: readonly HalfPlate[] };
const rows = readTable('top-spruce-plates-measured.csv');
const nominal = readTable('top-spruce-plates-fe.csv')[0]!;

export function halfPlateModel({ plate }: HalfPlate): TopModel {
  const row = rows.find((each) => each.plate === plate)!;
  const wood = {
    eAlong: number(row, 'est_EL_Pa'),
    eAcross: number(row, 'est_ER_Pa'),
    poisson: number(row, 'est_nuLR'),
    shearInPlane: number(row, 'est_GLR_Pa'),
    shearAlong: number(nominal, 'GLT_Pa'),
    shearAcross: number(nominal, 'GRT_Pa'),
    density: number(row, 'est_rho_kg_m3'),
  };
  return freePlate(number(row, 'est_L_m'), number(row, 'est_W_m'), number(row, 'est_T_m'), wood);
}

/** The first five: mode and Hz. */
export function firstPeaks({ peaks_Hz: peaks }: HalfPlate): readonly (readonly [string, number])[] {
  return Object.entries(peaks)
    .sort(([, a], [, b]) => a - b)
    .slice(0, 5);
}
