/** One definition for somebody at the bench: every value with where it comes from, and what it computes to. */
import { writeInShopUnit } from '../../editing/shop-values.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Basis } from '../../recipes/evaluation.js';
import type { Held } from '../../recipes/instrument.js';
import { basesInOrder, type Shown, type ShownDerived, type ShownValue } from '../shown.js';
import { findingAsText } from './findings.js';
import { counted, table, wrapped } from './layout.js';
import type { Style } from './style.js';

export function shownAsText(shown: Shown, style: Style): string {
  const sections = [
    headOf(shown, style),
    section('Values', valueLines(shown, style), style),
    ...shown.readings.map((reading) => readingSection(shown, reading, style)),
    section('What it computes to', derivedLines(shown.derived, style), style),
    section('Not known', unknownLines(shown.derived), style),
    section('Taken for granted', assumptionLines(shown.derived, style), style),
    findingSection(shown, style),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

function headOf({ definition, file, line, lineage }: Shown, style: Style): string {
  const { kind, name, relation } = definition;
  const related = relation ? ` ${relation.word} ${relation.target.text}` : '';
  const head = `${style.bold(`${kind} ${name.text}`)}${related}  ${style.dim(`${file}:${line}`)}`;
  return lineage.length > 1 ? `${head}\n  ${wrapped(lineage.join(' → '), style.columns - 2).join('\n  ')}` : head;
}

function section(title: string, lines: readonly string[], style: Style): string {
  return lines.length === 0 ? '' : [style.bold(title), ...lines].join('\n');
}

function valueLines({ values, definition, file }: Shown, style: Style): readonly string[] {
  const rows = values.map((value) => [
    value.path,
    written(value.held, definition.kind),
    { text: originOf(value, definition.name.text, file), paint: style.dim },
  ]);
  return parted(
    values.map(({ path }) => path),
    table(rows),
  );
}

function written(held: Held, kind: Shown['definition']['kind']): string {
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

function originOf({ held, from, source }: ShownValue, own: string, file: string): string {
  const by = from.name === own ? 'here' : from.name;
  const how = {
    stated: by,
    changed: `changed ${from.name === own ? 'here' : `in ${by}`}`,
    added: `added ${from.name === own ? 'here' : `in ${by}`}`,
    package: `with ${by}`,
    solved: `solved by a hold in ${from.name}`,
    built: 'measured',
  }[held.via];
  const where = from.name === own && from.file === file ? `line ${from.line}` : `${from.file}:${from.line}`;
  return [`${how}, ${where}`, ...(source === undefined ? [] : [source])].join(' · ');
}

function derivedLines(derived: readonly ShownDerived[], style: Style): readonly string[] {
  const known = derived.flatMap(({ path, derived: answer, uncertainty }) =>
    answer.known ? [{ path, answer, uncertainty }] : [],
  );
  const rows = known.map(({ path, answer, uncertainty }) => {
    const { dimension, unit } = answer.quantity;
    return [
      path,
      writeQuantity(answer.si, dimension, { unit: unit || undefined, uncertainty }),
      basisInWords(answer.basis),
    ];
  });
  const width = Math.max(style.columns - 6, 50);
  const lines = table(rows);
  const explained = known.map(({ answer: { quantity } }, i) => {
    const { formula, source } = quantity;
    const below = wrapped(`${formula}  (${source})`, width).map((part) => style.dim(`      ${part}`));
    return [lines[i] ?? '', ...below].join('\n');
  });
  return parted(
    known.map(({ path }) => path),
    explained,
  );
}

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  measured: 'measured wood',
  recipe: 'recipe',
  handbook: 'handbook',
  assumed: 'an assumption',
};

function basisInWords(bases: ReadonlySet<Basis>): string {
  const words = basesInOrder(bases).map((basis) => BASIS_WORDS[basis]);
  return words.length === 0 ? '' : `from ${words.join(', ')}`;
}

function unknownLines(derived: readonly ShownDerived[]): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { path, derived: answer } of derived) {
    if (answer.known) continue;
    const why =
      answer.missing.length > 0 ? `needs ${answer.missing.join(', ')}` : (answer.trouble ?? 'no number comes of it');
    groups.set(why, [...(groups.get(why) ?? []), path]);
  }
  return [...groups].map(([why, paths]) => `  ${paths.join(', ')}: ${why}`);
}

function assumptionLines(derived: readonly ShownDerived[], style: Style): readonly string[] {
  const all = new Set(derived.flatMap(({ derived: answer }) => (answer.known ? answer.assumptions : [])));
  return [...all].flatMap((text) =>
    wrapped(text, style.columns - 4).map((line, i) => `  ${i === 0 ? '· ' : '  '}${line}`),
  );
}

function readingSection({ derived }: Shown, reading: Shown['readings'][number], style: Style): string {
  const title = reading.name === '' ? 'Measured' : `Measured: ${reading.name}`;
  const conditions = [...reading.conditions].map(
    ([path, held]) => `${path} ${writeInShopUnit(path, held.value, 'build')}`,
  );
  const rows = [...reading.values].map(([path, held]) => {
    const computed = derived.find((each) => each.path === path)?.derived;
    const beside = computed?.known
      ? `computed ${writeQuantity(computed.si, computed.quantity.dimension, { unit: computed.quantity.unit || undefined })}`
      : '';
    return [path, writeInShopUnit(path, held.value, 'build'), { text: beside, paint: style.dim }];
  });
  const under = conditions.length > 0 ? [style.dim(`  ${conditions.join(', ')}`)] : [];
  return section(title, [...under, ...table(rows)], style);
}

function findingSection({ findings, definition }: Shown, style: Style): string {
  if (findings.length === 0) return style.dim(`Nothing to report about ${definition.name.text}.`);
  const title = style.bold(`${counted(findings.length, 'finding')} about ${definition.name.text}`);
  return `${title}\n${findings.map((finding) => findingAsText(finding, style)).join('\n')}`.trimEnd();
}

/** Leaves a line free between the parts of an instrument; other definitions have no parts to speak of. */
function parted(paths: readonly string[], lines: readonly string[]): readonly string[] {
  if (paths.length < 20) return lines;
  const parts = paths.map((path) => (path.includes('.') ? path.slice(0, path.indexOf('.')) : ''));
  return lines.flatMap((line, i) => (i > 0 && parts[i] !== parts[i - 1] ? ['', line] : [line]));
}
