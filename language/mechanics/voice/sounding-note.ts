/**
 * One note: how loud it starts and how long it lasts. The string moves square to the top, as the standard pluck makes it; what
 * moves along the top is hardly heard and lasts longer. SI throughout.
 */
import { add, type Complex, complex, divide, multiply, power, scale, size, subtract } from './complex.js';
import { type Partial, type SplitNote, splitNote } from './coupled-note.js';
import { type CoupledBodyMode, modalResponse, response, type SoundingBody } from './sounding-body.js';
import { pluckForce } from './standard-pluck.js';
import { decayOf, timeToFall60 } from './string-loss.js';

/** A string as the body knows it. */
export interface SoundingString {
  /** Hz, open */
  readonly pitch: number;
  /** kg/m */
  readonly massPerLength: number;
  /** 1/Q of its own at the open pitch; taken to be the same at every other. */
  readonly loss: number;
}

/** What stays the same from note to note. */
export interface Instrument {
  readonly body: SoundingBody;
  readonly modes: readonly CoupledBodyMode[];
  /** m */
  readonly scale: number;
  readonly strings: readonly SoundingString[];
}

/**
 * Hz: up to here the body is small beside the wavelength and sounds as one source, and the solved modes of the plates
 * reach. Above, nothing is told. (On classical guitars the monopole of the three lowest resonances carries most of the power
 * below some 300 Hz, and the shapes of the modes count above: I. Perry, thesis, Cardiff 2014.)
 */
export const BAND_TOP = 400;
/** Hz: partials above the first fade out of the sum from here to `BAND_TOP`, so that none comes or goes at a fret. */
const FADE_FROM = 320;

/** s: the level is the mean over the first eighth of a second, the time weighting "fast" of sound level meters (IEC 61672). */
const WINDOW = 0.125;

/** Pa and m: re 20 µPa, at one metre in the open. */
const REFERENCE = 2e-5;
const DISTANCE = 1;

export interface SoundingNote {
  /** From 0, in the order of `strings`. */
  readonly string: number;
  readonly fret: number;
  /** Hz */
  readonly pitch: number;
  /** dB re 20 µPa at 1 m in the open, of the standard pluck, mean over the first eighth of a second. */
  readonly level: number;
  /** s: T₆₀ of the lowest partial; of a split note, of the part that is more the string's. */
  readonly sustain: number;
  /** s: T₆₀ of the partials up to 400 Hz together, each as loud as it is. */
  readonly bandSustain: number;
  /** s⁻¹: how much the lowest partial gives up by itself, without the body. */
  readonly ownDecay: number;
  /** How the lowest partial shares with the mode of the body that matters most to it. */
  readonly split: NoteSplit;
}

export interface NoteSplit extends SplitNote {
  /** Index into the modes of the body. */
  readonly with: number;
}

/** A note at a fret; undefined where its pitch lies above `BAND_TOP`. */
export function soundingNote(instrument: Instrument, string: number, fret: number): SoundingNote | undefined {
  const { strings, scale: length } = instrument;
  const { pitch: open, massPerLength, loss } = strings[string]!;
  const up = 2 ** (fret / 12);
  const pitch = open * up;
  if (pitch > BAND_TOP) return undefined;
  const impedance = 2 * length * open * massPerLength;
  let pressure = 0;
  let lost = 0;
  let first = 0;
  let lowest: NoteSplit | undefined;
  for (let number = 1; number * pitch < BAND_TOP || number === 1; number++) {
    const decay = decayOf(loss, number * pitch);
    const sounding = partialOf(instrument, string, { pitch, number, impedance, decay });
    const { split, meanSquare } = sounding;
    const heard = pluckForce(length / up, number) ** 2 * meanSquare * fade(number, number * pitch) || 0;
    const rootDecay = split.roots[0].im;
    if (number === 1) first = rootDecay;
    if (number === 1) lowest = split;
    pressure += heard;
    lost += heard * rootDecay;
  }
  return {
    string,
    fret,
    pitch,
    level: 10 * Math.log10(Math.max(pressure, Number.MIN_VALUE) / REFERENCE ** 2),
    sustain: timeToFall60(first),
    bandSustain: timeToFall60(pressure > 0 ? lost / pressure : first),
    ownDecay: decayOf(loss, pitch),
    split: lowest!,
  };
}

