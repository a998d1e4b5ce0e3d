/** What was read of the same thing in the same state, over all builds: one kind of reading, its occasions apart. */
import type { Held } from '../instrument/instrument.js';
import { lastDigitStep, sameValue } from '../instrument/values.js';
import type { Reading } from './builds.js';
import type { DesignRow } from './design-rows.js';
import { disagreements } from './evidence.js';
import { studentised } from './statistics/odd-readings.js';

/** One reading of a kind, in a row of the design. */
export interface ReadValue {
  readonly row: number;
  readonly reading: Reading;
  readonly held: Held;
  readonly si: number;
  /** Days strung and the like, by number. */
  readonly occasion: number;
  /** Variance of its logarithm from the last digit written down. */
  readonly rounding: number;
}

export interface Response {
  /** Canonical path of what was read. */
  readonly path: string;
  /** The first such reading: all were taken of the instrument in the same state. */
  readonly reading: Reading;
  readonly held: Held;
  readonly values: readonly ReadValue[];
  /** The first reading of each occasion. */
  readonly occasions: readonly Reading[];
  /** So far from the others that a slip is likelier than a guitar: asked about, and kept out until answered. */
  readonly odd: readonly ReadValue[];
}

export function responsesOf(
  rows: readonly DesignRow[],
  isReadable: (path: string, held: Held) => boolean,
): readonly Response[] {
  const found: { path: string; reading: Reading; held: Held; occasions: Reading[]; values: ReadValue[] }[] = [];
  rows.forEach((build, row) => {
    for (const reading of build.readings) {
      for (const [path, held] of reading.values) {
        const { value } = held;
        if (value.kind !== 'quantity' || !(value.quantity.si > 0) || !isReadable(path, held)) continue;
        let kind = found.find((one) => one.path === path && isSameKind(path, one.reading, reading));
        if (!kind) found.push((kind = { path, reading, held, occasions: [], values: [] }));
        let occasion = kind.occasions.findIndex((other) => disagreements(path, other, reading).length === 0);
        if (occasion < 0) occasion = kind.occasions.push(reading) - 1;
        const { si } = value.quantity;
        kind.values.push({ row, reading, held, si, occasion, rounding: (lastDigit(held) / si) ** 2 });
      }
    }
  });
  return found.map((kind) => ({ ...kind, ...withoutOdd(kind.values, rows) }));
}

/** In everything but the days since stringing. */
function isSameKind(path: string, a: Reading, b: Reading): boolean {
  // With another weight on the bridge it is another test.
  if (path.endsWith('-loaded') && !sameValue(a.values.get('added-mass')?.value, b.values.get('added-mass')?.value)) {
    return false;
  }
  return disagreements(path, a, b).every(({ condition }) => condition === 'days-strung');
}

/** Standard uncertainty of a number rounded to the digits it was written with, SI: half a step, rectangular. */
export function lastDigit({ value }: Held): number {
  if (value.kind !== 'quantity') return 0;
  return (lastDigitStep(value.written) * (value.quantity.unit?.factor ?? 1)) / 2 / Math.sqrt(3);
}

/** No change in a recipe, and no humidity, moves a reading by half of itself: a digit is missing, or another peak was read. */
const SLIP = Math.log(1.5);

function withoutOdd(values: readonly ReadValue[], rows: readonly DesignRow[]): Pick<Response, 'values' | 'odd'> {
  if (values.length < 4) return { values, odd: [] };
  const logs = values.map(({ si }) => Math.log(si));
  const middle = median(logs);
  const open = values.filter(({ row, reading }) => !isAnswered(rows[row]!, reading));
  const slips = open.filter(({ si }) => Math.abs(Math.log(si) - middle) > SLIP);
  const rest = values.filter((value) => !slips.includes(value));
  const level = rest.map(({ occasion }) => [...new Set(rest.map((each) => each.occasion))].map((o) => (o === occasion ? 1 : 0))); // prettier-ignore
  const far = studentised(level, rest.map(({ si }) => Math.log(si))); // prettier-ignore
  const odd = [
    ...slips,
    ...rest.filter((value, i) => far && far[i]!.chance < 1e-4 && open.includes(value) && isAlone(value, rest)),
  ];
  return { values: values.filter((value) => !odd.includes(value)), odd };
}

/** The same instrument does not read the same on another occasion. */
function isAlone(value: ReadValue, all: readonly ReadValue[]): boolean {
  const others = all.filter((other) => other !== value && other.row === value.row);
  return others.length > 0 && others.every(({ si }) => Math.abs(Math.log(si / value.si)) > 0.05);
}

/** The maker has said that it is right as it stands. */
function isAnswered({ definition }: DesignRow, { span }: Reading): boolean {
  return definition.statements.some(
    (statement) =>
      (statement.kind === 'accept' && statement.code.text === ODD_READING) ||
      (statement.kind === 'reading' &&
        statement.span === span &&
        statement.statements.some((inner) => inner.kind === 'accept' && inner.code.text === ODD_READING)),
  );
}

export const ODD_READING = 'odd-reading';

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return (sorted[Math.floor((sorted.length - 1) / 2)]! + sorted[Math.ceil((sorted.length - 1) / 2)]!) / 2;
}
