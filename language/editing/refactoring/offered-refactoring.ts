/** What a refactoring is given and what it answers. */
import type { Edit } from '../../checks/finding.js';
import type { Definition, Span, Statement } from '../../facts/facts.js';
import type { BookmatchParser } from '../../recipes/shelf/reader.js';
import { type Desk, isBefore } from '../../checks/desk.js';

/** `extract`: something gets a definition of its own. `move`: the same on another line. */
/** All but `move` and `change` keep what is said. */
export type RefactoringKind = 'extract' | 'inline' | 'rewrite' | 'move' | 'change';

export type Offer =
  | { readonly title: string; readonly kind: RefactoringKind; readonly edits: readonly Edit[] }
  /** What would be fitting here and cannot be done, and why: a whole sentence that says what to do. */
  | { readonly title: string; readonly kind: RefactoringKind; readonly reason: string };

/** A definition, and the part of it that is marked; lines count from the definition's first. */
export interface Marked {
  readonly desk: Desk;
  readonly parser: BookmatchParser;
  readonly definition: Definition;
  readonly span: Span;
}

/** Nothing is marked: there is only a cursor. */
export function isCursor({ span: { start, end } }: Marked): boolean {
  return start.line === end.line && start.character === end.character;
}

/** The statements that are marked, blocks opened up; groups, adds and readings as they are. */
export function markedStatements(
  { definition, span }: Marked,
  within: readonly Statement[] = definition.statements,
): readonly Statement[] {
  const touched = (statements: readonly Statement[]): readonly Statement[] =>
    statements
      .filter((statement) => touches(statement.span, span))
      .flatMap((statement) => (statement.kind === 'block' ? touched(statement.statements) : [statement]));
  return touched(within);
}

/** The cursor, or what is marked, lies on the head. */
export function isOnHead({ definition, span }: Marked): boolean {
  return touches(definition.head, span);
}

/** Whether two stretches have a character in common, or a cursor stands in or at the edge of the other. */
export function touches(a: Span, b: Span): boolean {
  const isPoint = b.start.line === b.end.line && b.start.character === b.end.character;
  if (isPoint) return !isBefore(a.end, b.start) && !isBefore(b.end, a.start);
  return isBefore(a.start, b.end) && isBefore(b.start, a.end);
}

/** The recipe meant, when it is the one in force and all of it can be read; otherwise why nothing can be rewritten. */
export function readableRecipe({ desk, definition }: Marked): string | undefined {
  const { say } = desk.workshop.wording;
  if (desk.shelf.find('recipe', definition.name.text) !== definition) {
    return say`There are two recipes called ${definition.name.text}, and the other one counts. Rename one of them first.`;
  }
  if (definition.problems.length > 0) return say`Something in this recipe cannot be read. Mend that first.`;
  return undefined;
}