/** Mean square of the pressure (Pa²) at one metre for 1 N of this partial at the saddle, and how it is split. */
function partialOf(
  { body, modes }: Instrument,
  string: number,
  partial: Partial,
): { readonly split: NoteSplit; readonly meanSquare: number } {
  const omega = 2 * Math.PI * partial.pitch * partial.number;
  const at = complex(omega);
  const whole = response(body, string, omega);
  const chosen = mattersMost(modes, string, omega);
  const mode = modes[chosen]!;
  const alone = modalResponse(mode, string, omega);
  // With uneven losses the rest may seem to give: it takes at least nothing, and the mode what is left.
  const other = subtract(whole.mobility, alone.mobility);
  const beyond = complex(Math.max(0, other.re), other.im);
  const under = { pole: mode.pole, mobility: subtract(whole.mobility, beyond) };
  const split = splitNote(partial, under, beyond);
  const apart = keptApart(subtract(split.roots[0], split.roots[1]));
  const rest = subtract(whole.flow, alone.flow);
  const driven = divide(multiply(alone.flow, subtract(at, mode.pole)), apart);
  const flows = [
    add(multiply(rest, split.shares[0]), driven),
    subtract(multiply(rest, split.shares[1]), driven),
  ] as const;
  const square = meanSquareOfPair(flows, split.roots) + ringing(modes, chosen, string, split, omega);
  const perFlow = (body.airDensity * omega) / (4 * Math.PI * DISTANCE);
  return { split: { ...split, with: chosen }, meanSquare: (square * perFlow * perFlow) / 2 };
}

/** The mode that a partial at ω leans on most: the greatest φ/|ω − p|. */
function mattersMost(modes: readonly CoupledBodyMode[], string: number, omega: number): number {
  let [chosen, most] = [0, -1];
  modes.forEach(({ pole, atStrings }, r) => {
    const felt = atStrings[string] ?? 0;
    const strength = (felt * felt) / ((omega - pole.re) ** 2 + pole.im ** 2);
    if (strength > most) [chosen, most] = [r, strength];
  });
  return chosen;
}

/** The other modes ring for a moment from being let go: mean square of their flow, (m³/(N·s))². */
function ringing(
  modes: readonly CoupledBodyMode[],
  chosen: number,
  string: number,
  { roots, shares }: SplitNote,
  omega: number,
): number {
  let square = 0;
  modes.forEach((mode, r) => {
    if (r === chosen) return;
    const { pole, volume, damping, atStrings } = mode;
    const moved = omega * volume * (atStrings[string] ?? 0);
    if (moved === 0) return;
    const stiff = (2 * Math.PI * mode.frequency) ** 2 - omega * omega;
    const away = (omega - pole.re) ** 2 + pole.im ** 2;
    const steady = (moved * moved * away) / (stiff * stiff + (omega * damping) ** 2);
    const begun = add(divide(shares[0], subtract(roots[0], pole)), divide(shares[1], subtract(roots[1], pole)));
    square += steady * power(begun) * fallen(2 * pole.im);
  });
  return square;
}

/** Mean of |a e^{iω₁t} + b e^{iω₂t}|² over the window. */
function meanSquareOfPair([a, b]: readonly [Complex, Complex], [p, q]: readonly [Complex, Complex]): number {
  const cross = overWindow(complex(p.re - q.re, p.im + q.im));
  return (
    power(a) * fallen(2 * p.im) +
    power(b) * fallen(2 * q.im) +
    2 * multiply(multiply(a, complex(b.re, -b.im)), cross).re
  );
}

/** Mean of e^{−rt} over the window. */
function fallen(rate: number): number {
  return Math.abs(rate) * WINDOW < 1e-9 ? 1 : -Math.expm1(-rate * WINDOW) / (rate * WINDOW);
}

/** Mean of e^{iζt} over the window. */
function overWindow(rate: Complex): Complex {
  const turned = scale(complex(-rate.im, rate.re), WINDOW);
  if (size(turned) < 1e-6) return complex(1);
  const grown = Math.exp(turned.re);
  const value = complex(grown * Math.cos(turned.im) - 1, grown * Math.sin(turned.im));
  return divide(value, turned);
}

/** Two roots that fall together are taken a thousandth of a turn a second apart: their sum is the same. */
function keptApart(apart: Complex): Complex {
  return size(apart) < 1e-3 ? complex(1e-3) : apart;
}

function fade(number: number, frequency: number): number {
  if (number === 1 || frequency <= FADE_FROM) return 1;
  return Math.cos((Math.PI / 2) * Math.min(1, (frequency - FADE_FROM) / (BAND_TOP - FADE_FROM))) ** 2;
}
