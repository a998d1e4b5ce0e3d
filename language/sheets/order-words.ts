/** What an order says, in words: its own terms, and what was asked for later, with what became of it. */
import type { Definition, RequestStatement, Statement } from '../facts/facts.js';
import { propertiesOf } from '../recipes/instrument/values.js';
import type { Workshop } from '../recipes/workshop.js';
import type { Written } from '../recipes/instrument/written.js';
import { nameInWords, partInWords, valueInWords } from '../reports/part-words.js';
import { writeOnPaper } from '../reports/on-paper.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import type { Value } from '../facts/facts.js';
import type { SheetCell, SheetSection } from './sheet.js';

export function orderText(workshop: Workshop, order: Definition, path: string): string | undefined {
  return plainly(path, workshop.stated(order).get(path)?.value);
}

function plainly(path: string, value: Value | undefined): string | undefined {
  if (!value) return undefined;
  return value.kind === 'text' ? value.text : writeInShopUnit(path, value, 'order');
}

/** A row for each request in the order written. */
export function requestsSection(workshop: Workshop, order: Definition): SheetSection | undefined {
  const { text } = workshop.wording;
  const requests = order.statements.filter((statement) => statement.kind === 'request');
  if (requests.length === 0) return undefined;
  return {
    title: text('Asked for later'),
    columns: [text('date'), text('by'), text('what'), text('answer'), text('price'), text('later by')],
    rows: requests.map((request) => requestRow(workshop, order, request)),
  };
}

function requestRow(workshop: Workshop, order: Definition, request: RequestStatement): readonly SheetCell[] {
  const { text } = workshop.wording;
  const of = (path: string) => plainly(path, propertyOf(request, path));
  const answer = propertyOf(request, 'answer');
  const said = answer?.kind === 'name' ? nameInWords(answer.name, workshop.wording) : text('open');
  const answered = of('answered');
  return [
    request.date?.date ?? '',
    of('asked-by') ?? '',
    askedFor(workshop, order, request).join('; '),
    answered === undefined ? said : `${said}, ${answered}`,
    of('extra') ?? '',
    delayInWords(propertyOf(request, 'delay'), workshop) ?? of('delay') ?? '',
  ];
}

/** `7 days` in the reader's language. */
function delayInWords(delay: Value | undefined, { wording: { say, text } }: Workshop): string | undefined {
  if (delay?.kind !== 'quantity') return undefined;
  const days = Math.round(delay.quantity.si / SECONDS_A_DAY);
  return days === 1 ? text('1 day') : say`${String(days)} days`;
}

const SECONDS_A_DAY = 86_400;

function propertyOf({ statements }: RequestStatement, path: string): Value | undefined {
  for (const { statement } of propertiesOf(statements)) if (statement.path.text === path) return statement.value;
  return undefined;
}

/** `Nut, width 46 mm`, `Cutaway: venetian, depth 60 mm`, or the title of a package. */
export function askedFor(workshop: Workshop, order: Definition, request: RequestStatement): readonly string[] {
  const { say } = workshop.wording;
  const lines = workshop
    .written(order)
    .filter(({ occasion, property }) => occasion === request && property?.class !== 'record');
  const told = lines.flatMap((one): readonly string[] => {
    const { statement, canonical, role } = one;
    if (statement.kind === 'drop') return [say`without ${partInWords(canonical, workshop.wording)}`];
    if (statement.kind === 'add' && statement.statements.length === 0)
      return [partInWords(canonical, workshop.wording)];
    if (role !== 'value') return [];
    const value = one.values.at(-1)?.value;
    if (!value) return [];
    const what = valueInWords(canonical, (path) => workshop.catalogue.partOf(path), workshop.wording);
    return [`${what}: ${inWords(one, value, workshop)}`];
  });
  return [
    ...told,
    ...packagesIn(request.statements).map((name) => packageTitle(workshop, name)),
    ...notesIn(request.statements),
  ];
}

function inWords({ canonical, property }: Written, value: Value, workshop: Workshop): string {
  if (value.kind === 'text') return value.text;
  if (value.kind === 'name' && property?.kind === 'choice') return nameInWords(value.name, workshop.wording);
  return writeOnPaper(canonical, value, workshop.settings());
}

function packagesIn(statements: readonly Statement[]): readonly string[] {
  return statements.flatMap((statement) => (statement.kind === 'with' ? [statement.name.text] : []));
}

function notesIn(statements: readonly Statement[]): readonly string[] {
  return statements.flatMap((statement) => (statement.kind === 'note' ? [statement.text.text] : []));
}

/** A package by the title it gives itself. */
export function packageTitle(workshop: Workshop, name: string): string {
  const appointments = workshop.shelf.find('appointments', name);
  const title = appointments && workshop.stated(appointments).get('title')?.value;
  return title?.kind === 'text' ? title.text : name.replaceAll('-', ' ');
}
