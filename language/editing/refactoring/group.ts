/** The changes that are marked, grouped as one tweak: `together "why" { … }`. */
import { groupEdits } from '../../checks/changes/fewer-changes.js';
import type { Edit } from '../../checks/finding.js';
import { behind, indentOf, replace, textAt } from '../../checks/mending.js';
import type { Definition, Statement } from '../../facts/facts.js';
import { isCursor, type Marked, markedStatements, type Offer, readableRecipe } from './offered-refactoring.js';
import { firstDifference, readAfter } from './proof.js';

export function groupAsOneTweak(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { workshop } = desk;
  const { say } = workshop.wording;
  if (definition.kind !== 'recipe' || isCursor(marked)) return [];
  const statements = markedStatements(marked);
  const changes = statements.filter((statement) => CHANGING.has(statement.kind));
  if (changes.length === 0) return [];
  const title = say`Group as one tweak`;
  const refuse = (reason: string): readonly Offer[] => [{ title, kind: 'rewrite', reason }];
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return refuse(unfit);
  if (statements.some(({ kind }) => kind === 'together')) {
    return refuse(say`Some of these stand in a group already. Mark only changes that stand by themselves.`);
  }
  if (statements.some(({ kind }) => kind === 'with')) {
    return refuse(say`Appointments are taken up as a whole and cannot stand in a group. Leave them out.`);
  }
  if (changes.length < 2) return refuse(say`A group takes two changes at least. Mark both.`);
  const edits = inOnePlace(definition, changes) ?? groupEdits(definition, changes);
  const [after] = readAfter(definition, edits, marked.parser);
  const start = workshop.startOf(definition.name.text);
  const moved = after && firstDifference(workshop.wouldBe(definition, start), workshop.wouldBe(after, start));
  if (!after || moved !== undefined)
    return refuse(say`What stands between these changes also works on ${moved ?? ''}.`);
  return [{ title, kind: 'rewrite', edits }];
}

const CHANGING: ReadonlySet<string> = new Set(['change', 'property', 'add', 'drop']);

/** Lines that follow one another are wrapped as they stand, comments and all. */
function inOnePlace(definition: Definition, changes: readonly Statement[]): readonly Edit[] | undefined {
  const [first, last] = [changes[0]!, changes.at(-1)!];
  const all = definition.statements;
  const from = all.indexOf(first);
  if (from < 0 || !changes.every((change, i) => all[from + i] === change)) return undefined;
  const before = { start: { line: first.span.start.line, character: 0 }, end: first.span.start };
  if (textAt(definition, before).trim() !== '') return undefined;
  const next = all[from + changes.length];
  if (next && next.span.start.line === last.span.end.line) return undefined;
  const whole = { start: first.span.start, end: behind(definition, last.span) };
  const indent = indentOf(definition, first.span.start);
  const lines = textAt(definition, whole).split('\n');
  const body = lines.map((line, i) => (i === 0 ? `${indent}  ${line}` : line === '' ? '' : `  ${line}`));
  // A closing brace of the definition may stand on the last line.
  return [replace(definition, whole, `together "" {\n${body.join('\n')}\n${indent}}`)];
}
