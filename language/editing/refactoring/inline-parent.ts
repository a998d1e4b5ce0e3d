/**
 * A recipe that takes its parent's changes into itself and descends from the grandparent, with the same values. The parent
 * stays where it is, since it may have been built; why it was made comes along as a note.
 */
import type { Edit } from '../../checks/finding.js';
import { indentOf, insertLine, replace } from '../../checks/mending.js';
import type { Definition } from '../../facts/facts.js';
import { isOnHead, type Marked, type Offer, readableRecipe } from './offered-refactoring.js';
import { whyHoldsForbid } from './inlined-holds.js';
import type { Line } from './line.js';
import { mergedChanges } from './merged-changes.js';
import { firstDifference, readAfter } from './proof.js';

export function inlineParent(marked: Marked): readonly Offer[] {
  const { desk, definition: child } = marked;
  const { workshop, shelf } = desk;
  const { say } = workshop.wording;
  const { relation } = child;
  if (child.kind !== 'recipe' || relation?.word !== 'from' || !isOnHead(marked)) return [];
  const name = relation.target.text;
  const title = say`Take the changes of ${name} into ${child.name.text}`;
  const refuse = (reason: string): readonly Offer[] => [{ title, kind: 'inline', reason }];

  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return refuse(unfit);
  const parent = shelf.find('recipe', name);
  if (!parent || workshop.parentOf(child.name.text) === undefined)
    return refuse(say`There is no recipe called ${name}.`);
  if (parent.problems.length > 0) return refuse(say`Something in ${name} cannot be read. Mend that first.`);
  const next = workshop.parentOf(name);
  const grandparent = next === undefined ? undefined : shelf.find('recipe', next);
  if (!grandparent) return refuse(say`${name} is the first of its line: it changes nothing that could be taken over.`);

  const line: Line = { child, parent, grandparent };
  const solvedAnew = whyHoldsForbid(workshop, line);
  if (solvedAnew !== undefined) return refuse(solvedAnew);
  const merged = mergedChanges(workshop, line);
  if ('reason' in merged) return refuse(merged.reason);
  const edits: readonly Edit[] = [
    replace(child, relation.target.span, grandparent.name.text),
    ...broughtAlong(child, [...reasonsOf(parent), ...merged.lines]),
    ...merged.edits,
  ];
  const [after] = readAfter(child, edits, marked.parser);
  const lost =
    after &&
    firstDifference(
      workshop.wouldBe(child, workshop.instrument(name)),
      workshop.wouldBe(after, workshop.instrument(grandparent.name.text)),
    );
  if (!after || lost !== undefined) {
    return refuse(say`The two work on ${lost ?? name} in a way that one recipe cannot say.`);
  }
  return [{ title, kind: 'inline', edits }];
}

/** Why the parent was made, as notes. */
function reasonsOf(parent: Definition): readonly string[] {
  return parent.statements.flatMap((statement) => {
    if (statement.kind !== 'because') return [];
    return [`note "${`${parent.name.text}: ${statement.text.text}`.replace(/["\\]/g, '\\$&')}"`];
  });
}

/** Lines put before the first thing the recipe itself says, its reason aside. */
function broughtAlong(child: Definition, lines: readonly string[]): readonly Edit[] {
  if (lines.length === 0) return [];
  const before = child.statements.find(({ kind }) => kind !== 'because');
  const last = child.statements.at(-1);
  const at = before?.span.start ?? last?.span.start;
  const between = at === undefined || at.line > 0 ? `\n${at ? indentOf(child, at) : '  '}` : '  ';
  if (before || !last) return [insertLine(child, lines.join(between), before)];
  return [
    {
      place: { definition: child, span: { start: last.span.end, end: last.span.end } },
      text: between + lines.join(between),
    },
  ];
}
