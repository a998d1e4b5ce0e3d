/** Complex numbers as pairs, for responses and decays. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export function complex(re: number, im = 0): Complex {
  return { re, im };
}

export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

export function subtract(a: Complex, b: Complex): Complex {
  return { re: a.re - b.re, im: a.im - b.im };
}

export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function scale(a: Complex, by: number): Complex {
  return { re: a.re * by, im: a.im * by };
}

/** a / b; infinite or NaN where b is zero. */
export function divide(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}

export function square(a: Complex): Complex {
  return multiply(a, a);
}

/** |a|² */
export function power(a: Complex): number {
  return a.re * a.re + a.im * a.im;
}

export function size(a: Complex): number {
  return Math.hypot(a.re, a.im);
}

/** The root in the right half plane. */
export function squareRoot(a: Complex): Complex {
  const r = size(a);
  const re = Math.sqrt(Math.max(0, (r + a.re) / 2));
  const im = Math.sqrt(Math.max(0, (r - a.re) / 2));
  return { re, im: a.im < 0 ? -im : im };
}
