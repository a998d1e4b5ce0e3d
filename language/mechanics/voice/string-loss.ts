/**
 * What a string loses by itself: to the air it stirs and inside. SI throughout.
 *
 * Air: the drag on a cylinder that swings across itself (G.G. Stokes 1851), as C. Valette, The mechanics of vibrating strings
 * (1995), gives it: R = 2πη + 2πd √(π η ρ f) per length, decay R/2μ (from memory). Inside: a loss factor and a rate by what the
 * string is made of, from measured decays. Nylon: J. Woodhouse, Plucked guitar transients, Acta Acustica 90 (2004), six
 * fitted strings, loss factor 14 … 40 · 10⁻⁵ for plain and 2 … 7 · 10⁻⁵ for wound ones, and half of 0.9 … 1.7 1/s, which air
 * explains for the plain ones alone. Steel: decays of 10 s of plain and 20 … 30 s of low wound strings on solid bodies. All
 * from memory, and within a factor of two. Losses through bending stiffness matter for high partials only and are left out;
 * so is what the finger takes.
 */
import { computed, notNegative, positive } from '../error.js';
import type { StringKind } from '../strings/string-weight.js';

/** Pa·s, of air at 20 °C. */
const AIR_VISCOSITY = 1.81e-5;

export interface OwnLoss {
  /** Loss factor inside the string. */
  readonly factor: number;
  /** 1/s: decay of the amplitude at any pitch. */
  readonly rate: number;
}

const PLAIN_STEEL = { factor: 3e-4, rate: 0 };
const WOUND_STEEL = { factor: 7e-4, rate: 0 };
const PLAIN_NYLON = { factor: 3e-4, rate: 0 };

const OWN: Readonly<Record<StringKind, OwnLoss>> = {
  'plain steel': PLAIN_STEEL,
  'phosphor bronze': WOUND_STEEL,
  '80/20 bronze': WOUND_STEEL,
  'nickel-plated steel': WOUND_STEEL,
  'stainless steel': WOUND_STEEL,
  'stainless flat wound': WOUND_STEEL,
  nylon: PLAIN_NYLON,
  fluorocarbon: PLAIN_NYLON,
  'silver-plated on nylon': { factor: 5e-5, rate: 0.5 },
};

/** What strings of a kind lose inside; a factor of two either way. */
export function ownLoss(kind: StringKind): OwnLoss {
  return OWN[kind];
}

export interface LosingString {
  /** m */
  readonly gauge: number;
  /** kg/m */
  readonly massPerLength: number;
  readonly own: OwnLoss;
}

/** Decay (1/s, of the amplitude) of a string at `frequency` (Hz) between unmoving ends. `airDensity` kg/m³. */
export function stringDecay(
  { gauge, massPerLength, own }: LosingString,
  frequency: number,
  airDensity: number,
): number {
  const f = positive('pitch', frequency);
  const air = airDrag(gauge, f, airDensity) / (2 * positive('string weight', massPerLength));
  return computed('decay', air + Math.PI * f * notNegative('loss', own.factor) + notNegative('loss', own.rate));
}

/**
 * The same from its quality factor measured at one pitch, air and all: the loss factor inside that explains it, never
 * below zero. `loss` 1/Q at `frequency` (Hz).
 */
export function ownLossFrom(
  loss: number,
  string: Omit<LosingString, 'own'>,
  frequency: number,
  airDensity: number,
): OwnLoss {
  const air = stringDecay({ ...string, own: { factor: 0, rate: 0 } }, frequency, airDensity);
  return { factor: Math.max(0, notNegative('loss', loss) - air / (Math.PI * frequency)), rate: 0 };
}

/** T₆₀ (s): the time in which an amplitude that decays at `decay` (1/s) falls by 60 dB: ln(1000)/decay. */
export function timeToFall60(decay: number): number {
  return computed('sustain', Math.log(1000) / positive('decay', decay));
}

/** kg/(m·s), per length of string. */
function airDrag(gauge: number, frequency: number, airDensity: number): number {
  const sides = positive('string gauge', gauge) * Math.sqrt(Math.PI * AIR_VISCOSITY * airDensity * frequency);
  return 2 * Math.PI * (AIR_VISCOSITY + sides);
}
