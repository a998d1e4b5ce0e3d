/**
 * One partial of a string and the body under its saddle: two oscillators that share what they have. SI throughout.
 *
 * A string of length L, wave impedance Z₀ and lowest pitch f₁ on a saddle of mobility Y obeys tan(kL) = iZ₀Y(ω); near a partial
 * that is ω − ω_n = 2 i f₁ Z₀ Y(ω). With the one mode of the body that matters most taken as it stands and the rest as a
 * mobility that hardly changes, this is the problem of two coupled oscillators
 *
 *   (ω − ω_s)(ω − p) = g²,   g² = f₁ Z₀ φ² = 2 f₁² m φ²
 *
 * where p is the mode's own complex frequency, ω_s the string's with its own losses and those to the rest of the body, m the
 * mass of the sounding string and 1/φ² the mode's mass felt at the saddle. Far from the mode this is the weak formula, decay
 * 2 f₁ Z₀ Re Y; on it, where g is more than half the difference of the decays, the note is split in two, which is a wolf and
 * not an infinity. Sources: C.E. Gough, J. Acoust. Soc. Am. 49 (1971) and Acustica 49 (1981) 124: strong where K =
 * (2Q/nπ)√(2m/M) > 1 (from memory; the same follows here from the roots); J. Woodhouse, Acta Acustica 90 (2004) 928.
 */
import { add, type Complex, complex, divide, multiply, scale, size, square, squareRoot, subtract } from './complex.js';

export interface Partial {
  /** Hz: lowest pitch of the sounding length. */
  readonly pitch: number;
  /** 1, 2, … */
  readonly number: number;
  /** kg/s: √(Tμ). */
  readonly impedance: number;
  /** 1/s: amplitude lost by the string itself at this partial. */
  readonly decay: number;
}

/** A mode of the body under the saddle. */
export interface UnderSaddle {
  /** Hz and 1/s (2πf/Q). */
  readonly frequency: number;
  readonly damping: number;
  /** 1/√kg */
  readonly felt: number;
}

export interface SplitNote {
  /**
   * The two complex frequencies (1/s; the imaginary part is the decay of the amplitude), that of the string first, and the
   * share of the plucked string's amplitude that each begins with; the shares add up to 1.
   */
  readonly roots: readonly [Complex, Complex];
  readonly shares: readonly [Complex, Complex];
  /** g over the least g that splits the note: above 1 strong, Gough's K where the string itself loses nothing. */
  readonly coupling: number;
  /** The mode's own complex frequency and the string's. */
  readonly mode: Complex;
  readonly string: Complex;
}

/** The complex frequency of a damped mode: ω√(1 − 1/4Q²) + iγ/2. */
export function complexFrequency({ frequency, damping }: Pick<UnderSaddle, 'frequency' | 'damping'>): Complex {
  const omega = 2 * Math.PI * frequency;
  return complex(Math.sqrt(Math.max(0, omega * omega - (damping * damping) / 4)), damping / 2);
}

/** `rest`: mobility (s/kg) of the body at the partial without that mode. */
export function splitNote(partial: Partial, mode: UnderSaddle, rest: Complex): SplitNote {
  const { pitch, number, impedance, decay } = partial;
  const open = complex(2 * Math.PI * number * pitch, decay);
  const string = add(open, multiply(complex(0, 2 * pitch * impedance), rest));
  const p = complexFrequency(mode);
  const g2 = pitch * impedance * mode.felt * mode.felt;
  const half = scale(subtract(string, p), 0.5);
  const middle = scale(add(string, p), 0.5);
  const root = squareRoot(add(square(half), complex(g2)));
  const [plus, minus] = [add(middle, root), subtract(middle, root)];
  const apart = scale(root, 2);
  // Energy starts in the string: amplitude of each root in it. On a double root the two are equal.
  const share = size(apart) > 0 ? divide(subtract(plus, p), apart) : complex(0.5);
  const other = subtract(complex(1), share);
  const threshold = Math.abs(p.im - string.im) / 2;
  const coupling = threshold > 0 ? Math.sqrt(g2) / threshold : g2 > 0 ? Infinity : 0;
  const isFirst = size(share) >= size(other);
  return {
    roots: isFirst ? [plus, minus] : [minus, plus],
    shares: isFirst ? [share, other] : [other, share],
    coupling,
    mode: p,
    string,
  };
}

/** Decay (1/s) of a partial while the coupling is weak: 2 f₁ Z₀ Re Y and what the string loses itself. */
export function weakDecay({ pitch, impedance, decay }: Partial, mobility: Complex): number {
  return 2 * pitch * impedance * mobility.re + decay;
}

/** g (1/s) of a string of impedance Z₀ and pitch f₁ on a mode. */
export function couplingRate({ pitch, impedance }: Pick<Partial, 'pitch' | 'impedance'>, felt: number): number {
  return Math.sqrt(pitch * impedance) * Math.abs(felt);
}
