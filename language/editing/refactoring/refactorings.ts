/**
 * Refactorings: the text written another way, with the same meaning or the same differences. Each stands in a file of its
 * own and either offers whole edits or says why it cannot; none does half.
 */
import type { Span } from '../../facts/facts.js';
import type { BookmatchParser } from '../../recipes/shelf/reader.js';
import { contains, type Desk, shifted } from '../../checks/desk.js';
import { carryOver } from './carry-over.js';
import { convertUnits } from './convert-units.js';
import { extractAppointments } from './extract-appointments.js';
import { groupAsOneTweak } from './group.js';
import { inlineParent } from './inline-parent.js';
import type { Marked, Offer } from './offered-refactoring.js';
import { rebase } from './rebase.js';
import { splitRecipe } from './split.js';
import { waysToExpectation } from './ways-to-expectation.js';
import { writeAsChange } from './write-as-change.js';

export type { Offer, RefactoringKind } from './offered-refactoring.js';

type Refactoring = (marked: Marked) => readonly Offer[];

const REFACTORINGS: readonly Refactoring[] = [
  waysToExpectation,
  writeAsChange,
  convertUnits,
  groupAsOneTweak,
  splitRecipe,
  inlineParent,
  extractAppointments,
  rebase,
  carryOver,
];

/** What can be done with the text marked by `range`, and what cannot and why. A range without length is a cursor. */
export function refactoringsAt(desk: Desk, parser: BookmatchParser, uri: string, range: Span): readonly Offer[] {
  if (desk.shelf.isLibrary(uri)) return [];
  const entry = desk.shelf.file(uri)?.definitions.find(({ definition, line }) => {
    const whole = shifted(definition.span, line);
    return contains(whole, range.start) && contains(whole, range.end);
  });
  if (!entry) return [];
  const { definition, line } = entry;
  const marked: Marked = { desk, parser, definition, span: shifted(range, -line) };
  return REFACTORINGS.flatMap((refactoring) => refactoring(marked));
}
