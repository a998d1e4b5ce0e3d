/** What two instruments compute to, side by side: the difference, whether it can be told apart, and which change made it. */
import { shown, shownDifference } from '../../checks/phrases.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Comparison, DerivedDifference } from '../../recipes/instrument/comparison.js';
import type { DerivedQuantity } from '../../recipes/evaluation/evaluation.js';
import type { Workshop } from '../../recipes/workshop.js';
import { shareOf } from '../figures.js';
import { moreOrLess } from './more-or-less.js';
import { partOf, partTitle, withinPart } from '../part-of.js';

export interface DerivedRow {
  readonly path: string;
  /** The path without its part. */
  readonly name: string;
  readonly part: string;
  readonly title: string;
  /** What it is, in one plain sentence. */
  readonly sentence: string;
  /** A maker hears or feels it. */
  readonly voicing: boolean;
  readonly a?: string;
  readonly b?: string;
  readonly difference?: string;
  readonly percent?: string;
  /** `lighter`, `higher`. */
  readonly word?: string;
  readonly verdict: DerivedVerdict;
  /** The verdict in words, with what it would take or what is missing. */
  readonly verdictInWords: string;
  /** The smallest difference that could be told apart; absent where there is none to speak of. */
  readonly discernible?: string;
  /** The difference in units of that, at most `FAR` of them: beyond one it can be told apart. */
  readonly times?: number;
  /** Something of the row is still being worked out. */
  readonly pending?: true;
  readonly missing: readonly string[];
  /** The largest first; what the changes do together beyond what each does by itself comes last. */
  readonly contributions: readonly Contribution[];
}

export type DerivedVerdict = 'distinct' | 'too-small' | 'same' | 'one-only' | 'unknown' | 'pending';

export interface Contribution {
  readonly label: string;
  readonly amount: string;
  /** The amount in units of what it takes to tell a difference; absent where nothing is said of that. */
  readonly times?: number;
}

/** So many times what it takes is as good as any more, and JSON knows no infinity. */
const FAR = 99;

export function derivedRows(workshop: Workshop, comparison: Comparison): readonly DerivedRow[] {
  const isStated = (path: string) => comparison.a.values.has(path) && comparison.b.values.has(path);
  return comparison.derived.filter(({ path }) => !isStated(path)).map((row) => derivedRow(workshop, comparison, row));
}

function derivedRow(workshop: Workshop, comparison: Comparison, row: DerivedDifference): DerivedRow {
  const { wording } = workshop;
  const { path, quantity, missing, difference, discernible, pending } = row;
  const part = partOf(path);
  const verdict = verdictOn(row);
  const isMoved = verdict === 'distinct' || verdict === 'too-small';
  return {
    path,
    name: withinPart(path),
    part,
    title: partTitle(part, wording),
    sentence: wording.text(quantity.sentence),
    voicing: quantity.voicing ?? false,
    ...(row.a === undefined ? {} : { a: shown(row.a, quantity) }),
    ...(row.b === undefined ? {} : { b: shown(row.b, quantity) }),
    ...(difference === undefined
      ? {}
      : { difference: isMoved ? shownDifference(difference, quantity) : wording.text('the same') }),
    ...(isMoved && row.percent !== undefined ? { percent: shareOf(row.percent / 100, wording) } : {}),
    ...(isMoved && difference !== undefined ? { word: moreOrLess(path, quantity.dimension, difference, wording) } : {}),
    verdict,
    verdictInWords: inSentence(workshop, comparison, row, verdict),
    ...(isMoved && discernible ? { discernible: shownWithTwoDigits(discernible, quantity) } : {}),
    ...(isMoved && difference !== undefined ? { times: timesOf(difference, discernible ?? 0) } : {}),
    ...(pending ? { pending } : {}),
    missing,
    contributions: isMoved ? contributionsOf(workshop, row) : [],
  };
}

function verdictOn({ a, b, difference, discernible = 0, pending }: DerivedDifference): DerivedVerdict {
  if (difference === undefined) {
    if (pending) return 'pending';
    return a === undefined && b === undefined ? 'unknown' : 'one-only';
  }
  if (Math.abs(difference) <= 1e-9 * Math.max(Math.abs(a ?? 0), Math.abs(b ?? 0))) return 'same';
  return Math.abs(difference) > discernible ? 'distinct' : 'too-small';
}

function inSentence(
  { wording: { say, some, told } }: Workshop,
  comparison: Comparison,
  { a, quantity, discernible = 0, missing, trouble }: DerivedDifference,
  verdict: DerivedVerdict,
): string {
  const wanted = missing.length > 0 ? say`needs ${some(missing, 3)}` : trouble ? told(trouble) : '';
  switch (verdict) {
    case 'distinct':
      return discernible > 0
        ? say`can be told apart: it takes ${shownWithTwoDigits(discernible, quantity)}`
        : say`can be told apart`;
    case 'too-small':
      return say`too small to tell apart: it would take ${shownWithTwoDigits(discernible, quantity)}`;
    case 'same':
      return say`the same`;
    case 'one-only': {
      const [known, other] = a === undefined ? [comparison.b, comparison.a] : [comparison.a, comparison.b];
      const only = say`known for ${known.name} only`;
      if (missing.length > 0) return say`${only}; ${other.name} ${wanted}`;
      return wanted === '' ? only : say`${only}; ${other.name}: ${wanted}`;
    }
    case 'unknown':
      return wanted === '' ? say`not known for either` : say`not known for either: ${wanted}`;
    case 'pending':
      return say`being worked out`;
  }
}

function contributionsOf({ wording }: Workshop, row: DerivedDifference): readonly Contribution[] {
  const { quantity, difference = 0, contributions, remainder } = row;
  // A remainder smaller than a thousandth of the difference is the rounding of the shares, not something to report.
  const hasRest = contributions.length > 1 && Math.abs(remainder) > 1e-3 * Math.abs(difference);
  const shares = hasRest ? [...contributions, { label: wording.text('together'), amount: remainder }] : contributions;
  return shares.map(({ label, amount }) => ({
    label,
    amount: shownDifference(amount, quantity),
    ...(row.discernible ? { times: timesOf(amount, row.discernible) } : {}),
  }));
}

function timesOf(difference: number, discernible: number): number {
  const times = discernible === 0 ? Math.sign(difference) * FAR : difference / discernible;
  return Number(Math.max(-FAR, Math.min(FAR, times)).toPrecision(4));
}

function shownWithTwoDigits(si: number, { dimension, unit }: DerivedQuantity): string {
  return writeQuantity(si, dimension, { ...(unit === '' ? {} : { unit }), digits: 2 });
}
