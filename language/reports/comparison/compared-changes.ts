/** What differs between two recipes, part by part: both values, the difference with its sign and the maker's word for it. */
import type { Comparison, Difference } from '../../recipes/instrument/comparison.js';
import { differencesBetween } from '../../recipes/instrument/comparison.js';
import type { Verdict } from '../../recipes/instrument/counting.js';
import type { QuantityValue, Value } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import type { Workshop } from '../../recipes/workshop.js';
import { writeQuantity } from '../../quantities/write.js';
import { shareOf } from '../figures.js';
import { moreOrLess } from './more-or-less.js';
import { partOf, partTitle, withinPart } from '../part-of.js';
import { unitFor, writeInShopUnit } from '../shop-values.js';
import { english } from '../../wording/wording.js';

/** Paths that differ for one reason. */
export interface ChangeRow {
  /** The path, the member, or the reason of a `together` group. */
  readonly label: string;
  /** Outermost part, and that as a heading. */
  readonly part: string;
  readonly title: string;
  /** Whether it counts, and why not: `counted`, `solved by a hold`. Absent where neither comes from the other. */
  readonly standing?: string;
  readonly paths: readonly ChangedPath[];
}

export interface ChangedPath {
  readonly path: string;
  /** The path without its part: `x-bass height`. */
  readonly name: string;
  readonly a?: string;
  readonly b?: string;
  /** With its sign; absent where the values are no numbers. */
  readonly difference?: string;
  readonly percent?: string;
  /** `thinner`, `added`, `another`. */
  readonly word: string;
}

export function changeRows(workshop: Workshop, comparison: Comparison): readonly ChangeRow[] {
  const standingOf = standings(workshop, comparison);
  return comparison.differences.map((difference) => {
    const { label, paths } = difference;
    const part = partOf(paths[0]?.path ?? label);
    const standing = standingOf(difference);
    return {
      label,
      part,
      title: partTitle(part, workshop.wording),
      ...(standing === undefined ? {} : { standing }),
      paths: paths.map((changed) => changedPath(workshop, changed)),
    };
  });
}

/** How many changes there are, and how many there may be where one recipe comes straight from the other. */
export function countedInWords(workshop: Workshop, comparison: Comparison): string {
  const { say, text } = workshop.wording;
  const pair = parentAndChild(workshop, comparison);
  const child = pair && workshop.shelf.find('recipe', pair.child);
  if (pair && child) {
    const { total } = workshop.count(pair.child);
    const { count } = workshop.limit(child);
    const changes = total === 0 ? say`No change counted` : total === 1 ? say`1 change` : say`${total} changes`;
    return count === 1 ? say`${changes}; 1 is allowed` : say`${changes}; ${count} are allowed`;
  }
  const heard = comparison.differences.filter((each) => each.class === 'voicing' || each.class === 'body');
  const all = comparison.differences.length;
  if (all === 0) return text('The same values throughout');
  const differences = all === 1 ? text('1 difference') : say`${all} differences`;
  if (heard.length === 0) return say`${differences}, none of voicing or body`;
  return heard.length === all
    ? say`${differences}, of voicing or body`
    : say`${differences}, ${heard.length} of voicing or body`;
}

function changedPath(workshop: Workshop, { path, a, b }: Difference['paths'][number]): ChangedPath {
  const [before, after] = [a?.value, b?.value];
  return {
    path,
    name: withinPart(path),
    ...(before ? { a: writeInShopUnit(path, before) } : {}),
    ...(after ? { b: writeInShopUnit(path, after) } : {}),
    ...differenceOf(workshop, path, before, after),
  };
}

