/** A plain value in a recipe with a parent, written as the change it is: `path: value` becomes `change path: old -> value`. */
import type { Edit } from '../../checks/finding.js';
import { replace, textAt } from '../../checks/mending.js';
import { writeValue } from '../../checks/phrases.js';
import type { PropertyStatement } from '../../facts/facts.js';
import { sameValue } from '../../recipes/instrument/values.js';
import { type Marked, markedStatements, type Offer, readableRecipe } from './offered-refactoring.js';

export function writeAsChange(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { say } = desk.workshop.wording;
  if (definition.kind !== 'recipe') return [];
  const plain = markedStatements(marked)
    .flatMap((statement) => (statement.kind === 'together' ? statement.statements : [statement]))
    .filter((statement) => statement.kind === 'property');
  const [first] = plain;
  if (!first) return [];
  const title =
    plain.length === 1
      ? say`Write as a change of what the parent has`
      : say`Write ${plain.length} values as changes of what the parent has`;
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return [{ title, kind: 'rewrite', reason: unfit }];
  const outcomes = plain.map((statement) => asChange(marked, statement));
  const edits = outcomes.filter((outcome) => typeof outcome !== 'string');
  const [reason] = outcomes.filter((outcome) => typeof outcome === 'string');
  return [reason === undefined ? { title, kind: 'rewrite', edits } : { title, kind: 'rewrite', reason }];
}

/** The edit, or why not. */
function asChange({ desk: { workshop }, definition }: Marked, statement: PropertyStatement): Edit | string {
  const { say } = workshop.wording;
  const name = definition.name.text;
  const change = workshop.instrument(name)?.changes.find((one) => one.statement === statement);
  const path = textAt(definition, statement.path.span);
  const parent = workshop.startOf(name)?.name;
  if (parent === undefined) return say`The parent of ${name} is not known. Name it in the head first.`;
  if (!change?.before || !change.after)
    return say`${parent} has no ${statement.path.text}: here it is new, and no change.`;
  if (sameValue(change.before.value, change.after.value)) {
    return say`${parent} already has ${writeValue(change.before.value)} for ${statement.path.text}: nothing changes.`;
  }
  if (statement.source)
    return say`A change has no place for a source. Move what stands after \`per\` into a note first.`;
  const head = { start: statement.span.start, end: statement.value.span.start };
  return replace(definition, head, `change ${path}: ${writeValue(change.before.value)} -> `);
}
