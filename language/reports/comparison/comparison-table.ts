/**
 * Two instruments side by side, written out: what differs in the recipe part by part, what that makes of the computed
 * values, what was read beside what was computed, and what the builds say of the difference.
 */
import type { Comparison, DerivedDifference } from '../../recipes/instrument/comparison.js';
import type { Workshop } from '../../recipes/workshop.js';
import { type ChangeRow, changeRows, countedInWords } from './compared-changes.js';
import { type ComparedEvidence, comparedEvidence } from './compared-evidence.js';
import { type DerivedRow, derivedRows } from './compared-quantities.js';
import { type ComparedFingerboard, comparedFingerboard } from './compared-fingerboard.js';
import { comparedReadings, type ReadingRow } from './compared-readings.js';
import { leftOutInWords } from './left-out.js';
import { byPart } from '../parts-in-order.js';

export type { ChangedPath, ChangeRow } from './compared-changes.js';
export type { ComparedEvidence, EvidenceRow } from './compared-evidence.js';
export type { ComparedFingerboard, ComparedNote, ComparedString } from './compared-fingerboard.js';
export type { DerivedRow } from './compared-quantities.js';
export type { ReadingRow } from './compared-readings.js';

export interface ComparisonTable {
  readonly a: string;
  readonly b: string;
  readonly kinds: { readonly a: Kind; readonly b: Kind };
  readonly ancestor?: string;
  /** What the one is to the other: `vennick-40 comes from vennick-38.` */
  readonly relation: string;
  /** `2 changes, and 1 is allowed`. */
  readonly counted: string;
  /** In the order of the catalogue, those of one part together. */
  readonly changes: readonly ChangeRow[];
  /** Likewise; what either recipe states is among the changes and not here. */
  readonly derived: readonly DerivedRow[];
  /** What is in each of these values and not in their differences, in one sentence. */
  readonly leftOut?: string;
  /** Readings of the builds of either side, beside what those builds compute to. */
  readonly readings: readonly ReadingRow[];
  /** What is heard, note by note; absent where it cannot be worked out for both, or not yet. */
  readonly fingerboard?: ComparedFingerboard;
  /** Absent where not both have been built. */
  readonly evidence?: ComparedEvidence;
}

type Kind = 'recipe' | 'model' | 'build';

export function comparisonTable(workshop: Workshop, a: string, b: string): ComparisonTable | undefined {
  const comparison = workshop.compare(a, b);
  if (!comparison) return undefined;
  const evidence = comparedEvidence(workshop, comparison);
  const fingerboard = comparedFingerboard(workshop, comparison);
  const leftOut = leftOutInWords(comparison.derived.filter(hasMoved), workshop.wording);
  return {
    a,
    b,
    kinds: { a: comparison.a.kind, b: comparison.b.kind },
    ...(comparison.ancestor === undefined ? {} : { ancestor: comparison.ancestor }),
    relation: relationOf(workshop, comparison),
    counted: countedInWords(workshop, comparison),
    changes: byPart(changeRows(workshop, comparison), ({ part }) => part, ['recipe']),
    derived: byPart(derivedRows(workshop, comparison), ({ part }) => part, ['recipe', 'build']),
    ...(leftOut === undefined ? {} : { leftOut }),
    readings: comparedReadings(workshop, comparison),
    ...(fingerboard ? { fingerboard } : {}),
    ...(evidence ? { evidence } : {}),
  };
}

function hasMoved({ difference = 0, a = 0 }: DerivedDifference): boolean {
  return Math.abs(difference) > 1e-9 * Math.abs(a);
}

function relationOf({ wording: { say } }: Workshop, { a, b, ancestor }: Comparison): string {
  if (ancestor === undefined) return say`They have no recipe in common.`;
  if (ancestor === a.name) return say`${b.name} comes from ${a.name}.`;
  if (ancestor === b.name) return say`${a.name} comes from ${b.name}.`;
  return say`Both come from ${ancestor}.`;
}
