/**
 * One partial of a string and the body under its saddle: two oscillators that share what they have. SI throughout.
 *
 * A string of length L, wave impedance Z₀ and lowest pitch f₁ on a saddle of mobility Y obeys tan(kL) = iZ₀Y(ω); near a partial
 * that is ω − ω_n = 2 i f₁ Z₀ Y(ω). With the one mode of the body that matters most taken as it stands and the rest as a
 * mobility that hardly changes, this is the problem of two coupled oscillators
 *
 *   (ω − ω_s)(ω − p) = g²,   g² = 2 i f₁ Z₀ Y_p(ω_n) (ω_n − p),   near the mode f₁ Z₀ φ² = 2 f₁² m φ²
 *
 * where p is the mode's own complex frequency and Y_p its part of the mobility, ω_s the string's frequency with its own losses and
 * those to the rest of the body, m the mass of the sounding string and 1/φ² the mode's mass felt at the saddle. Far from the
 * mode this is exactly the weak formula, decay 2 f₁ Z₀ Re Y; on it, where g is more than half the difference of the decays, the note is split in two, which is a wolf and
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
  /** 1/s: complex frequency, ω√(1 − 1/4Q²) + iω/2Q. */
  readonly pole: Complex;
  /** s/kg: its part of the mobility at the partial. */
  readonly mobility: Complex;
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
}

/** `rest`: mobility (s/kg) of the body at the partial without that mode. */
export function splitNote(partial: Partial, mode: UnderSaddle, rest: Complex): SplitNote {
  const { pitch, number, impedance, decay } = partial;
  const at = complex(2 * Math.PI * number * pitch);
  const perMobility = complex(0, 2 * pitch * impedance);
  const string = add(complex(at.re, decay), multiply(perMobility, rest));
  const p = mode.pole;
  const g2 = multiply(multiply(perMobility, mode.mobility), subtract(at, p));
  const half = scale(subtract(string, p), 0.5);
  const middle = scale(add(string, p), 0.5);
  const root = squareRoot(add(square(half), g2));
  const [plus, minus] = [add(middle, root), subtract(middle, root)];
  const apart = scale(root, 2);
  // Energy starts in the string: amplitude of each root in it. On a double root the two are equal.
  const share = size(apart) > 0 ? divide(subtract(plus, p), apart) : complex(0.5);
  const other = subtract(complex(1), share);
  const threshold = Math.abs(p.im - string.im) / 2;
  const coupling = threshold > 0 ? Math.sqrt(size(g2)) / threshold : size(g2) > 0 ? Infinity : 0;
  const isFirst = size(share) >= size(other);
  return {
    roots: isFirst ? [plus, minus] : [minus, plus],
    shares: isFirst ? [share, other] : [other, share],
    coupling,
  };
}
