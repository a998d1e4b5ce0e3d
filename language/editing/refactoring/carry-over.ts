/** One recipe's changes carried to another line: a new recipe from the last of that line, with that line's own old values. */
import { indentOf, insertAt, remove, replace } from '../../checks/mending.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isOnHead, type Marked, markedStatements, type Offer, readableRecipe } from './offered-refactoring.js';
import { onAnotherLine } from './on-another-line.js';
import { textAfter } from './proof.js';
import { lastOfOtherLines } from './relatives.js';

/** More than these would hide each other in a menu. */
const MOST = 4;

export function carryOver(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { workshop } = desk;
  const { say } = workshop.wording;
  const { relation } = definition;
  if (definition.kind !== 'recipe' || relation?.word !== 'from') return [];
  if (!isOnHead(marked) && !markedStatements(marked).some(({ kind }) => kind === 'change')) return [];
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return [{ title: say`Carry over to another line`, kind: 'move', reason: unfit }];
  return lastOfOtherLines(workshop, definition)
    .slice(0, MOST)
    .flatMap((name): readonly Offer[] => {
      const last = workshop.shelf.find('recipe', name);
      const parent = workshop.instrument(name);
      if (!last || !parent) return [];
      const title = say`Carry over to a recipe from ${name}`;
      const moved = onAnotherLine(workshop, definition, parent);
      if ('reason' in moved) return [{ title, kind: 'move', reason: moved.reason }];
      const text = textAfter(definition, [
        replace(definition, definition.name.span, nextName(workshop, name)),
        replace(definition, relation.target.span, name),
        ...moved.edits,
        // What was expected and accepted there was said of the other instrument.
        ...definition.statements
          .filter(({ kind }) => kind === 'expect' || kind === 'accept')
          .map((statement) => remove(definition, statement)),
      ]);
      const body = unindented(text, indentOf(definition, definition.span.start));
      return [{ title, kind: 'move', edits: [insertAt(last, last.span.end, `\n\n${body}`)] }];
    });
}

/** `tarn-9` goes on as `tarn-10`; a name that does not end in a number, with one. */
function nextName({ shelf }: Workshop, name: string): string {
  const [, stem, number] = /^(.*?)(\d+)$/.exec(name) ?? [undefined, `${name}-`, '1'];
  for (let i = Number(number) + 1; ; i++) {
    const candidate = `${stem}${i}`;
    if (!shelf.find('recipe', candidate)) return candidate;
  }
}

function unindented(text: string, indent: string): string {
  return indent === '' ? text : text.replaceAll(`\n${indent}`, '\n');
}
