/** Two instruments side by side for somebody at the bench. */
import { shownDifference } from '../../checks/phrases.js';
import { byPart } from '../../reports/parts-in-order.js';
import { writeInShopUnit } from '../../reports/shop-values.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Comparison, DerivedDifference, Difference } from '../../recipes/instrument/comparison.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { table, wrapped } from './columns.js';
import { scaleOf } from './scale.js';
import type { Style } from './style.js';
import { type Wording } from '../../wording/wording.js';
import { leftOutInWords } from '../../reports/comparison/left-out.js';

interface Told {
  /** What is too small to tell as well. */
  readonly all?: boolean;
  /** What the one is to the other, where their lines do not say it. */
  readonly relation?: string;
}

export function comparisonAsText(comparison: Comparison, style: Style, { all = false, relation }: Told = {}): string {
  const { a, b, ancestor, differences } = comparison;
  const { say } = style.wording;
  // What both state is among the changes already.
  const isStated = (path: string) => a.values.has(path) && b.values.has(path);
  const derived = byPart(
    comparison.derived.filter(({ path }) => !isStated(path)),
    ({ path }) => path,
    ['recipe'],
  );
  const moved = derived.filter((each) => each.difference !== undefined && !isSame(each));
  const [plain, small] = [moved.filter(isDistinct).sort(byNotice), moved.filter((each) => !isDistinct(each))];
  const sections = [
    `${style.bold(say`${a.name} beside ${b.name}`)}\n  ${relation ?? relationOf(a.name, b.name, ancestor, style.wording)}`,
    differences.length === 0
      ? say`${a.name} and ${b.name} have the same values throughout.`
      : changes(comparison, style),
    effects(comparison, all ? [...plain, ...small] : plain, style),
    all ? leftOut(moved, style) : '',
    rest(derived, all ? [] : small, style),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function relationOf(a: string, b: string, ancestor: string | undefined, { say }: Wording): string {
  if (ancestor === undefined) return say`They have no recipe in common.`;
  if (ancestor === a) return say`${b} comes from ${a}.`;
  if (ancestor === b) return say`${a} comes from ${b}.`;
  return say`Both come from ${ancestor}.`;
}

function changes({ a, b, differences }: Comparison, style: Style): string {
  const ordered = byPart(differences, firstPath, ['recipe']);
  const rows = ordered.flatMap((difference) =>
    difference.paths.map(({ path, a: x, b: y }) => [
      path,
      written(path, x),
      written(path, y),
      { text: remarkOn(difference, x, y, style.wording), paint: style.dim },
    ]),
  );
  const head = ['', a.name, b.name].map((text) => ({ text, paint: style.bold }));
  return [style.bold(style.wording.text('What differs')), ...table([head, ...rows])].join('\n');
}

function firstPath({ paths }: Difference): string {
  return paths[0]?.path ?? '';
}

function written(path: string, held: Held | undefined): string {
  return held ? writeInShopUnit(path, held.value) : '–';
}

function remarkOn({ label, paths }: Difference, a: Held | undefined, b: Held | undefined, { say }: Wording): string {
  const solved = [a, b].find((held) => held?.via === 'solved');
  const together = paths.length > 1 && label !== paths[0]?.path ? say`together: ${label}` : '';
  return [together, solved ? say`solved by a hold` : ''].filter((text) => text !== '').join(', ');
}

/** What stands out most first: what is heard or felt before what only a scale or a rule shows. */
function byNotice(a: DerivedDifference, b: DerivedDifference): number {
  const heard = Number(b.quantity.voicing ?? false) - Number(a.quantity.voicing ?? false);
  return heard === 0 ? noticed(b) - noticed(a) : heard;
}

function noticed({ difference = 0, discernible = 0 }: DerivedDifference): number {
  return discernible === 0 ? Infinity : Math.abs(difference) / discernible;
}

function effects({ a, b }: Comparison, shown: readonly DerivedDifference[], style: Style): string {
  const { text } = style.wording;
  if (shown.length === 0) return '';
  const head = [
    { text: '' },
    { text: a.name, align: 'right' as const, paint: style.bold },
    { text: b.name, align: 'right' as const, paint: style.bold },
    { text: text('difference'), align: 'right' as const, paint: style.bold },
  ];
  const rows = shown.map((each) => [
    each.path,
    right(number(each.a, each)),
    right(number(each.b, each)),
    right(shownDifference(each.difference ?? 0, each.quantity)),
    right(each.percent === undefined ? '' : percent(each.percent)),
    { text: scaleOf(each.difference ?? 0, each.discernible ?? 0), paint: isDistinct(each) ? undefined : style.dim },
  ]);
  const [first = '', ...lines] = table([head, ...rows]);
  const explained = shown.flatMap((each, i) => [lines[i] ?? '', ...sharesOf(each, style)]);
  const legend = style.dim(`  ${text('──┼── what comes about anyway; a dot beyond it can be told apart')}`);
  return [style.bold(text('What that does')), first, ...explained, legend].join('\n');
}

/** What is in each value and not in their differences. */
function leftOut(moved: readonly DerivedDifference[], style: Style): string {
  const words = leftOutInWords(moved, style.wording);
  return words === undefined
    ? ''
    : wrapped(words, style.columns)
        .map((line) => style.dim(line))
        .join('\n');
}

function right(text: string) {
  return { text, align: 'right' as const };
}

function number(si: number | undefined, { quantity }: DerivedDifference): string {
  return si === undefined ? '–' : writeQuantity(si, quantity.dimension, { unit: quantity.unit || undefined });
}

function percent(value: number): string {
  const size = Math.abs(value);
  const text = size >= 10 ? size.toFixed(0) : size.toFixed(1);
  return Number(text) === 0 ? '0 %' : `${value < 0 ? '−' : '+'}${text} %`;
}

function isDistinct({ difference = 0, discernible = 0 }: DerivedDifference): boolean {
  return Math.abs(difference) > discernible;
}

/** Which change is answerable for how much; nothing to say where there is only one. */
function sharesOf(each: DerivedDifference, style: Style): readonly string[] {
  const { contributions, remainder, quantity } = each;
  const { say } = style.wording;
  if (contributions.length < 2)
    return contributions.map(({ label }) => style.dim(`      ${say`all of it by ${label}`}`));
  const shares = contributions.map(({ label, amount }) => `${label} ${shownDifference(amount, quantity)}`);
  const joint = Math.abs(remainder) > 0.01 * Math.abs(each.difference ?? 0);
  const all = joint ? [...shares, say`together beyond that ${shownDifference(remainder, quantity)}`] : shares;
  return wrapped(all.join(' · '), Math.max(style.columns - 6, 50)).map((line) => style.dim(`      ${line}`));
}

function isSame({ a = 0, b = 0, difference = 0 }: DerivedDifference): boolean {
  return Math.abs(difference) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
}

/**
 * What is too small to tell, in one line, and what could not be laid side by side. What neither has is only counted:
 * `show` says what it would take.
 */
function rest(derived: readonly DerivedDifference[], small: readonly DerivedDifference[], style: Style): string {
  const { say, some } = style.wording;
  const same = derived.filter((each) => each.difference !== undefined && isSame(each));
  const unknown = derived.filter((each) => each.difference === undefined);
  const inOne = unknown.filter(({ a, b }) => a !== undefined || b !== undefined);
  const inNeither = unknown.length - inOne.length;
  const nearest = [...small].sort(byNotice).map(({ path }) => path);
  const lines = [
    ...(small.length === 0
      ? []
      : [
          small.length <= NEAREST
            ? say`Too small to tell: ${some(nearest, NEAREST)}. With --all: what each comes to.`
            : say`Too small to tell: ${small.length} others, the nearest ${some(nearest.slice(0, NEAREST), NEAREST)}. With --all: each of them.`,
        ]),
    ...(same.length === 0 ? [] : [sameInWords(same.length, style.wording)]),
    ...inOne.map(({ path, missing }) => say`${path} is known for one only: the other needs ${missing.join(', ')}.`),
    ...(inNeither === 0 ? [] : [unknownInWords(inNeither, style.wording)]),
  ];
  return lines
    .flatMap((line) => wrapped(line, style.columns))
    .map((line) => style.dim(line))
    .join('\n');
}

/** How many of what is too small are named. */
const NEAREST = 3;

function sameInWords(count: number, { say }: Wording): string {
  return count === 1 ? say`The same in both: 1 computed value.` : say`The same in both: ${count} computed values.`;
}

function unknownInWords(count: number, { say }: Wording): string {
  return count === 1
    ? say`Known for neither: 1 value; bookmatch show says what is missing.`
    : say`Known for neither: ${count} values; bookmatch show says what is missing.`;
}
