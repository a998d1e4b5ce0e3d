/**
 * The body as the strings drive it: every mode of top and back by itself, and the air in the hole, coupled through the
 * one pressure in the box, and losing what they lose to the wood and to the air outside.
 *
 * With q the modes in coordinates of unit modal mass, outward positive, V the air each pushes out per unit of q, and F a
 * force on the saddle where the modes stand at Φ:
 *
 *   (ω_k² − ω² + iωγ_k) q_k + V_k z(ω) Σ V_m q_m = Φ_k F,     z = ρc²/V_box + iω · ρω²/(4πc)
 *
 * Whatever leaves the box through the walls and the hole is what the air inside is short of, so the same sum Σ V q makes the
 * pressure inside (ρc²/V_box) and, as a monopole, what is radiated (ρω²/4πc, the resistance of a source small beside the
 * wavelength). One and the same rank-one term, so the response is closed (Sherman–Morrison), and what the string gives
 * equals what is lost and radiated to rounding.
 *
 * SI throughout. Sources: O. Christensen & B.B. Vistisen, J. Acoust. Soc. Am. 68 (1980) 758 (top and air); O. Christensen,
 * Acustica 50 (1982) 294 (with back) and J. Acoust. Soc. Am. 75 (1984) (radiation), from memory; J. Woodhouse, Acta Acustica 90
 * (2004) 928 and 945 (mobility as a sum of modes); monopole: L.E. Kinsler et al., Fundamentals of Acoustics, from memory. The
 * load that the air outside adds to the moving mass is left out, as it is in the resonances of the body.
 */
import { finite, notNegative, positive } from '../error.js';
import { jacobiEigen } from '../linear-algebra/jacobi-eigen.js';
import { add, type Complex, complex, divide, multiply, power, scale, subtract } from './complex.js';

export type ModeOf = 'top' | 'back' | 'air';

/** A mode of a part by itself, in coordinates of unit modal mass. */
export interface PartMode {
  readonly of: ModeOf;
  /** The mode in which the part moves most air. */
  readonly main: boolean;
  /** Hz, in open air; 0 for the air in the hole, which has no spring of its own. */
  readonly frequency: number;
  /** γ, 1/s: what it loses; 2πf/Q for a mode of quality Q. */
  readonly damping: number;
  /** m²/√kg, outward positive: air pushed out per unit of the mode. */
  readonly volume: number;
  /** 1/√kg, upward positive: movement of the saddle under each string; empty where no string is felt. */
  readonly atStrings: readonly number[];
}

export interface SoundingBody {
  readonly modes: readonly PartMode[];
  /** m³ */
  readonly volume: number;
  /** kg/m³ and m/s */
  readonly airDensity: number;
  readonly soundSpeed: number;
}

export interface Response {
  /** s/kg: velocity of the saddle per force there. */
  readonly mobility: Complex;
  /** m³/(N·s): net flow out of the body per force at the saddle. */
  readonly flow: Complex;
}

/** Pa/m³ and Pa·s/m³: spring of the air in the box, resistance of the air outside at ω (1/s). */
export function springOf({ volume, airDensity, soundSpeed }: SoundingBody): number {
  return (
    (positive('air density', airDensity) * positive('speed of sound', soundSpeed) ** 2) / positive('air volume', volume)
  );
}

export function radiationResistance({ airDensity, soundSpeed }: SoundingBody, omega: number): number {
  return (airDensity * omega * omega) / (4 * Math.PI * soundSpeed);
}

/** What a force at the saddle under a string (counted from 0) does at ω (1/s, above zero). */
export function response(body: SoundingBody, string: number, omega: number): Response {
  const z = complex(springOf(body), omega * radiationResistance(body, omega));
  // In plain numbers: this is asked some ten thousand times for one fingerboard and its slopes.
  let [ownRe, ownIm, pushedRe, pushedIm, mixedRe, mixedIm] = [0, 0, 0, 0, 0, 0];
  for (const { frequency, damping, volume, atStrings } of body.modes) {
    const re = (2 * Math.PI * frequency) ** 2 - omega * omega;
    const im = omega * damping;
    const square = re * re + im * im;
    const felt = atStrings[string] ?? 0;
    ownRe += (felt * felt * re) / square;
    ownIm -= (felt * felt * im) / square;
    pushedRe += (volume * volume * re) / square;
    pushedIm -= (volume * volume * im) / square;
    mixedRe += (volume * felt * re) / square;
    mixedIm -= (volume * felt * im) / square;
  }
  const [own, pushed, mixed] = [complex(ownRe, ownIm), complex(pushedRe, pushedIm), complex(mixedRe, mixedIm)];
  const net = divide(mixed, add(complex(1), multiply(z, pushed)));
  const movement = subtract(own, multiply(z, multiply(net, mixed)));
  return { mobility: timesI(movement, omega), flow: timesI(net, omega) };
}

