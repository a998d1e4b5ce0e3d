/**
 * Old readings from a table (comma-separated values, RFC 4180) as builds: a row an occasion, a column a reading with its unit
 * in the head or in the cell. What is unclear is asked about and left out; nothing is guessed.
 */
import { parse } from 'csv-parse/sync';
import type { Property } from '../../catalogue/property.js';
import type { Catalogue } from '../../catalogue/catalogue.js';
import { readQuantity } from '../../quantities/read.js';
import { sameDimension } from '../../quantities/dimension.js';
import { readDate } from '../../recipes/shelf/written-date.js';
import type { Wording } from '../../wording/wording.js';

export interface OldReadings {
  /** Builds, as a file of recipes has them. */
  readonly text: string;
  readonly questions: readonly string[];
}

interface Column {
  readonly as: 'build' | 'recipe' | 'occasion' | 'value';
  readonly path: string;
  readonly unit?: string;
  readonly property?: Property;
}

const SPECIAL: ReadonlyMap<string, Column['as']> = new Map(
  Object.entries<Column['as']>({
    ...{ build: 'build', no: 'build', number: 'build', instrument: 'build', guitar: 'build' },
    ...{ recipe: 'recipe', of: 'recipe', model: 'recipe', occasion: 'occasion', reading: 'occasion' },
  }),
);

export function oldReadings(
  csv: string,
  { catalogue, knows }: { readonly catalogue: Catalogue; readonly knows: (recipe: string) => boolean },
  { say }: Wording,
): OldReadings {
  const questions: string[] = [];
  const ask = (question: string) => {
    if (!questions.includes(question)) questions.push(question);
  };
  const rows = cut(csv, ask, say);
  const [head = [], ...body] = rows;
  const columns = head.map((cell) => columnOf(cell, catalogue, ask, say));
  if (head.length > 0 && !columns.some((column) => column?.as === 'build')) {
    ask(say`Which column names the instrument? Its head should be \`build\`.`);
  }
  const builds = new Map<string, { recipe: string; lines: string[] }>();
  body.forEach((row, i) => {
    const cell = (as: Column['as']) => row[columns.findIndex((column) => column?.as === as)]?.trim() ?? '';
    const name = asName(cell('build'));
    if (name === '') {
      if (columns.some((column) => column?.as === 'build')) ask(say`Row ${i + 2} names no instrument. Which is it?`);
      return;
    }
    const recipe = asName(cell('recipe'));
    const known = builds.get(name) ?? { recipe, lines: [] };
    if (recipe !== '' && known.recipe !== '' && recipe !== known.recipe) {
      ask(say`${name} is of ${known.recipe} in one row and of ${recipe} in another. Which is it?`);
    }
    builds.set(name, known);
    const values = columns.flatMap((column, j) => valueOf(column, row[j]?.trim() ?? '', name, ask, say));
    if (values.length > 0)
      known.lines.push(`  reading ${asName(cell('occasion')) || `row-${i + 2}`} { ${values.join('  ')} }`);
  });
  for (const [name, { recipe }] of builds) {
    if (recipe === '') ask(say`Of which recipe is ${name}? A column \`recipe\` would say.`);
    else if (!knows(recipe))
      ask(say`There is no recipe ${recipe} here, which ${name} is said to be of. Is it another one?`);
  }
  const text = [...builds].map(
    ([name, { recipe, lines }]) => `build ${name} of ${recipe || 'unknown'} {\n${lines.join('\n')}\n}\n`,
  );
  return { text: text.join('\n'), questions };
}

type Ask = (question: string) => void;

function cut(csv: string, ask: Ask, say: Wording['say']): readonly (readonly string[])[] {
  const [first = ''] = csv.split(/\r?\n/, 1);
  // A table made where the comma is the decimal sign parts its columns by semicolons.
  const delimiter = first.split(';').length > first.split(',').length ? ';' : first.includes('\t') ? '\t' : ',';
  try {
    return parse(csv, { bom: true, delimiter, relaxColumnCount: true, skipEmptyLines: true });
  } catch (error) {
    ask(say`This is no table that can be read: ${error instanceof Error ? error.message : ''}.`);
    return [];
  }
}

/** `resonance.top (Hz)`, `Main top [Hz]`, `build`. */
function columnOf(cell: string, catalogue: Catalogue, ask: Ask, say: Wording['say']): Column | undefined {
  const [, words = '', unit] = /^\s*([^([]*?)\s*(?:[([]([^)\]]*)[)\]])?\s*$/.exec(cell) ?? [];
  const path = words.trim().toLowerCase().replace(/\s+/g, '-');
  if (path === '') return undefined;
  const special = SPECIAL.get(path.replace(/\.$/, ''));
  if (special) return { as: special, path };
  const property = [path, `resonance.${path}`, `mass.${path}`].map((each) => catalogue.property(catalogue.canonical(each, 'build'), 'build')).find((found) => found !== undefined); // prettier-ignore
  if (!property || property.path.includes('*')) {
    ask(say`What is the column ${cell.trim()}? Nothing of that name is known of a build; it is left out.`);
    return undefined;
  }
  return { as: 'value', path: property.path, property, ...(unit?.trim() ? { unit: unit.trim() } : {}) };
}

function valueOf(
  column: Column | undefined,
  cell: string,
  build: string,
  ask: Ask,
  say: Wording['say'],
): readonly string[] {
  const property = column?.property;
  if (!column || !property || cell === '') return [];
  if (property.kind === 'date') {
    const read = readDate(cell);
    if (read.ok) return [`${column.path}: ${read.date}`];
    ask(say`Which day is ${cell} of ${build}? ${read.message}`);
    return [];
  }
  if (!property.dimension) {
    if (property.kind === 'text') return [`${column.path}: "${cell.replace(/[\\"]/g, '\\$&').replace(/\s+/g, ' ')}"`];
    return [`${column.path}: ${asName(cell)}`];
  }
  const [, number = '', own] = /^([-+−]?[\d.,/ ]*\d)\s*(.*)$/.exec(cell) ?? [];
  const unit = own?.trim() || column.unit;
  const read = readQuantity(number || cell, unit, property.dimension);
  if (!read.ok) {
    ask(say`What is ${cell} for ${column.path} of ${build}? ${read.message}`);
    return [];
  }
  if (!sameDimension(read.quantity.dimension, property.dimension)) {
    ask(say`In which unit is ${column.path}? Write it in the head: \`${column.path} (${property.unit ?? ''})\`.`);
    return [];
  }
  return [`${column.path}: ${number} ${unit ?? ''}`.trimEnd()];
}

/** What a name may be made of. */
function asName(text: string): string {
  return text
    .trim()
    .replace(/[^\p{L}\p{N}.-]+/gu, '-')
    .replace(/^[-.]+|[-.]+$/g, '');
}
