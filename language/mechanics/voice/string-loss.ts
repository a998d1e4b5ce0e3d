/**
 * What a string loses by itself: to the air it stirs and inside. SI throughout.
 *
 * Air: the drag on a cylinder that swings across itself (G.G. Stokes 1851), as C. Valette, The mechanics of vibrating strings
 * (1995), gives it: R = 2πη + 2πd √(π η ρ f) per length, decay R/2μ (from memory). Inside: a loss factor by what the string is
 * made of, from measured decays: nylon, J. Woodhouse, Plucked guitar transients, Acta Acustica 90 (2004), table of fitted
 * strings: 14 … 40 · 10⁻⁵ for the plain, 2 … 7 · 10⁻⁵ for the wound ones; steel, plain 10⁻⁴ and wound 3 · 10⁻⁴, where the
 * winding rubs, within a factor of two (all from memory). Losses through bending stiffness matter for high partials only
 * and are left out; so is what the finger takes.
 */
import { computed, notNegative, positive } from '../error.js';
import type { StringKind } from '../stringWeight.js';

/** Pa·s, of air at 20 °C. */
const AIR_VISCOSITY = 1.81e-5;

/** Loss factor inside the string, by kind; a factor of two either way. */
const INTERNAL: Readonly<Record<StringKind, number>> = {
  'plain steel': 1e-4,
  'phosphor bronze': 3e-4,
  '80/20 bronze': 3e-4,
  'nickel-plated steel': 3e-4,
  'stainless steel': 3e-4,
  'stainless flat wound': 3e-4,
  nylon: 3e-4,
  fluorocarbon: 3e-4,
  'silver-plated on nylon': 5e-5,
};

export function internalLoss(kind: StringKind): number {
  return INTERNAL[kind];
}

/**
 * Decay (1/s, of the amplitude) of a string at `frequency` (Hz) between unmoving ends: air R/2μ and πf·η inside. `gauge` m,
 * `massPerLength` kg/m, `internal` the loss factor inside.
 */
export function stringDecay(
  {
    gauge,
    massPerLength,
    internal,
  }: { readonly gauge: number; readonly massPerLength: number; readonly internal: number },
  frequency: number,
  airDensity: number,
): number {
  const f = positive('pitch', frequency);
  const drag =
    2 * Math.PI * AIR_VISCOSITY +
    2 * Math.PI * positive('string gauge', gauge) * Math.sqrt(Math.PI * AIR_VISCOSITY * airDensity * f);
  const air = drag / (2 * positive('string weight', massPerLength));
  return computed('decay', air + Math.PI * f * notNegative('loss', internal));
}

/** T₆₀ (s): the time in which an amplitude that decays at `decay` (1/s) falls by 60 dB: ln(1000)/decay. */
export function timeToFall60(decay: number): number {
  return computed('sustain', Math.log(1000) / positive('decay', decay));
}