export interface PowerBalance {
  /** W: given by a force of amplitude 1 N at the saddle. */
  readonly given: number;
  readonly radiated: number;
  /** W, by mode of `modes`. */
  readonly lost: readonly number[];
}

/** Where the power of a steady force of amplitude 1 N at ω goes: `given` = `radiated` + Σ `lost`, to rounding. */
export function powerBalance(body: SoundingBody, string: number, omega: number): PowerBalance {
  const { mobility, flow } = response(body, string, omega);
  const z = complex(springOf(body), omega * radiationResistance(body, omega));
  const net = divide(flow, complex(0, omega));
  const lost = body.modes.map((mode) => {
    const drive = subtract(complex(mode.atStrings[string] ?? 0), scale(multiply(z, net), mode.volume));
    const q = divide(drive, dynamicStiffness(mode, omega));
    return (mode.damping * omega * omega * power(q)) / 2;
  });
  return { given: mobility.re / 2, radiated: (radiationResistance(body, omega) * power(flow)) / 2, lost };
}

/** A mode of the whole body. */
export interface CoupledBodyMode {
  /** Hz, without losses */
  readonly frequency: number;
  /** γ, 1/s: to wood, joints and the air of the hole, and to the sound radiated. */
  readonly damping: number;
  /** Of that, by radiation. */
  readonly radiated: number;
  /** 1/s: ω√(1 − 1/4Q²) + iγ/2. */
  readonly pole: Complex;
  /** m²/√kg and 1/√kg, as in `PartMode`. */
  readonly volume: number;
  readonly atStrings: readonly number[];
  /** What moves most in it: index into `modes` of the body, and its share (0 … 1) of the kinetic energy. */
  readonly mostly: number;
  readonly share: number;
}

/**
 * The modes of the body, lowest first. Losses are taken to first order, each part's γ weighted by its share of the kinetic
 * energy (modal damping), so that 1/Q = γ/ω.
 */
export function coupledBodyModes(body: SoundingBody): readonly CoupledBodyMode[] {
  const spring = springOf(body);
  const parts = body.modes;
  const matrix = parts.map((a, i) =>
    parts.map((b, j) => (i === j ? (2 * Math.PI * a.frequency) ** 2 : 0) + spring * a.volume * b.volume),
  );
  const { values, vectors } = jacobiEigen(matrix);
  const strings = Math.max(0, ...parts.map(({ atStrings }) => atStrings.length));
  return values.map((value, r) => {
    const vector = vectors[r]!;
    const omega = Math.sqrt(Math.max(0, value));
    const volume = sum(vector, (part, i) => part * parts[i]!.volume);
    const radiated = radiationResistance(body, omega) * volume * volume;
    const shares = vector.map((part) => part * part);
    const mostly = shares.indexOf(Math.max(...shares));
    const damping = sum(shares, (share, i) => share * parts[i]!.damping) + radiated;
    return {
      frequency: omega / (2 * Math.PI),
      damping,
      radiated,
      pole: complexFrequency(omega, damping),
      volume,
      atStrings: Array.from({ length: strings }, (_, s) =>
        sum(vector, (part, i) => part * (parts[i]!.atStrings[s] ?? 0)),
      ),
      mostly,
      share: shares[mostly]!,
    };
  });
}

function complexFrequency(omega: number, damping: number): Complex {
  return complex(Math.sqrt(Math.max(0, omega * omega - (damping * damping) / 4)), damping / 2);
}

/** One mode's part of mobility and flow, as if it were alone. */
export function modalResponse(mode: CoupledBodyMode, string: number, omega: number): Response {
  const square = (2 * Math.PI * mode.frequency) ** 2;
  const felt = mode.atStrings[string] ?? 0;
  const moved = divide(complex(0, omega), complex(square - omega * omega, omega * mode.damping));
  return { mobility: scale(moved, felt * felt), flow: scale(moved, felt * mode.volume) };
}

/** Throws `MechanicsError` unless every number of the body can be used. */
export function checkedBody(body: SoundingBody): SoundingBody {
  springOf(body);
  for (const mode of body.modes) {
    notNegative('resonance', mode.frequency);
    notNegative('loss', mode.damping);
    finite('effective area', mode.volume);
    mode.atStrings.forEach((felt) => finite('movement at the saddle', felt));
  }
  return body;
}

function dynamicStiffness({ frequency, damping }: PartMode, omega: number): Complex {
  return complex((2 * Math.PI * frequency) ** 2 - omega * omega, omega * damping);
}

/** iω a */
function timesI(a: Complex, omega: number): Complex {
  return { re: -omega * a.im, im: omega * a.re };
}

function sum(values: readonly number[], of: (value: number, i: number) => number): number {
  return values.reduce((total, value, i) => total + of(value, i), 0);
}
