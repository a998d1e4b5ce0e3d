/**
 * The one error of this folder. A caller turns it into a finding; it is never shown to a maker as an exception.
 * `quantity` names the input at fault in plain words, `message` says what is wrong with it.
 */
export class MechanicsError extends Error {
  readonly quantity: string;

  constructor(quantity: string, message: string) {
    super(message);
    this.name = 'MechanicsError';
    this.quantity = quantity;
  }
}

/** Returns `value` if it is a finite number above zero; throws `MechanicsError` otherwise. */
export function positive(quantity: string, value: number): number {
  finite(quantity, value);
  if (value <= 0) throw new MechanicsError(quantity, `The ${quantity} must be more than zero.`);
  return value;
}

/** Returns `value` if it is finite and not negative; throws `MechanicsError` otherwise. */
export function notNegative(quantity: string, value: number): number {
  finite(quantity, value);
  if (value < 0) throw new MechanicsError(quantity, `The ${quantity} cannot be negative.`);
  return value;
}

/** Returns `value` if it is a finite number; throws `MechanicsError` for NaN, infinity and a missing number. */
export function finite(quantity: string, value: number): number {
  if (!Number.isFinite(value)) throw new MechanicsError(quantity, `The ${quantity} is not a number.`);
  return value;
}

/**
 * Returns `value` if `low <= value <= high`; throws `MechanicsError` otherwise. `shown` writes a bound in the reader's
 * unit.
 */
export function between(
  quantity: string,
  value: number,
  low: number,
  high: number,
  shown: (bound: number) => string = String,
): number {
  finite(quantity, value);
  if (value < low || value > high) {
    throw new MechanicsError(quantity, `The ${quantity} must lie between ${shown(low)} and ${shown(high)}.`);
  }
  return value;
}

/**
 * Returns a computed `value`; throws `MechanicsError` when absurd inputs have driven it out of the range of numbers.
 */
export function computed(quantity: string, value: number): number {
  if (!Number.isFinite(value)) {
    throw new MechanicsError(quantity, `The ${quantity} cannot be computed: its inputs are too large or too small.`);
  }
  return value;
}
