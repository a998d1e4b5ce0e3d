/** Tension of strings and what follows from it. SI throughout. */
import { between, computed, notNegative, positive } from '../error.js';

/**
 * Tension (N) of a string at pitch: T = μ (2 L f)². Source: M. Mersenne, Harmonie universelle (1636); any text on
 * strings. `massPerLength` kg/m, `frequency` Hz, `scale` m (nut to saddle). Throws on inputs not above zero.
 */
export function stringTension(massPerLength: number, frequency: number, scale: number): number {
  return computed(
    'string tension',
    positive('string weight', massPerLength) * (2 * positive('scale', scale) * positive('pitch', frequency)) ** 2,
  );
}

export interface StretchedString {
  /** N */
  readonly tension: number;
  /** m, of the part that carries the tension */
  readonly core: number;
  /** Pa */
  readonly coreModulus: number;
}

/** Stiffness E A (N) of a string's core against stretching. */
export function stringStretchStiffness({ core, coreModulus }: StretchedString): number {
  return positive(
    'stretching stiffness',
    computed(
      'stretching stiffness',
      (positive('core modulus', coreModulus) * Math.PI * positive('string core', core) ** 2) / 4,
    ),
  );
}

/**
 * How far (m) a string of free length `length` (m, between tuner and pin) must be stretched to rise by `semitones`:
 * ΔT = T (2^(s/6) − 1), stretch = ΔT L / EA. Nylon creeps; for it this is the stretch at once.
 */
export function stretchForPitch(string: StretchedString, length: number, semitones = 1): number {
  const rise = positive('string tension', string.tension) * (2 ** (between('pitch', semitones, -24, 24) / 6) - 1);
  return computed('stretch', (rise * positive('string length', length)) / stringStretchStiffness(string));
}

/**
 * Inharmonicity B of a string: f_n = n f √(1 + B n²), B = π³ E d⁴ / (64 T L²). Source: H. Fletcher, Normal vibration
 * frequencies of a stiff piano string, J. Acoust. Soc. Am. 36 (1964) 203 (from memory). For a wound string the core
 * alone is taken to be stiff.
 */
export function inharmonicity(string: StretchedString, scale: number): number {
  const stiffness =
    Math.PI ** 3 * positive('core modulus', string.coreModulus) * positive('string core', string.core) ** 4;
  return computed(
    'inharmonicity',
    stiffness / (64 * positive('string tension', string.tension) * positive('scale', scale) ** 2),
  );
}

export interface FrettedString extends StretchedString {
  /** m, nut to saddle before compensation */
  readonly scale: number;
  /** m, string above the twelfth fret */
  readonly action: number;
}

/**
 * Setback of the saddle (m) that brings the note at the twelfth fret to the octave: ΔL = L (EA δ / 2 T L + 3 B / 2),
 * with δ = 2 a²/L the extra length when the string is pressed down by the action a in its middle, and the bending
 * stiffness acting on half the length. An estimate, low for the plain third and for heavy fingers: the pull behind the
 * fret is left out. Derived here from the two textbook effects; typical results 1 … 5 mm (common practice).
 */
export function saddleSetback(string: FrettedString): number {
  const scale = positive('scale', string.scale);
  const extra = (2 * notNegative('action', string.action) ** 2) / scale;
  const sharpening =
    (stringStretchStiffness(string) * extra) / (2 * positive('string tension', string.tension) * scale);
  return computed('setback', scale * (sharpening + 1.5 * inharmonicity(string, scale)));
}
