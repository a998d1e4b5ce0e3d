/**
 * Counting: how many things a recipe changes that a maker would have to tell apart afterwards.
 *
 * Voicing and body changes, adds and drops count one each; a `together` group counts one; what a `hold` solves counts
 * none; setup, options and appointments count none unless their computed effect on a voicing quantity can be told
 * apart, and then they do. Wood is given: another set of the same species that leaves every voicing quantity within
 * what the shop can tell apart is a substitution and counts none.
 */
import type { VariableClass } from '../../catalogue/property.js';
import { type Effect, effectsBetween, isDiscernible } from '../evaluation/effects.js';
import type { Evaluation } from '../evaluation/evaluation.js';
import type { TogetherStatement } from '../../facts/facts.js';
import { type Change, type Held, type Instrument, isWithin } from './instrument.js';
import { sameValue } from './values.js';

/** Changes that stand or fall together. */
export interface Variable {
  /** The path, the member, or the reason of the group: what a maker would call it. */
  readonly label: string;
  readonly changes: readonly Change[];
  readonly group?: TogetherStatement;
  readonly class: VariableClass;
  /** What it does by itself, applied to the parent, with the recipe's holds. */
  readonly effects: readonly Effect[];
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
  /** The species of a wood set, as far as it is known. */
  readonly speciesOf: (wood: string) => string | undefined;
  /** The parent's values with some changes applied and the recipe's holds solved; undefined while they are not. */
  readonly evaluateWith: (changes: readonly Change[]) => Evaluation | undefined;
}

export function countChanges(instrument: Instrument, parent: Evaluation | undefined, context: CountingContext): Count {
  if (!parent) return { variables: [], total: 0 };
  const variables = grouped(instrument).map((changes) => {
    const variable = describe(changes, parent, context);
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
      values.set(change.path, change.after);
    }
  }
  return values;
}

function grouped(instrument: Instrument): readonly (readonly Change[])[] {
  const groups = new Map<unknown, Change[]>();
  for (const change of instrument.changes) {
    // One package of appointments is one thing to count, should it matter; so is one part set in several places.
    const key = change.group ?? (change.written === 'with' ? change.statement : change.path);
    const group = groups.get(key);
    if (group) group.push(change);
    else groups.set(key, [change]);
  }
  return [...groups.values()];
}

function describe(changes: readonly Change[], parent: Evaluation, context: CountingContext): Variable {
  const first = changes[0]!;
  const label =
    first.group?.reason?.text ?? (first.statement.kind === 'with' ? `with ${first.statement.name.text}` : first.path);
  const classes = changes.map((change) => context.classOf(change.path));
  const evaluation = context.evaluateWith(changes);
  return {
    label,
    changes,
    group: first.group,
    class: strongest(classes),
    effects: evaluation ? effectsBetween(parent, evaluation) : [],
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
  const held = instrument.holds.map((hold) => hold.by);
  if (changes.every((change) => held.includes(change.path))) return 'held';
  const matters = variable.effects.some(isDiscernible);
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
