/**
 * The body as the strings drive it: every mode of top and back by itself, and the air in the hole, coupled through the
 * pressure in the box, and losing what they lose to the wood and to the air outside.
 *
 * With q the modes in coordinates of unit modal mass, outward positive, V the air each pushes out per unit of q, and F a
 * force on the saddle where the modes stand at Φ:
 *
 *   (ω_k² − ω² + iωγ_k) q_k + A_k (ρc²/V_box) Σ A_m q_m + V_k iω (ρω²/4πc) Σ V_m q_m = Φ_k F
 *
 * The pressure inside acts on the main mode of top and of back and on the hole (A is V for these and nothing for the others),
 * as in the body's three resonances, so that this body has just those; with every mode of the plates in it they would come
 * out one to four per cent lower. All modes sound: what leaves the body, Σ V q, is a source small beside the wavelength, whose
 * resistance is ρω²/4πc. Both terms are of rank one, so the response is closed (Woodbury), and what the string gives equals
 * what is lost and radiated to rounding.
 *
 * SI throughout. Sources: O. Christensen & B.B. Vistisen, J. Acoust. Soc. Am. 68 (1980) 758 (top and air); O. Christensen,
 * Acustica 50 (1982) 294 (with back) and J. Acoust. Soc. Am. 75 (1984) (radiation), from memory; J. Woodhouse, Acta Acustica 90
 * (2004) 928 and 945 (mobility as a sum of modes); monopole: L.E. Kinsler et al., Fundamentals of Acoustics, from memory. The
 * load that the air outside adds to the moving mass is left out, as it is in the resonances of the body.
 */
import { finite, notNegative, positive } from '../error.js';
import { jacobiEigen } from '../linear-algebra/jacobi-eigen.js';
import { add, type Complex, complex, divide, multiply, scale, subtract } from './complex.js';

export type ModeOf = 'top' | 'back' | 'air';

/** A mode of a part by itself, in coordinates of unit modal mass. */
export interface PartMode {
  readonly of: ModeOf;
  /** The mode in which the part moves most air: the pressure in the box acts on it. */
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

export interface BodyResponse extends Response {
  /** m³/N: what the main modes push, and so the air in the box is short of. */
  readonly squeezed: Complex;
}

/**
 * What a force at the saddle under a string (counted from 0) does at ω (1/s, above zero). In plain numbers where it matters: this
 * is asked some ten thousand times for one fingerboard and its slopes.
 */
export function response(body: SoundingBody, string: number, omega: number): BodyResponse {
  let [ownRe, ownIm, aaRe, aaIm, avRe, avIm, vvRe, vvIm, afRe, afIm, vfRe, vfIm] = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (const { main, frequency, damping, volume, atStrings } of body.modes) {
    const stiff = (2 * Math.PI * frequency) ** 2 - omega * omega;
    const lossy = omega * damping;
    const square = stiff * stiff + lossy * lossy;
    const [re, im] = [stiff / square, -lossy / square];
    const felt = atStrings[string] ?? 0;
    const pressed = main ? volume : 0;
    ownRe += felt * felt * re;
    ownIm += felt * felt * im;
    aaRe += pressed * pressed * re;
    aaIm += pressed * pressed * im;
    avRe += pressed * volume * re;
    avIm += pressed * volume * im;
    vvRe += volume * volume * re;
    vvIm += volume * volume * im;
    afRe += pressed * felt * re;
    afIm += pressed * felt * im;
    vfRe += volume * felt * re;
    vfIm += volume * felt * im;
  }
  const spring = springOf(body);
  const resistance = complex(0, omega * radiationResistance(body, omega));
  const [af, vf, av] = [complex(afRe, afIm), complex(vfRe, vfIm), complex(avRe, avIm)];
  // (1 + κ aGa) p + iωR aGv u = aGΦ,  κ aGv p + (1 + iωR vGv) u = vGΦ
  const first = add(complex(1), scale(complex(aaRe, aaIm), spring));
  const last = add(complex(1), multiply(resistance, complex(vvRe, vvIm)));
  const [upper, lower] = [multiply(resistance, av), scale(av, spring)];
  const determinant = subtract(multiply(first, last), multiply(upper, lower));
  const squeezed = divide(subtract(multiply(af, last), multiply(upper, vf)), determinant);
  const net = divide(subtract(multiply(first, vf), multiply(lower, af)), determinant);
  const held = add(scale(multiply(af, squeezed), spring), multiply(resistance, multiply(vf, net)));
  return {
    mobility: timesI(subtract(complex(ownRe, ownIm), held), omega),
    flow: timesI(net, omega),
    squeezed,
  };
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
  const mains = parts.flatMap(({ main }, i) => (main ? [i] : []));
  const matrix = mains.map((i) =>
    mains.map((j) => {
      const own = i === j ? (2 * Math.PI * parts[i]!.frequency) ** 2 : 0;
      return own + spring * parts[i]!.volume * parts[j]!.volume;
    }),
  );
  const { values, vectors } = jacobiEigen(matrix);
  const together = values.map((value, r) =>
    modeOf(body, Math.sqrt(Math.max(0, value)), new Map(mains.map((i, at) => [i, vectors[r]![at]!]))),
  );
  const alone = parts.flatMap(({ main, frequency }, i) =>
    main ? [] : [modeOf(body, 2 * Math.PI * frequency, new Map([[i, 1]]))],
  );
  return [...together, ...alone].sort((a, b) => a.frequency - b.frequency);
}

/** `moves`: how much of each part, by its index; the squares add up to 1. */
function modeOf(body: SoundingBody, omega: number, moves: ReadonlyMap<number, number>): CoupledBodyMode {
  const { modes: parts } = body;
  const strings = Math.max(0, ...parts.map(({ atStrings }) => atStrings.length));
  const atStrings = new Array<number>(strings).fill(0);
  let [volume, damping, mostly, share] = [0, 0, 0, -1];
  for (const [i, move] of moves) {
    const part = parts[i]!;
    volume += move * part.volume;
    damping += move * move * part.damping;
    part.atStrings.forEach((felt, s) => (atStrings[s]! += move * felt));
    if (move * move > share) [mostly, share] = [i, move * move];
  }
  const radiated = radiationResistance(body, omega) * volume * volume;
  damping += radiated;
  const pole = complexFrequency(omega, damping);
  return { frequency: omega / (2 * Math.PI), damping, radiated, pole, volume, atStrings, mostly, share };
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

/** iω a */
function timesI(a: Complex, omega: number): Complex {
  return { re: -omega * a.im, im: omega * a.re };
}
