/** The regularised incomplete beta function, from which Student's t and F come. */

/**
 * I_x(a, b), 0 ≤ x ≤ 1, a and b > 0. Source: NIST Digital Library of Mathematical Functions, 8.17.22 (continued fraction);
 * evaluated by Lentz's method (W.H. Press et al., Numerical Recipes, sec. 5.2 and 6.4, from memory).
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  return front / fraction(x, a, b);
}

/** 1 + d₁/(1 + d₂/(1 + …)), DLMF 8.17.23. */
function fraction(x: number, a: number, b: number): number {
  let [f, c, d] = [1, 1, 0];
  for (let n = 1; n < 10_000; n += 1) {
    const m = Math.floor(n / 2);
    const part =
      n % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / atLeast(1 + part * d);
    c = atLeast(1 + part / c);
    f *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return f;
}

function atLeast(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}

/** ln Γ(x), x > 0. Source: C. Lanczos, SIAM J. Numer. Anal. B 1 (1964) 86, with g = 7 and nine terms (from memory). */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const t = x + 6.5;
  const sum = LANCZOS.reduce((total, term, i) => (i === 0 ? term : total + term / (x + i - 1)), 0);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];
