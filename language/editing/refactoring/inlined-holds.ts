/** Whether a recipe can take over its parent's changes without being solved another way than it was. */
import { textAt } from '../../checks/mending.js';
import type { HoldStatement } from '../../facts/facts.js';
import { type HoldRequest, movedBy } from '../../recipes/instrument/instrument.js';
import type { Solved, Workshop } from '../../recipes/workshop.js';
import type { Line } from './line.js';

/** Why not, if not. */
export function whyHoldsForbid(workshop: Workshop, { child, parent, grandparent }: Line): string | undefined {
  const { say } = workshop.wording;
  const [own, theirs] = [workshop.instrument(child.name.text), workshop.instrument(parent.name.text)];
  if (!own || !theirs) return undefined;
  const open = unsolvedHold(theirs) ?? unsolvedHold(own);
  if (open) return say`${open.by} could not be found from ${open.quantity}. Settle that hold first.`;
  const written = (definition: typeof child, { at }: HoldStatement) => (at ? textAt(definition, at.span) : '');
  for (const hold of theirs.holds) {
    const same = own.holds.find((one) => isAlike(one, hold));
    if (same && written(child, same.statement) === written(parent, hold.statement)) continue;
    // A value the recipe sets itself ends the hold of its parent.
    const isSet = own.changes.some(
      ({ path, statement }) =>
        path === hold.by && (statement.kind === 'property' || (statement.kind === 'change' && statement.new)),
    );
    if (!isSet) {
      return say`${parent.name.text} holds ${hold.quantity} by ${hold.by}, which would be solved anew for the changes of ${child.name.text}. Give ${child.name.text} the same hold, or set ${hold.by} in it.`;
    }
  }
  const moved = own.holds.find(
    (hold) => !isTheirs(theirs.holds, hold) && hold.statement.at === undefined && differs(hold),
  );
  if (moved) {
    return say`${child.name.text} holds ${moved.quantity} as ${parent.name.text} has it, and ${grandparent.name.text} has another. Write the value down with \`at\` first.`;
  }
  return undefined;

  function differs({ quantity }: HoldRequest): boolean {
    const value = (name: string) => {
      const derived = workshop.evaluation(name)?.derived(quantity);
      return derived?.known ? derived.si : undefined;
    };
    const [before, after] = [value(grandparent.name.text), value(parent.name.text)];
    if (before === undefined || after === undefined) return true;
    return Math.abs(before - after) > 1e-9 * Math.abs(after);
  }
}

/** A hold that solves nothing, or nothing yet. */
export function unsolvedHold({ solvedHolds }: Solved): HoldRequest | undefined {
  return solvedHolds.find(({ outcome }) => outcome.kind !== 'solved')?.request;
}

function isAlike(a: HoldRequest, b: HoldRequest): boolean {
  return a.quantity === b.quantity && movedBy(a).join() === movedBy(b).join();
}

function isTheirs(theirs: readonly HoldRequest[], hold: HoldRequest): boolean {
  return theirs.some((one) => isAlike(one, hold) && !one.statement.at);
}
