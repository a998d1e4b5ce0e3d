/** `expect`: a recipe's own tests of what it should come out as. */
import type { Derived, Evaluation } from '../evaluation/evaluation.js';
import type { Definition, ExpectStatement, QuantityValue, Value } from '../../facts/facts.js';
import { lastDigitStep } from './values.js';

export interface Expectation {
  readonly statement: ExpectStatement;
  /** Canonical path. */
  readonly path: string;
  readonly outcome: 'met' | 'missed' | 'unknown' | 'not-a-quantity' | 'not-a-bound';
  readonly derived?: Derived;
  /** The bounds in force, SI. */
  readonly low?: number;
  readonly high?: number;
}

export function checkExpectations(
  recipe: Definition,
  evaluation: Evaluation,
  canonical: (path: string) => string,
): readonly Expectation[] {
  return recipe.statements
    .filter((statement) => statement.kind === 'expect')
    .map((statement) => check(statement, canonical(statement.quantity.text), evaluation));
}

function check(statement: ExpectStatement, path: string, evaluation: Evaluation): Expectation {
  const derived = evaluation.derivedAnywhere(path);
  const bounds = boundsOf(statement.value);
  if (!bounds) return { statement, path, outcome: 'not-a-bound', derived };
  const given = evaluation.ground.leaf(path);
  const si = given ? given.si : derived?.known ? derived.si : undefined;
  if (si === undefined) return { statement, path, outcome: derived ? 'unknown' : 'not-a-quantity', derived, ...bounds };
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = bounds;
  return { statement, path, outcome: si >= low && si <= high ? 'met' : 'missed', derived, ...bounds };
}

/** A single value is met within its tolerance, or within half a step of its last written digit. */
function boundsOf(value: Value): { low?: number; high?: number } | undefined {
  if (value.kind === 'range') return { low: value.low?.quantity.si, high: value.high?.quantity.si };
  if (value.kind !== 'quantity') return undefined;
  const half = value.quantity.tolerance ?? halfStep(value);
  return { low: value.quantity.si - half, high: value.quantity.si + half };
}

function halfStep(value: QuantityValue): number {
  return (lastDigitStep(value.written) * (value.quantity.unit?.factor ?? 1)) / 2;
}
