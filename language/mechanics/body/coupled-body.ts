/**
 * Air, top and back of a guitar as coupled oscillators. Top and back are pistons on springs, the air in the hole a
 * piston of its own mass, the air inside the spring between them. SI throughout; temperatures in °C.
 *
 * Sources: O. Christensen & B.B. Vistisen, Simple model for low-frequency guitar function, J. Acoust. Soc. Am. 68
 * (1980) 758 (top and air); O. Christensen, Acustica 50 (1982) 294, from memory (back added); J. Woodhouse,
 * euphonics.org, section 4.2.2 (equations).
 */
import { airDensity, airSoundSpeed, effectiveLength, type EndCorrection, type Opening } from './air.js';
import { MechanicsError, between, computed, positive } from '../error.js';
import { jacobiEigen } from '../linear-algebra/jacobi-eigen.js';

/** One plate's main mode as a piston. */
export interface Piston {
  /** kg, effective mass at the point the stiffness is told for (the bridge) */
  readonly mass: number;
  /** N/m */
  readonly stiffness: number;
  /** m², effective area: volume pushed per metre of movement */
  readonly area: number;
}

export interface CoupledBody {
  readonly top: Piston;
  /** Absent: the back is rigid. */
  readonly back?: Piston;
  /** m³ */
  readonly volume: number;
  /** Soundhole first, then ports */
  readonly openings: readonly Opening[];
  readonly correction?: EndCorrection;
  readonly celsius?: number;
}

export type OscillatorName = 'top' | 'back' | 'air';

export interface CoupledMode {
  /** Hz */
  readonly frequency: number;
  /** The oscillator the mode is named after; each names one mode. */
  readonly of: OscillatorName;
  /** Share (0 … 1) of the kinetic energy in each oscillator; they add up to 1. */
  readonly energy: Readonly<Partial<Record<OscillatorName, number>>>;
  /**
   * Outward movement of top and back and of the air through the openings, m per √kg; the signs show who moves with
   * whom
   */
  readonly shape: Readonly<Partial<Record<OscillatorName, number>>>;
}

/**
 * Modes of the coupled body, lowest first: main air, main top and main back in the usual order. With a rigid back f₁
 * f₂ = f_top f_air exactly and f₁ < both < f₂, where f_top is the top in open air and f_air the rigid-box air; with a
 * moving back f₁ f₂ f₃ = f_top f_back f_air. Modes are named so that, taken together, each oscillator carries most of
 * the energy of the mode that bears its name; where top and back share a mode evenly the name says little, the
 * energies say all. Losses and radiation are left out. Throws without an opening and on inputs not above zero.
 */
export function coupledModes(body: CoupledBody): CoupledMode[] {
  const oscillators = listOscillators(body);
  const spring = airSpring(body.volume, body.celsius);
  const matrix = oscillators.map((a, i) =>
    oscillators.map((b, j) => {
      const own = i === j ? a.stiffness : 0;
      return computed('body stiffness', (own + spring * a.area * b.area) / Math.sqrt(a.mass * b.mass));
    }),
  );
  const { values, vectors } = jacobiEigen(matrix);
  const names = nameModes(vectors.map((vector) => vector.map((part) => part * part)));
  return values.map((value, k) => ({
    frequency: computed('frequency', Math.sqrt(Math.max(0, value)) / (2 * Math.PI)),
    of: oscillators[names[k]!]!.name,
    energy: Object.fromEntries(oscillators.map(({ name }, i) => [name, vectors[k]![i]! ** 2])),
    shape: Object.fromEntries(oscillators.map(({ name, mass }, i) => [name, vectors[k]![i]! / Math.sqrt(mass)])),
  }));
}

/** Stiffness (Pa/m³) of the air inside, pressure per volume: ρ c² / V. */
export function airSpring(volume: number, celsius = 20): number {
  return (airDensity(celsius) * airSoundSpeed(celsius) ** 2) / positive('air volume', volume);
}

/** Mass (kg) of the air plug in an opening: ρ S L. */
export function plugMass(opening: Opening, correction: EndCorrection = 'flanged', celsius = 20): number {
  return airDensity(celsius) * opening.area * effectiveLength(opening, correction);
}

export interface AddedMassResult {
  /** kg */
  readonly mass: number;
  /** N/m */
  readonly stiffness: number;
}

/**
 * Effective mass and stiffness of the top from the added-mass test: uncoupled top peak `before` (Hz), and `after` (Hz)
 * with `added` (kg) at the bridge: M = m f₁² / (f₀² − f₁²), K = (2π f₀)² M. Uncoupled: hole plugged or body in open
 * air. A 1 Hz error in f₁ is some 7 % of M for 20 g, so average three and use the largest mass that keeps the peak
 * clear. Throws unless the mass lowers the peak.
 */
export function effectiveMassFromAddedMass(before: number, after: number, added: number): AddedMassResult {
  positive('frequency', before);
  if (positive('frequency with added mass', after) >= before) {
    throw new MechanicsError('frequency with added mass', 'Added mass must lower the peak: check the two readings.');
  }
  const mass = computed('effective mass', (positive('added mass', added) * after ** 2) / (before ** 2 - after ** 2));
  return { mass, stiffness: computed('stiffness', (2 * Math.PI * before) ** 2 * mass) };
}

/** Monopole mobility 1/√(K M) (s/kg): how readily the top moves at its main resonance. Quote the method with it. */
export function monopoleMobility(mass: number, stiffness: number): number {
  return computed('mobility', 1 / Math.sqrt(positive('effective mass', mass) * positive('stiffness', stiffness)));
}

/** The frequency ratio of a change, in cents. */
export function cents(from: number, to: number): number {
  return 1200 * Math.log2(positive('frequency', to) / positive('frequency', from));
}

interface Oscillator extends Piston {
  readonly name: OscillatorName;
}

function listOscillators(body: CoupledBody): Oscillator[] {
  const { openings, correction, celsius } = body;
  if (openings.length === 0) throw new MechanicsError('soundhole', 'Without a soundhole the air does not couple.');
  if (celsius !== undefined) between('temperature', celsius, -50, 60, (bound) => `${bound} °C`);
  const oscillators: Oscillator[] = [{ ...checked(body.top), name: 'top' }];
  if (body.back) oscillators.push({ ...checked(body.back), name: 'back' });
  // Openings feel one pressure, so several move as one of their joint area whose S²/m is the sum of theirs.
  const area = openings.reduce((sum, opening) => sum + positive('area of the hole', opening.area), 0);
  const yielding = openings.reduce(
    (sum, opening) => sum + opening.area ** 2 / plugMass(opening, correction, celsius),
    0,
  );
  const mass = positive('air in the hole', computed('air in the hole', area ** 2 / yielding));
  return [...oscillators, { name: 'air', mass, stiffness: 0, area }];
}

/** For each mode the oscillator it is named after: the pairing with the greatest sum of energy shares. */
function nameModes(energies: readonly (readonly number[])[]): number[] {
  const best = (mode: number, left: readonly number[]): { sum: number; names: number[] } => {
    let found = { sum: left.length === 0 ? 0 : -1, names: [] as number[] };
    for (const name of left) {
      const rest = best(
        mode + 1,
        left.filter((other) => other !== name),
      );
      const sum = energies[mode]![name]! + rest.sum;
      if (sum > found.sum) found = { sum, names: [name, ...rest.names] };
    }
    return found;
  };
  return best(
    0,
    energies.map((_, i) => i),
  ).names;
}

function checked(piston: Piston): Piston {
  positive('effective mass', piston.mass);
  positive('stiffness', piston.stiffness);
  positive('effective area', piston.area);
  return piston;
}
