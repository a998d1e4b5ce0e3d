/** One definition for somebody at the bench: every value with where it comes from, and what it computes to. */
import { writeInShopUnit } from '../../reports/shop-values.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Basis } from '../../recipes/evaluation/evaluation.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { basesInOrder, type Shown, type ShownDerived, type ShownValue } from '../shown.js';
import { findingAsText } from './findings-text.js';
import { table, wrapped } from './columns.js';
import type { Style } from './style.js';
import { type Wording, english } from '../../wording/wording.js';
import { inLine } from '../../wording/visible.js';
import { cited } from '../../wording/cited.js';

export function shownAsText(shown: Shown, style: Style): string {
  const { text } = style.wording;
  const sections = [
    headOf(shown, style),
    section(text('Values'), valueLines(shown, style), style),
    ...shown.readings.map((reading) => readingSection(shown, reading, style)),
    section(text('What it computes to'), derivedLines(shown.derived, style), style),
    section(text('Not known'), unknownLines(shown.derived, style.wording), style),
    section(text('Taken for granted'), assumptionLines(shown.derived, style), style),
    findingSection(shown, style),
  ];
  return `${sections.filter((one) => one !== '').join('\n\n')}\n`;
}

export function headOf({ definition, file, line, lineage }: Shown, style: Style): string {
  const { kind, name, relation } = definition;
  const related = relation ? ` ${relation.word} ${relation.target.text}` : '';
  const head = `${style.bold(`${kind} ${name.text}`)}${related}  ${style.dim(`${inLine(file)}:${line}`)}`;
  return lineage.length > 1 ? `${head}\n  ${wrapped(lineage.join(' → '), style.columns - 2).join('\n  ')}` : head;
}

export function section(title: string, lines: readonly string[], style: Style): string {
  return lines.length === 0 ? '' : [style.bold(title), ...lines].join('\n');
}

function valueLines({ values, definition, file }: Shown, style: Style): readonly string[] {
  const rows = values.map((value) => [
    value.path,
    written(value.held, definition.kind),
    { text: originOf(value, definition.name.text, file, style.wording), paint: style.dim },
  ]);
  return parted(
    values.map(({ path }) => path),
    table(rows),
  );
}

export function written(held: Held, kind: Shown['definition']['kind']): string {
  const text = writeInShopUnit(held.path, held.value, kind);
  const given = held.value.kind === 'quantity' ? held.value.written : '';
  return given === '' || given === text || isSameNumber(given, text) ? text : `${text} (${given})`;
}

/** `2.80 mm` and `2.8 mm` need not both be shown. */
function isSameNumber(a: string, b: string): boolean {
  const plain = (text: string) =>
    text
      .replace(/(\.\d*?)0+(?=\D|$)/, '$1')
      .replace(/\.(?=\D|$)/, '')
      .replace(/\s/g, '');
  return plain(a) === plain(b);
}

export function originOf({ held, from, source }: ShownValue, own: string, file: string, wording: Wording): string {
  const { say } = wording;
  const how = howInWords(held.via, from.name, from.name === own, wording);
  const where = from.name === own && from.file === file ? say`line ${from.line}` : `${inLine(from.file)}:${from.line}`;
  return [
    `${how}, ${where}`,
    ...(source === undefined ? [] : [isOfLibrary(held) ? cited(source, wording) : source]),
  ].join(' · ');
}

/** What the species library says of its own sources is ours to translate; a maker’s words are not. */
function isOfLibrary({ from }: Held): boolean {
  return from.definition.kind === 'species';
}

function howInWords(via: Held['via'], name: string, isHere: boolean, { say }: Wording): string {
  switch (via) {
    case 'stated':
      return isHere ? say`here` : name;
    case 'changed':
      return isHere ? say`changed here` : say`changed in ${name}`;
    case 'added':
      return isHere ? say`added here` : say`added in ${name}`;
    case 'package':
      return isHere ? say`with here` : say`with ${name}`;
    case 'solved':
      return say`solved by a hold in ${name}`;
    case 'built':
      return say`measured`;
  }
}

