/** Two instruments side by side, written out: what differs in the recipe, what that makes of the computed values. */
import { shown, shownDifference } from '../checks/phrases.js';
import type { DerivedDifference, Difference } from '../recipes/comparison.js';
import type { Workshop } from '../recipes/workshop.js';
import { shareOf } from './figures.js';
import { writeInShopUnit } from './shop-values.js';

export interface ComparisonTable {
  readonly a: string;
  readonly b: string;
  readonly ancestor?: string;
  readonly changes: readonly {
    readonly label: string;
    readonly paths: readonly { readonly path: string; readonly a?: string; readonly b?: string }[];
  }[];
  readonly derived: readonly DerivedRow[];
}

export interface DerivedRow {
  readonly path: string;
  readonly a?: string;
  readonly b?: string;
  readonly difference?: string;
  readonly percent?: string;
  readonly missing: readonly string[];
  readonly contributions: readonly { readonly label: string; readonly amount: string }[];
}

/** What the changes do together beyond what each does by itself. */
const TOGETHER = 'together';

export function comparisonTable(workshop: Workshop, a: string, b: string): ComparisonTable | undefined {
  const comparison = workshop.compare(a, b);
  if (!comparison) return undefined;
  return {
    a,
    b,
    ...(comparison.ancestor === undefined ? {} : { ancestor: comparison.ancestor }),
    changes: comparison.differences.map(changeRow),
    derived: comparison.derived.map(derivedRow),
  };
}

function changeRow({ label, paths }: Difference): ComparisonTable['changes'][number] {
  return {
    label,
    paths: paths.map(({ path, a, b }) => ({
      path,
      ...(a ? { a: writeInShopUnit(path, a.value) } : {}),
      ...(b ? { b: writeInShopUnit(path, b.value) } : {}),
    })),
  };
}

function derivedRow(row: DerivedDifference): DerivedRow {
  const { path, quantity, missing, difference, contributions, remainder } = row;
  const written = (name: 'a' | 'b') => {
    const si = row[name];
    return si === undefined ? {} : { [name]: shown(si, quantity) };
  };
  const isMoved = difference !== undefined && contributions.length > 0;
  // A remainder smaller than a thousandth of the difference is the rounding of the shares, not something to report.
  const hasRest = isMoved && contributions.length > 1 && Math.abs(remainder) > 1e-3 * Math.abs(difference);
  const shares = hasRest ? [...contributions, { label: TOGETHER, amount: remainder }] : contributions;
  return {
    path,
    ...written('a'),
    ...written('b'),
    ...(difference === undefined ? {} : { difference: isMoved ? shownDifference(difference, quantity) : 'the same' }),
    ...(isMoved && row.percent !== undefined ? { percent: shareOf(row.percent / 100) } : {}),
    missing,
    contributions: shares.map(({ label, amount }) => ({ label, amount: shownDifference(amount, quantity) })),
  };
}
