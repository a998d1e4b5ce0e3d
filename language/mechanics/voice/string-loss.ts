/**
 * What a string loses by itself, between ends that do not move: to the air it stirs and inside. SI throughout.
 *
 * Air: the drag on a cylinder that swings across itself (G.G. Stokes 1851), as C. Valette, The mechanics of vibrating strings
 * (1995), gives it: R = 2πη + 2πd √(π η ρ f) per length, decay R/2μ (from memory). Inside: a loss factor by what the string is
 * made of, from measured decays. Nylon: J. Woodhouse, Plucked guitar transients, Acta Acustica 90 (2004), six fitted
 * strings. Steel: decays of 10 s of plain and 20 … 30 s of low wound strings on solid bodies. All from memory, and within a
 * factor of two. Losses through bending stiffness matter for high partials only and are left out; so is what the finger takes.
 */
import { computed, notNegative, positive } from '../error.js';
import type { StringKind } from '../strings/string-weight.js';

/** Pa·s, of air at 20 °C. */
const AIR_VISCOSITY = 1.81e-5;

const PLAIN_STEEL = 3e-4;
const WOUND_STEEL = 7e-4;
const PLAIN_NYLON = 3e-4;

/** Loss factor inside the string. */
const INSIDE: Readonly<Record<StringKind, number>> = {
  'plain steel': PLAIN_STEEL,
  'phosphor bronze': WOUND_STEEL,
  '80/20 bronze': WOUND_STEEL,
  'nickel-plated steel': WOUND_STEEL,
  'stainless steel': WOUND_STEEL,
  'stainless flat wound': WOUND_STEEL,
  nylon: PLAIN_NYLON,
  fluorocarbon: PLAIN_NYLON,
  'silver-plated on nylon': 1.2e-3,
};

export interface StringMake {
  readonly kind: StringKind;
  /** m */
  readonly gauge: number;
  /** kg/m */
  readonly massPerLength: number;
}

/** Loss factor (1/Q) of a string at `frequency` (Hz), air and all. `airDensity` kg/m³. */
export function stringLoss({ kind, gauge, massPerLength }: StringMake, frequency: number, airDensity = 1.204): number {
  const f = positive('pitch', frequency);
  const sides = positive('string gauge', gauge) * Math.sqrt(Math.PI * AIR_VISCOSITY * airDensity * f);
  const drag = 2 * Math.PI * (AIR_VISCOSITY + sides);
  return computed('loss', INSIDE[kind] + drag / (2 * Math.PI * f * positive('string weight', massPerLength)));
}

/** Decay (1/s, of the amplitude) of what swings at `frequency` (Hz) and loses `loss` (1/Q): πf/Q. */
export function decayOf(loss: number, frequency: number): number {
  return computed('decay', Math.PI * positive('pitch', frequency) * notNegative('loss', loss));
}

/** T₆₀ (s): the time in which an amplitude that decays at `decay` (1/s) falls by 60 dB: ln(1000)/decay. */
export function timeToFall60(decay: number): number {
  return computed('sustain', Math.log(1000) / positive('decay', decay));
}
