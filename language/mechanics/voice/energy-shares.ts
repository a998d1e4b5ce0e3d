/**
 * Which modulus a mode leans on, and what the wood costs it. By Rayleigh's principle d(ω²)/dE · E/ω² is the share of the
 * mode's strain energy that is stored by the modulus E, so the solver's slopes of a frequency are the shares:
 * 2 ∂ ln f/∂ ln E. Energy goes the same way: with a complex modulus E(1 + iη) each, the mode loses Σ share · η. Source: M.E.
 * McIntyre & J. Woodhouse, On measuring the elastic and damping constants of orthotropic sheet materials, Acta
 * Metallurgica 36 (1988) 1397 (from memory).
 */
import { finite, notNegative, positive } from '../error.js';

/** Share (0 … 1) of the strain energy of a mode at `frequency` (Hz) in one modulus. */
export function energyShare(frequency: number, modulus: number, slope: number): number {
  return (2 * finite('slope', slope) * notNegative('modulus', modulus)) / positive('frequency', frequency);
}

/**
 * How much more spruce loses across the grain and in shear than along it, where nobody measured: 2.5 and 2.2 times, within
 * a third. M. Ono & M. Norimoto, Jpn. J. Appl. Phys. 22 (1983) 611 and 24 (1985) 960, on woods for soundboards (from memory).
 */
export const USUAL_LOSS_RATIOS = { across: 2.5, twist: 2.2 } as const;