function differenceOf(
  { wording, catalogue }: Workshop,
  path: string,
  before: Value | undefined,
  after: Value | undefined,
): Pick<ChangedPath, 'difference' | 'percent' | 'word'> {
  if (!before) return { word: wording.text('added') };
  if (!after) return { word: wording.text('dropped') };
  const kind = catalogue.property(path)?.kind;
  if (before.kind === 'point' && after.kind === 'point') return { word: wording.text('moved') };
  if (before.kind !== 'quantity' || after.kind !== 'quantity') {
    return { word: kind === 'wood' ? wording.text('another set') : wording.text('another') };
  }
  const { si, dimension } = before.quantity;
  if (after.quantity.dimension.name !== dimension.name) return { word: wording.text('another') };
  const by = after.quantity.si - si;
  return {
    difference: writtenLike(by, path, before, after),
    ...(si === 0 ? {} : { percent: shareOf(by / Math.abs(si), wording) }),
    word: moreOrLess(path, dimension, by, wording),
  };
}

/** With the decimals of the two values, unless that leaves nothing of it. */
function writtenLike(by: number, path: string, before: QuantityValue, after: QuantityValue): string {
  const { dimension, unit } = before.quantity;
  const decimals = Math.max(
    ...[before, after].map((value) => /\.(\d+)/.exec(writeInShopUnit(path, value))?.[1]?.length ?? 0),
  );
  const options = { unit: unitFor(path) ?? unit, difference: true };
  const text = writeQuantity(by, dimension, { ...options, decimals });
  return (/[1-9]/.test(text) ? text : writeQuantity(by, dimension, options)).replace(/^-/, '−');
}

/** What is to be said of a difference beyond its numbers. */
function standings(workshop: Workshop, comparison: Comparison): (difference: Difference) => string | undefined {
  const { text } = workshop.wording;
  const pair = parentAndChild(workshop, comparison);
  if (pair) {
    const verdicts = new Map(
      workshop.count(pair.child).variables.map(({ variable, verdict }) => [variable.label, verdict]),
    );
    return ({ label, paths }) => {
      const verdict = verdicts.get(label) ?? (paths.some(isSolved) ? 'held' : undefined);
      return verdict && text(VERDICTS[verdict]);
    };
  }
  const meant = recipeDifferences(workshop, comparison);
  return ({ paths }) => {
    if (paths.some(isSolved)) return text(VERDICTS.held);
    if (!meant) return undefined;
    if (paths.some(({ path }) => meant.has(path))) return text('declared in a recipe');
    const isNumber = paths.every(({ a, b }) => a?.value.kind === 'quantity' && b?.value.kind === 'quantity');
    return isNumber ? text('as built') : text('as built; no recipe declares it');
  };
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  counted: english('counted'),
  promoted: english('counted: it weighs enough to matter'),
  substitution: english('another set of the same wood, not counted'),
  held: english('solved by a hold, not counted'),
  'not-counted': english('not counted'),
  'no-change': english('no change'),
};

function isSolved({ a, b }: { readonly a?: Held; readonly b?: Held }): boolean {
  return a?.via === 'solved' || b?.via === 'solved';
}

function parentAndChild(workshop: Workshop, { a, b }: Comparison): { readonly child: string } | undefined {
  if (a.kind !== 'recipe' || b.kind !== 'recipe') return undefined;
  if (workshop.parentOf(b.name) === a.name) return { child: b.name };
  return workshop.parentOf(a.name) === b.name ? { child: a.name } : undefined;
}

/** Paths in which the recipes behind two builds differ; undefined unless both sides have a recipe. */
function recipeDifferences(workshop: Workshop, { a, b }: Comparison): ReadonlySet<string> | undefined {
  if (a.kind !== 'build' && b.kind !== 'build') return undefined;
  const [x, y] = [a, b].map(({ kind, name }) =>
    kind === 'build' ? workshop.build(name)?.recipe : kind === 'recipe' ? workshop.instrument(name) : undefined,
  );
  if (!x || !y) return undefined;
  const differences = differencesBetween(x.values, y.values, workshop.classOf);
  return new Set(differences.flatMap(({ paths }) => paths.map(({ path }) => path)));
}
