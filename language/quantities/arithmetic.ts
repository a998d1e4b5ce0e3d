/**
 * Arithmetic that keeps dimensions honest. A result is a quantity or a `Mismatch`; nothing throws.
 *
 * Tolerances are half-widths, limits rather than standard deviations, and two of them may share a cause; so they add
 * up in full, to first order: |∂f/∂a|·Δa + |∂f/∂b|·Δb.
 */
import { divide as divideDimensions, isNumber, multiply as multiplyDimensions, sameDimension } from './dimension.js';
import { mismatch, type Mismatch } from './mismatch.js';
import type { Quantity } from './quantity.js';
import { differenceToSi, numberOf } from './units.js';

/** a + b, in a's unit. Of two temperatures the second counts as a difference (20 °C + 2 °C is 22 °C). */
export function add(a: Quantity, b: Quantity): Quantity | Mismatch {
  if (!sameDimension(a.dimension, b.dimension)) return mismatch(b, a.dimension);
  return withParts(a, a.si + asDifference(b).si, sumOf(a.tolerance, b.tolerance));
}

/** a − b, in a's unit. Of two temperatures the result is a difference, in kelvin, and no unit is remembered. */
export function subtract(a: Quantity, b: Quantity): Quantity | Mismatch {
  if (!sameDimension(a.dimension, b.dimension)) return mismatch(b, a.dimension);
  const tolerance = sumOf(a.tolerance, b.tolerance);
  if (hasOffset(a) || hasOffset(b))
    return { si: a.si - b.si, dimension: a.dimension, ...(tolerance !== undefined && { tolerance }) };
  return withParts(a, a.si - b.si, tolerance);
}

/** k·a, in a's unit. */
export function scale(a: Quantity, factor: number): Quantity {
  return withParts(a, a.si * factor, a.tolerance === undefined ? undefined : Math.abs(factor) * a.tolerance);
}

export function multiply(a: Quantity, b: Quantity): Quantity {
  const tolerance = sumOf(times(a.tolerance, Math.abs(b.si)), times(b.tolerance, Math.abs(a.si)));
  return computed(a.si * b.si, multiplyDimensions(a.dimension, b.dimension), tolerance);
}

/** a / b; a message instead when b is zero. */
export function divide(a: Quantity, b: Quantity): Quantity | DivisionByZero {
  if (b.si === 0) return { ok: false, code: 'division-by-zero', message: 'This would divide by zero.' };
  const quotient = a.si / b.si;
  const tolerance = sumOf(times(a.tolerance, 1 / Math.abs(b.si)), times(b.tolerance, Math.abs(quotient / b.si)));
  return computed(quotient, divideDimensions(a.dimension, b.dimension), tolerance);
}

export interface DivisionByZero {
  readonly ok: false;
  readonly code: 'division-by-zero';
  readonly message: string;
}

/**
 * `a` changed by a step: per cent of itself (`by -5 %`), or a difference in its own dimension (`by -0.15 mm`,
 * `by 2 °C`). A step of a pure number may be written as per cent of itself or as a bare number.
 */
export function shift(a: Quantity, by: Quantity): Quantity | Mismatch {
  if (by.unit !== undefined && isNumber(by.dimension)) return scale(a, 1 + by.si);
  return add(a, by);
}

/**
 * `a ± tolerance`: a difference in a's dimension, per cent of a, or a bare number of a's own unit
 * (`2.85 mm ± 0.05`). The half-width is never negative.
 */
export function withTolerance(a: Quantity, tolerance: Quantity): Quantity | Mismatch {
  const bare = tolerance.unit === undefined && isNumber(tolerance.dimension);
  if (bare && a.unit !== undefined) return { ...a, tolerance: Math.abs(differenceToSi(tolerance.si, a.unit)) };
  if (!bare && isNumber(tolerance.dimension) && !isNumber(a.dimension)) {
    return { ...a, tolerance: Math.abs(a.si * tolerance.si) };
  }
  if (!sameDimension(a.dimension, tolerance.dimension)) return mismatch(tolerance, a.dimension);
  return { ...a, tolerance: Math.abs(asDifference(tolerance).si) };
}

/** The quantity read as a difference: a temperature loses the offset of its scale (2 °C becomes 2 K). */
export function asDifference(a: Quantity): Quantity {
  return a.unit !== undefined && hasOffset(a) ? { ...a, si: differenceToSi(numberOf(a), a.unit) } : a;
}

function hasOffset(a: Quantity): boolean {
  return a.unit?.offset !== undefined;
}

function withParts(a: Quantity, si: number, tolerance: number | undefined): Quantity {
  return {
    si,
    dimension: a.dimension,
    ...(a.unit !== undefined && { unit: a.unit }),
    ...(tolerance !== undefined && { tolerance }),
  };
}

function computed(si: number, dimension: Quantity['dimension'], tolerance: number | undefined): Quantity {
  return { si, dimension, ...(tolerance !== undefined && { tolerance }) };
}

function times(tolerance: number | undefined, factor: number): number | undefined {
  return tolerance === undefined ? undefined : tolerance * factor;
}

function sumOf(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined && b === undefined ? undefined : (a ?? 0) + (b ?? 0);
}
