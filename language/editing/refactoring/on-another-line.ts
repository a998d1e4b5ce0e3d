/**
 * A recipe's changes as they would stand on another parent: every old value that parent's own, and every step as large as
 * it was. What has no step, such as another wood, goes to the same as before.
 */
import type { Edit } from '../../checks/finding.js';
import { replace } from '../../checks/mending.js';
import { writeValue } from '../../checks/phrases.js';
import type { ChangeStatement, Definition, QuantityValue, Value } from '../../facts/facts.js';
import { type Change, type Instrument, isWithin, movedBy } from '../../recipes/instrument/instrument.js';
import { agrees, sameValue } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { writeExactly } from './exact-value.js';

export type OnAnotherLine = { readonly edits: readonly Edit[] } | { readonly reason: string };

export function onAnotherLine(workshop: Workshop, recipe: Definition, to: Instrument): OnAnotherLine {
  const { say } = workshop.wording;
  const instrument = workshop.instrument(recipe.name.text);
  const changes = instrument?.changes ?? [];
  const edits: Edit[] = [];
  let moves = 0;
  for (const change of changes) {
    const { path, statement } = change;
    if (path === 'model') return { reason: say`A change of model cannot be carried to another line.` };
    const there = to.values.get(path)?.value;
    if (change.kind === 'add' && isIn(to, path)) return { reason: say`${to.name} has ${path} already.` };
    if (change.kind === 'drop' && !isIn(to, path)) return { reason: say`${to.name} has no ${path} to drop.` };
    if (statement.kind !== 'change') {
      if (change.kind !== 'value' || !sameValue(there, change.after?.value)) moves++;
      continue;
    }
    if (!there) return { reason: say`${to.name} has no ${path} to change.` };
    const rewritten = stepped(recipe, statement, change, there);
    if (!rewritten) return { reason: say`The step in ${path} cannot be made from ${writeValue(there)}.` };
    edits.push(...rewritten.edits);
    if (rewritten.moves) moves++;
  }
  if (moves === 0) return { reason: say`${to.name} has all of it already.` };
  const lost = instrument?.holds.find((hold) => movedBy(hold).some((by) => !to.values.has(by)));
  const none = lost && movedBy(lost).find((by) => !to.values.has(by));
  if (lost) return { reason: say`${to.name} has no ${none!} to hold ${lost.quantity} by.` };
  return { edits };
}

function isIn({ values }: Instrument, part: string): boolean {
  return [...values.keys()].some((path) => isWithin(path, part));
}

function stepped(
  recipe: Definition,
  statement: ChangeStatement,
  { before, after }: Change,
  there: Value,
): { readonly edits: readonly Edit[]; readonly moves: boolean } | undefined {
  if (statement.by) return there.kind === 'quantity' ? { edits: [], moves: true } : undefined;
  if (!statement.new) return undefined;
  const old =
    statement.old && !agrees(statement.old, there) ? [replace(recipe, statement.old.span, writeValue(there))] : [];
  const isElsewhere = before && !sameValue(before.value, there);
  const isMeasure = after?.value.kind === 'quantity' && before?.value.kind === 'quantity' && there.kind === 'quantity';
  if (!isElsewhere || !isMeasure) return { edits: old, moves: !sameValue(there, statement.new) };
  const text = moved(there, stepOf(statement, before.value), statement.new);
  return text === undefined ? undefined : { edits: [...old, replace(recipe, statement.new.span, text)], moves: true };
}

/** The step from what the parent has; from what was computed to many figures, as the maker wrote it. */
function stepOf(statement: ChangeStatement, before: QuantityValue): number {
  const stated = before.written === '' ? statement.old : undefined;
  const from = stated?.kind === 'quantity' && agrees(stated, before) ? stated : before;
  const to = statement.new?.kind === 'quantity' ? statement.new.quantity.si : from.quantity.si;
  return to - from.quantity.si;
}

/** The value there, as it would be written down, moved by a step. */
function moved(there: QuantityValue, step: number, like: Value): string | undefined {
  const unit = (like.kind === 'quantity' && like.quantity.unit) || there.quantity.unit;
  if (!unit) return undefined;
  const { dimension } = there.quantity;
  const tolerance = like.kind === 'quantity' ? like.quantity.tolerance : undefined;
  const shown = there.written === '' ? rounded(there) : there.quantity.si;
  return writeExactly({ si: shown + step, dimension, ...(tolerance === undefined ? {} : { tolerance }) }, unit);
}

/** What a hold solved, to the figures it is shown with. */
function rounded({ quantity }: QuantityValue): number {
  const number = Number.parseFloat(writeValue({ kind: 'quantity', quantity, written: '', span: NOWHERE }));
  const factor = quantity.unit?.factor ?? 1;
  return Number.isFinite(number) ? number * factor + (quantity.unit?.offset ?? 0) : quantity.si;
}

const NOWHERE = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
