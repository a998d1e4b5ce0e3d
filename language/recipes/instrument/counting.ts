/**
 * Counting: how many things a recipe changes that a maker would have to tell apart afterwards.
 *
 * Voicing and body changes, adds and drops count one each; a `together` group counts one; what a `hold` solves counts
 * none; setup, options and appointments count none unless their computed effect on a voicing quantity can be told
 * apart, and then they do. Wood is given: another set of the same species that leaves every voicing quantity within
 * what the shop can tell apart is a substitution and counts none.
 */
import type { VariableClass } from '../../catalogue/property.js';
import { NO_ANALYST } from '../evaluation/analyst.js';
import { type Effect, effectsBetween, isDiscernible, makesDifference } from '../evaluation/effects.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import type { TogetherStatement } from '../../facts/facts.js';
import { type Change, type Held, type Instrument, isWithin, movedBy } from './instrument.js';
import { sameValue } from './values.js';

/** Changes that stand or fall together. */
export interface Variable {
  /** The path, the member, or the reason of the group: what a maker would call it. */
  readonly label: string;
  readonly changes: readonly Change[];
  readonly group?: TogetherStatement;
  readonly class: VariableClass;
  /** What it does by itself, applied to the parent, with the recipe's holds. Worked out when somebody wants to tell them. */
  readonly effects: readonly Effect[];
  /** Whether any of them is large enough to be told apart. */
  readonly matters: boolean;
  /** The solver has yet to say what the holds come to: the effects are not known, and none are given. */
  readonly pending?: true;
}

export type Verdict =
  | 'counted'
  /** Setup, an option or an appointment whose effect is too large to leave out. */
  | 'promoted'
  /** Another set of the same species, within what the shop can tell apart. */
  | 'substitution'
  /** Solved by a hold. */
  | 'held'
  | 'not-counted'
  /** The value is what it was. */
  | 'no-change';

export interface Count {
  readonly variables: readonly { readonly variable: Variable; readonly verdict: Verdict }[];
  /** How many are counted. */
  readonly total: number;
}

export interface CountingContext {
  readonly classOf: (path: string) => VariableClass;
  /** The part a property belongs to: `cutaway` of `cutaway.depth`; undefined for what holds for the whole instrument. */
  readonly partOf: (path: string) => string | undefined;
  /** Whether the parent says anything of a part. */
  readonly parentHas: (part: string) => boolean;
  /** The species of a wood set, as far as it is known. */
  readonly speciesOf: (wood: string) => string | undefined;
  /** The parent's values with some changes applied and the recipe's holds solved; undefined while they are not. */
  readonly evaluateWith: (changes: readonly Change[]) => Evaluation | undefined;
}

export function countChanges(instrument: Instrument, parent: Evaluation | undefined, context: CountingContext): Count {
  if (!parent) return { variables: [], total: 0 };
  const variables = grouped(instrument, context).map((labelled) => {
    const variable = describe(labelled, parent, context);
    return { variable, verdict: judge(variable, instrument, context) };
  });
  return { variables, total: variables.filter(({ verdict }) => isCounted(verdict)).length };
}

export function isCounted(verdict: Verdict): boolean {
  return verdict === 'counted' || verdict === 'promoted';
}

/** Values of `base` with changes applied, in the order written. */
export function withChanges(base: ReadonlyMap<string, Held>, changes: readonly Change[]): ReadonlyMap<string, Held> {
  const values = new Map(base);
  for (const change of changes) {
    if (change.kind === 'drop') {
      for (const path of [...values.keys()]) if (isWithin(path, change.path)) values.delete(path);
    } else if (change.kind === 'add') {
      for (const held of change.members) values.set(held.path, held);
    } else if (change.after) {
      for (const gone of change.members) values.delete(gone.path);
      values.set(change.path, change.after);
    }
  }
  return values;
}

function grouped(instrument: Instrument, context: CountingContext): readonly Labelled[] {
  const groups = new Map<unknown, { readonly label: string; readonly changes: Change[] }>();
  for (const change of instrument.changes) {
    const { key, label } = kept(change, context);
    const group = groups.get(key);
    if (group) group.changes.push(change);
    else groups.set(key, { label, changes: [change] });
  }
  return [...groups.values()];
}

interface Labelled {
  readonly label: string;
  readonly changes: readonly Change[];
}

/**
 * What a change is counted with. A part the parent does not have is one change, however many lines say what it is like.
 * What a package brings for the eye and the ear of an amplifier is one thing, should it matter; a cutaway in it is another.
 */
function kept(change: Change, context: CountingContext): { readonly key: unknown; readonly label: string } {
  const { group, statement, path, written } = change;
  if (group) return { key: group, label: group.reason?.text ?? path };
  const part = change.kind === 'value' ? context.partOf(path) : undefined;
  if (written === 'with' && statement.kind === 'with') {
    const of = context.classOf(path);
    if (of !== 'voicing' && of !== 'body') return { key: statement, label: `with ${statement.name.text}` };
    return part === undefined ? { key: path, label: path } : { key: part, label: part };
  }
  return part !== undefined && change.before === undefined && !context.parentHas(part)
    ? { key: part, label: part }
    : { key: path, label: path };
}

/**
 * Whether a variable matters is found with the first effect that can be told apart; all of them, each with its uncertainty, are
 * worked out only for somebody who tells them. What leans on the solver is worked out at once, so that whoever asks leans on it too.
 */
function describe({ label, changes }: Labelled, parent: Evaluation, context: CountingContext): Variable {
  const first = changes[0]!;
  const evaluation = context.evaluateWith(changes);
  const leansOnSolver = [parent, evaluation].some((each) => each && each.analyst !== NO_ANALYST);
  let effects = !evaluation ? [] : leansOnSolver ? effectsBetween(parent, evaluation) : undefined;
  return {
    label,
    changes,
    group: first.group,
    class: strongest(changes.map((change) => context.classOf(change.path))),
    get effects() {
      // The evaluation is not kept for it: mostly nobody asks.
      effects ??= effectsBetween(parent, context.evaluateWith(changes) ?? parent);
      return effects;
    },
    matters: effects?.some(isDiscernible) ?? (evaluation !== undefined && makesDifference(parent, evaluation)),
    ...(evaluation ? {} : { pending: true }),
  };
}

const STRENGTH: readonly VariableClass[] = ['voicing', 'body', 'setup', 'option', 'appointment', 'record'];

function strongest(classes: readonly VariableClass[]): VariableClass {
  return STRENGTH.find((candidate) => classes.includes(candidate)) ?? 'record';
}

function judge(variable: Variable, instrument: Instrument, context: CountingContext): Verdict {
  const { changes } = variable;
  if (changes.every(isNoChange)) return 'no-change';
  const held = instrument.holds.flatMap(movedBy);
  if (changes.every((change) => held.includes(change.path))) return 'held';
  const { matters } = variable;
  if (changes.every((change) => isSameSpecies(change, context)) && !matters) return 'substitution';
  if (variable.class === 'voicing' || variable.class === 'body') return 'counted';
  return matters ? 'promoted' : 'not-counted';
}

function isNoChange(change: Change): boolean {
  if (change.kind !== 'value') return false;
  return change.after === undefined || sameValue(change.before?.value, change.after.value);
}

function isSameSpecies(change: Change, context: CountingContext): boolean {
  const before = change.before?.value;
  const after = change.after?.value;
  if (before?.kind !== 'name' || after?.kind !== 'name') return false;
  const species = context.speciesOf(before.name);
  return species !== undefined && species === context.speciesOf(after.name);
}
