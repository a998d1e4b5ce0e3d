/** The changes of a parent and those of its child as the changes of one recipe, from the grandparent to the child. */
import type { Edit } from '../../checks/finding.js';
import { remove, replace, restated, textAt } from '../../checks/mending.js';
import { writeValue } from '../../checks/phrases.js';
import type { ChangeStatement, Statement, Value } from '../../facts/facts.js';
import { type Change, isWithin } from '../../recipes/instrument/instrument.js';
import { sameValue } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { writeExactly } from './exact-value.js';
import type { Line } from './line.js';

export interface Merged {
  /** Lines of the parent for the child's body. */
  readonly lines: readonly string[];
  /** What changes in the child's own lines. */
  readonly edits: readonly Edit[];
}

export function mergedChanges(
  workshop: Workshop,
  { child, parent, grandparent }: Line,
): Merged | { readonly reason: string } {
  const { say } = workshop.wording;
  const own = workshop.instrument(child.name.text)?.changes ?? [];
  const theirs = workshop.instrument(parent.name.text)?.changes ?? [];
  const before = workshop.instrument(grandparent.name.text)?.values;
  if ([...own, ...theirs].some(({ path }) => path === 'model')) {
    return { reason: say`A change of model brings all its differences with one line and cannot be taken apart.` };
  }
  const left = new Set<Statement>();
  const edits: Edit[] = [];
  for (const mine of own) {
    if (mine.written === 'with') continue;
    const met = theirs.filter(({ path }) => isWithin(path, mine.path) || isWithin(mine.path, path));
    const solved = workshop.instrument(parent.name.text)?.values.get(mine.path)?.via === 'solved';
    if (met.length === 0 && !solved) continue;
    for (const their of met) {
      const isPlain = their.kind === 'value' && their.written !== 'with' && !their.group;
      const isOver =
        mine.kind === 'drop' ? isWithin(their.path, mine.path) : mine.path === their.path && mine.kind === 'value';
      if (!isPlain || !isOver) {
        return {
          reason: say`${child.name.text} changes ${mine.path}, and ${parent.name.text} changes ${their.path} in a group, a package or a part that comes or goes. Bring the two together by hand.`,
        };
      }
      left.add(their.statement);
    }
    if (mine.kind !== 'value' || mine.statement.kind !== 'change') continue;
    const first = before?.get(mine.path)?.value;
    const edit = restarted(child, mine.statement, first, mine.after?.value, met[0]);
    if (edit === undefined) return { reason: say`The new value of ${mine.path} cannot be written out exactly.` };
    edits.push(edit);
  }
  const lines = leavesOf(parent.statements)
    .filter((statement) => !left.has(statement))
    .map((statement) => restated(parent, statement));
  return { lines, edits };
}

/** A change of the child that starts from what the grandparent has. */
function restarted(
  child: Line['child'],
  statement: ChangeStatement,
  before: Value | undefined,
  after: Value | undefined,
  their: Change | undefined,
): Edit | undefined {
  if (before && after && sameValue(before, after)) return remove(child, statement);
  const value = statement.new ? textAt(child, statement.new.span) : exactly(after);
  if (value === undefined) return undefined;
  const path = textAt(child, statement.path.span);
  // As the parent said it, where that is still so.
  const stated = their?.stated && sameValue(their.stated, before) ? writeValue(their.stated) : undefined;
  const old = stated ?? (before && writeValue(before));
  return replace(child, statement.span, old === undefined ? `${path}: ${value}` : `change ${path}: ${old} -> ${value}`);
}

function exactly(value: Value | undefined): string | undefined {
  if (value?.kind !== 'quantity') return undefined;
  return value.quantity.unit && writeExactly(value.quantity, value.quantity.unit);
}

/** What the parent changes, line by line, blocks opened up; not what it expects, holds or says. */
function leavesOf(statements: readonly Statement[]): readonly Statement[] {
  return statements.flatMap((statement) => {
    if (statement.kind === 'block') return leavesOf(statement.statements);
    return CHANGING.has(statement.kind) ? [statement] : [];
  });
}

const CHANGING: ReadonlySet<string> = new Set(['change', 'property', 'add', 'drop', 'together', 'with']);