function derivedLines(derived: readonly ShownDerived[], style: Style): readonly string[] {
  const { text } = style.wording;
  const known = derived.flatMap(({ path, derived: answer, uncertainty }) =>
    answer.known ? [{ path, answer, uncertainty }] : [],
  );
  const rows = known.map(({ path, answer, uncertainty }) => [
    path,
    amountOf({ path, derived: answer, uncertainty }),
    basisInWords(answer.basis, style.wording),
  ]);
  const width = Math.max(style.columns - 6, 50);
  const lines = table(rows);
  const explained = known.map(({ answer: { quantity } }, i) => {
    const { formula, source } = quantity;
    const below = wrapped(`${text(formula)}  (${cited(source, style.wording)})`, width).map((part) =>
      style.dim(`      ${part}`),
    );
    return [lines[i] ?? '', ...below].join('\n');
  });
  return parted(
    known.map(({ path }) => path),
    explained,
  );
}

/** A computed figure with its ±. */
export function amountOf({ derived, uncertainty }: ShownDerived): string {
  if (!derived.known) return '–';
  const { dimension, unit } = derived.quantity;
  return writeQuantity(derived.si, dimension, { unit: unit || undefined, uncertainty });
}

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  measured: english('measured wood'),
  recipe: english('what is written'),
  handbook: english('handbook'),
  assumed: english('an assumption'),
};

function basisInWords(bases: ReadonlySet<Basis>, { say, text }: Wording): string {
  const words = basesInOrder(bases).map((basis) => text(BASIS_WORDS[basis]));
  return words.length === 0 ? '' : say`from ${words.join(', ')}`;
}

function unknownLines(derived: readonly ShownDerived[], { say, text, told }: Wording): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { path, derived: answer } of derived) {
    if (answer.known) continue;
    const why =
      answer.missing.length > 0
        ? say`needs ${answer.missing.join(', ')}`
        : answer.trouble === undefined
          ? text('no number comes of it')
          : told(answer.trouble);
    groups.set(why, [...(groups.get(why) ?? []), path]);
  }
  return [...groups].map(([why, paths]) => `  ${paths.join(', ')}: ${why}`);
}

function assumptionLines(derived: readonly ShownDerived[], style: Style): readonly string[] {
  const all = new Set(derived.flatMap(({ derived: answer }) => (answer.known ? answer.assumptions : [])));
  return [...all].flatMap((assumption) =>
    wrapped(style.wording.told(assumption), style.columns - 4).map((line, i) => `  ${i === 0 ? '· ' : '  '}${line}`),
  );
}

export function readingSection({ derived }: Shown, reading: Shown['readings'][number], style: Style): string {
  const { say } = style.wording;
  const title = reading.name === '' ? say`Measured` : say`Measured: ${reading.name}`;
  const conditions = [...reading.conditions].map(
    ([path, held]) => `${path} ${writeInShopUnit(path, held.value, 'build')}`,
  );
  const rows = [...reading.values].map(([path, held]) => {
    const computed = derived.find((each) => each.path === path)?.derived;
    const beside = computed?.known
      ? say`computed ${writeQuantity(computed.si, computed.quantity.dimension, { unit: computed.quantity.unit || undefined })}`
      : '';
    return [path, writeInShopUnit(path, held.value, 'build'), { text: beside, paint: style.dim }];
  });
  const under = conditions.length > 0 ? [style.dim(`  ${conditions.join(', ')}`)] : [];
  return section(title, [...under, ...table(rows)], style);
}

export function findingSection({ findings, definition }: Shown, style: Style): string {
  const { say } = style.wording;
  const name = definition.name.text;
  if (findings.length === 0) return style.dim(say`Nothing to report about ${name}.`);
  const title = style.bold(
    findings.length === 1 ? say`1 finding about ${name}` : say`${findings.length} findings about ${name}`,
  );
  return `${title}\n${findings.map((finding) => findingAsText(finding, style)).join('\n')}`.trimEnd();
}

/** Leaves a line free between the parts of an instrument; other definitions have no parts to speak of. */
function parted(paths: readonly string[], lines: readonly string[]): readonly string[] {
  if (paths.length < 20) return lines;
  const parts = paths.map((path) => (path.includes('.') ? path.slice(0, path.indexOf('.')) : ''));
  return lines.flatMap((line, i) => (i > 0 && parts[i] !== parts[i - 1] ? ['', line] : [line]));
}
