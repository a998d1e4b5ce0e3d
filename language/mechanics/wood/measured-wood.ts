/** Density and stiffness of a piece of wood from what a maker can measure at the bench. SI throughout. */
import { MechanicsError, computed, notNegative, positive } from '../error.js';
import { FREE_BAR_COEFFICIENT } from '../braces/free-beam.js';

export interface Blank {
  /** m, along the grain */
  readonly length: number;
  /** m, across the grain */
  readonly width: number;
  /** m */
  readonly thickness: number;
}

/** Density (kg/m³) of a rectangular blank from its size (m) and mass (kg). Throws on any input not above zero. */
export function blankDensity(blank: Blank, mass: number): number {
  return computed('density', positive('mass', mass) / blankVolume(blank));
}

/** Volume (m³) of a rectangular blank. */
export function blankVolume({ length, width, thickness }: Blank): number {
  return positive('length', length) * positive('width', width) * positive('thickness', thickness);
}

/**
 * Young's modulus (Pa) of a free rectangular plate along the direction of `extent`, from the tap of its first bending
 * mode in that direction: E = 0.946 ρ f² L⁴ / h².
 *
 * `extent` (m) is the plate's length for the along-grain tap, its width for the across-grain tap. Free edges: the
 * plate rests on foam or is held at the nodes. Poisson coupling and shear are neglected: on twenty three-dimensional
 * finite-element plates of guitar spruce this reads E along within 0.3 % and E across within 3 % (one standard
 * deviation; D.G. Badiane et al., data set with "A neural network-based method for spruce tonewood characterization").
 * Source: bar free at both ends, βL = 4.7300. Throws on any input not above zero.
 */
export function modulusFromBendingTap(density: number, frequency: number, extent: number, thickness: number): number {
  const ratio = positive('plate size', extent) ** 2 / positive('thickness', thickness);
  return computed(
    'stiffness',
    FREE_BAR_COEFFICIENT * positive('density', density) * (positive('tap frequency', frequency) * ratio) ** 2,
  );
}

/**
 * What the closed form for the twist tap reads, as a share of the true shear modulus: median 0.898 over the twenty
 * finite-element plates named above (0.869 … 0.926), because a real twisted plate also bends.
 */
export const TWIST_TAP_SHARE = 0.898;

/**
 * In-plane shear modulus G_LR (Pa) from the twist mode of a free rectangular plate: G = 0.822 ρ f² L² W² / h², as it
 * reads, which is about 10 % low on real plates. `shearFromTwistTapCorrected` divides by that share.
 * Source: (π²/12) ρ f² L² W² / h², from equating the energies of pure twist w = xy. Throws on any input not above zero.
 */
export function shearFromTwistTap(density: number, frequency: number, blank: Blank): number {
  blankVolume(blank);
  const size = (blank.length * blank.width) / blank.thickness;
  return computed(
    'shear stiffness',
    (Math.PI ** 2 / 12) * positive('density', density) * (positive('tap frequency', frequency) * size) ** 2,
  );
}

/**
 * `shearFromTwistTap` divided by `TWIST_TAP_SHARE`: the best closed-form guess; a fit to the plate's modes is better.
 */
export function shearFromTwistTapCorrected(density: number, frequency: number, blank: Blank): number {
  return shearFromTwistTap(density, frequency, blank) / TWIST_TAP_SHARE;
}

/** Speed of sound along a bar (m/s): √(E/ρ). */
export function soundSpeed(modulus: number, density: number): number {
  return Math.sqrt(specificStiffness(modulus, density));
}

/** Specific stiffness E/ρ (m²/s²). */
export function specificStiffness(modulus: number, density: number): number {
  return computed('specific stiffness', positive('stiffness', modulus) / positive('density', density));
}

/**
 * E^(1/3)/ρ (Pa^(1/3)·m³/kg): the higher, the lighter a plate of one given bending stiffness and area.
 * Source: M.F. Ashby, Materials Selection in Mechanical Design, index for a light, stiff panel.
 */
export function panelMerit(modulus: number, density: number): number {
  return computed('panel merit', Math.cbrt(positive('stiffness', modulus)) / positive('density', density));
}

/**
 * Sound radiation ratio √(E/ρ³) (m⁴/(kg·s)). Source: U.G.K. Wegst, Wood for sound, Am. J. Botany 93 (2006), from
 * memory.
 */
export function radiationRatio(modulus: number, density: number): number {
  return computed('radiation ratio', soundSpeed(modulus, density) / density);
}

/**
 * Specific gravity at moisture content `moisture` (fraction) from that on green volume:
 * Gx = Gb / (1 − 0.265 Gb (1 − x/MCfs)). Above fibre saturation the volume is green and Gb itself comes back.
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq. 4-13; MCfs = 0.30 when unknown. Throws if Gb is not in 0.05 … 1.45.
 */
export function specificGravityAt(basic: number, moisture: number, fibreSaturation = 0.3): number {
  checkGravity(basic);
  return basic / (1 - 0.265 * basic * drynessBelowSaturation(moisture, fibreSaturation));
}

/** The inverse: specific gravity on green volume from that at `moisture` (fraction). */
export function basicSpecificGravity(gravity: number, moisture: number, fibreSaturation = 0.3): number {
  checkGravity(gravity);
  return gravity / (1 + 0.265 * gravity * drynessBelowSaturation(moisture, fibreSaturation));
}

/**
 * Density (kg/m³) at moisture content `moisture` (fraction) from the specific gravity on the volume at that moisture:
 * ρ = 1000 Gx (1 + x). Source: Wood Handbook FPL-GTR-282 (2021) Eq. 4-14.
 */
export function densityFromSpecificGravity(gravity: number, moisture: number): number {
  checkGravity(gravity);
  return computed('density', 1000 * gravity * (1 + notNegative('moisture content', moisture)));
}

/**
 * Density (kg/m³) at moisture content `to` of a board that has `density` at `from` (fractions): the specific gravity on green
 * volume is the board's own, and Eqs. 4-13 and 4-14 carry it from one moisture to the other. Source: Wood Handbook
 * FPL-GTR-282 (2021). Throws if no wood has such a density.
 */
export function densityAtMoisture(density: number, from: number, to: number): number {
  const gravity = positive('density', density) / (1000 * (1 + notNegative('moisture content', from)));
  return densityFromSpecificGravity(specificGravityAt(basicSpecificGravity(gravity, from), to), to);
}

function drynessBelowSaturation(moisture: number, fibreSaturation: number): number {
  notNegative('moisture content', moisture);
  return Math.max(0, 1 - moisture / positive('fibre saturation point', fibreSaturation));
}

function checkGravity(gravity: number): void {
  positive('specific gravity', gravity);
  // Solid wood substance has a specific gravity near 1.5; balsa starts near 0.06.
  if (gravity < 0.05 || gravity > 1.45) {
    throw new MechanicsError('specific gravity', 'The specific gravity of wood lies between 0.05 and 1.45.');
  }
}
