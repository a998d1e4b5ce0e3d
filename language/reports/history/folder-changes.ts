/** What edits to the texts of a folder did to its instruments: two states of it, side by side. Plain data. */
import { percent, shown, shownDifference } from '../../checks/phrases.js';
import type { Definition, DefinitionKind, Value } from '../../facts/facts.js';
import { effectsBetween, isDiscernible } from '../../recipes/evaluation/effects.js';
import { differencesBetween, type Side } from '../../recipes/instrument/comparison.js';
import { sideOf } from '../../recipes/instrument/sides.js';
import { sameValue } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { writeInShopUnit } from '../shop-values.js';

/** Two states of a folder, as a person calls them. */
export interface Range {
  readonly from: string;
  /** Absent for the files as they are. */
  readonly to?: string;
}

export interface FolderChanges {
  /** Models first, then recipes, then builds; each after what it comes from, as the files have them. */
  readonly instruments: readonly InstrumentChange[];
  /** Woods, strings, the shop and whatever else instruments lean on. */
  readonly others: readonly OtherChange[];
}

export interface InstrumentChange {
  readonly name: string;
  readonly kind: Side['kind'];
  readonly what: 'added' | 'removed' | 'changed';
  readonly values: readonly ValueChange[];
  /** What that does, as far as it can be told apart; what is most noticeable first. */
  readonly effects: readonly EffectOfEdit[];
  /** Differences too small to tell. */
  readonly small: number;
  /** Others in which exactly the same has changed: those that inherit it. */
  readonly alike: readonly string[];
}

export interface ValueChange {
  readonly path: string;
  /** Absent where it was not said, or is not any more. */
  readonly before?: string;
  readonly after?: string;
}

export interface EffectOfEdit {
  readonly path: string;
  readonly before: string;
  readonly after: string;
  readonly difference: string;
  readonly share?: string;
  /** SI. */
  readonly amount: number;
  readonly discernible: number;
}

export interface OtherChange {
  readonly name: string;
  readonly kind: DefinitionKind;
  readonly what: 'added' | 'removed' | 'changed';
  readonly values: readonly ValueChange[];
  /** Instruments that name it and did not change otherwise, and what it does to the first of them. */
  readonly usedBy: readonly string[];
  readonly effects: readonly EffectOfEdit[];
}

export function folderChanges(before: Workshop, after: Workshop): FolderChanges {
  const instruments = instrumentChanges(before, after);
  const touched = new Set(instruments.flatMap(({ name, alike }) => [name, ...alike]));
  return { instruments, others: otherChanges(before, after, touched) };
}

function instrumentChanges(before: Workshop, after: Workshop): readonly InstrumentChange[] {
  const found = new Map<string, InstrumentChange & { readonly alike: string[] }>();
  for (const name of namesIn(before, after, INSTRUMENTS)) {
    const [x, y] = [sideOf(before, name), sideOf(after, name)];
    const side = y ?? x;
    if (!side) continue;
    const what = x && y ? 'changed' : y ? 'added' : 'removed';
    const values = x && y ? valuesBetween(x, y, after) : [];
    if (what === 'changed' && values.length === 0) continue;
    const key = what === 'changed' ? JSON.stringify(values) : `${what} ${name}`;
    const alike = found.get(key);
    if (alike) alike.alike.push(name);
    else found.set(key, { name, kind: side.kind, what, values, ...effectsOf(x, y), alike: [] });
  }
  return [...found.values()];
}

const INSTRUMENTS: readonly DefinitionKind[] = ['model', 'recipe', 'build'];
const OTHERS: readonly DefinitionKind[] = ['shop', 'wood', 'species', 'strings', 'rig', 'appointments', 'order'];

function namesIn(before: Workshop, after: Workshop, kinds: readonly DefinitionKind[]): ReadonlySet<string> {
  return new Set(kinds.flatMap((kind) => [...after.shelf.names(kind), ...before.shelf.names(kind)]));
}

function valuesBetween(x: Side, y: Side, { classOf }: Workshop): readonly ValueChange[] {
  return differencesBetween(x.values, y.values, classOf).flatMap(({ paths }) =>
    paths.map(({ path, a, b }) => change(path, a?.value, b?.value)),
  );
}

function change(path: string, before: Value | undefined, after: Value | undefined, kind?: DefinitionKind): ValueChange {
  return {
    path,
    ...(before ? { before: writeInShopUnit(path, before, kind) } : {}),
    ...(after ? { after: writeInShopUnit(path, after, kind) } : {}),
  };
}

function effectsOf(x: Side | undefined, y: Side | undefined): Pick<InstrumentChange, 'effects' | 'small'> {
  if (!x || !y) return { effects: [], small: 0 };
  const all = effectsBetween(x.evaluation, y.evaluation);
  const told = all.filter(isDiscernible);
  return {
    effects: told.map(({ path, quantity, before, after, difference, discernible }) => ({
      path,
      before: shown(before, quantity),
      after: shown(after, quantity),
      difference: shownDifference(difference, quantity),
      ...(before === 0 ? {} : { share: percent(difference / before) }),
      amount: difference,
      discernible,
    })),
    small: all.length - told.length,
  };
}

function otherChanges(before: Workshop, after: Workshop, touched: ReadonlySet<string>): readonly OtherChange[] {
  return OTHERS.flatMap((kind) =>
    [...namesIn(before, after, [kind])].flatMap((name): readonly OtherChange[] => {
      const [x, y] = [before.shelf.find(kind, name), after.shelf.find(kind, name)];
      if (x?.source === y?.source) return [];
      const what = x && y ? 'changed' : y ? 'added' : 'removed';
      const values = x && y ? statedBetween(x, y, before, after) : [];
      if (what === 'changed' && values.length === 0) return [];
      const usedBy = what === 'changed' ? usersOf(name, after).filter((user) => !touched.has(user)) : [];
      const [first = ''] = usedBy;
      const { effects } = effectsOf(sideOf(before, first), sideOf(after, first));
      return [{ name, kind, what, values, usedBy, effects }];
    }),
  );
}

function statedBetween(x: Definition, y: Definition, before: Workshop, after: Workshop): readonly ValueChange[] {
  const [a, b] = [before.stated(x), after.stated(y)];
  return [...new Set([...a.keys(), ...b.keys()])].flatMap((path) => {
    const [was, is] = [a.get(path)?.value, b.get(path)?.value];
    return sameValue(was, is) ? [] : [change(path, was, is, y.kind)];
  });
}

/** Instruments with a value that is this name. */
function usersOf(name: string, workshop: Workshop): readonly string[] {
  return [...namesIn(workshop, workshop, INSTRUMENTS)].filter((each) =>
    [...(sideOf(workshop, each)?.values.values() ?? [])].some(
      ({ value }) => value.kind === 'name' && value.name === name,
    ),
  );
}
