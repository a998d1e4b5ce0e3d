/** Rows of the bench sheet: a value to make, how close, what it was, what is still to come off. */
import { writeQuantity } from '../quantities/write.js';
import type { Held } from '../recipes/instrument/instrument.js';
import { sameValue } from '../recipes/instrument/values.js';
import type { Workshop } from '../recipes/workshop.js';
import { leftToTakeOff } from '../reports/left-to-take-off.js';
import { lengthOnPaper, unitOnPaper, writeOnPaper } from '../reports/on-paper.js';
import { nameInWords, partInWords, valueInWords } from '../reports/part-words.js';
import { english } from '../wording/wording.js';
import { benchTolerance } from './bench-tolerances.js';
import { type SheetCell, type SheetSection, WRITE } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

/** What this instrument does otherwise than its parent. */
export function triedSection(workshop: Workshop, subject: SheetSubject): SheetSection | undefined {
  const { text } = workshop.wording;
  const rows = subject.values.flatMap((held): readonly (readonly SheetCell[])[] => {
    if (!isDoneHere(held, subject) || sameValue(held.before?.value, held.value)) return [];
    const before = held.before ? onPaper(held.before, workshop) : '–';
    // Made as meant, to the digits that are told.
    if (before === onPaper(held, workshop)) return [];
    return [[inWords(held.path, workshop), before, { strong: onPaper(held, workshop) }, howOf(held, workshop)]];
  });
  if (rows.length === 0) return undefined;
  return {
    title: text('What is different in this one'),
    columns: [text('what'), text('before'), text('now'), text('how')],
    rows,
  };
}

const HOW: ReadonlyMap<Held['via'], string> = new Map([
  ['solved', english('solved by a hold')],
  ['built', english('as made')],
  ['added', english('added')],
  ['package', english('chosen with a package')],
]);

/** How it came to be, and the line that says so. */
function howOf(held: Held, workshop: Workshop): string {
  const { say, text } = workshop.wording;
  const how = text(HOW.get(held.via) ?? english('changed'));
  const place = workshop.shelf.placement(held.from.definition);
  if (!place) return how;
  return say`${how}, ${held.from.definition.name.text} line ${place.line + held.from.span.start.line + 1}`;
}

/** Changed, added or solved by the very definition the sheet is of, in something it has from elsewhere. */
export function isDoneHere({ from, via, before }: Held, { definition, order }: SheetSubject): boolean {
  // What a client chose is always worth seeing at the bench.
  if (order !== undefined && (from.definition === order || via === 'package')) return true;
  if (from.definition !== definition) return false;
  return via === 'added' || (before !== undefined && before.from.definition !== definition);
}

export function targetRow(workshop: Workshop, subject: SheetSubject, held: Held): readonly SheetCell[] {
  const { say } = workshop.wording;
  const settings = workshop.settings();
  const { path, value, before, via } = held;
  const isHere = isDoneHere(held, subject);
  // Of what was made the sheet tells what was meant; what was read stands in the box.
  const meant = via === 'built' && before ? before : held;
  const target = onPaper(meant, workshop);
  const off = benchTolerance(meant, settings.tolerances);
  const tolerance =
    off > 0 && value.kind === 'quantity'
      ? `±${writeQuantity(off, value.quantity.dimension, { unit: unitOnPaper(path, settings), digits: 2 })}`
      : '';
  const was = isHere && via !== 'built' && before ? say`was ${onPaper(before, workshop)}` : '';
  const how = isHere && via !== 'built' ? howOf(held, workshop) : '';
  const remark = [was, how, remaining(workshop, subject, path)].filter((part) => part !== '').join('; ');
  const made: SheetCell = via === 'built' ? onPaper(held, workshop) : WRITE;
  return [inWords(path, workshop), isHere && via !== 'built' ? { strong: target } : target, tolerance, made, remark];
}

/** `take off 0.14 mm`, from the last reading; words where it is thin enough, or thinner. */
export function remaining(workshop: Workshop, { definition }: SheetSubject, path: string): string {
  const { say, text } = workshop.wording;
  const record = definition.kind === 'build' ? workshop.build(definition.name.text) : undefined;
  const found = record && leftToTakeOff(record).find((one) => one.path === path);
  if (!found) return '';
  const settings = workshop.settings();
  const close = benchTolerance(found.meant, settings.tolerances);
  if (Math.abs(found.left) <= close) return text('as meant');
  const amount = lengthOnPaper(Math.abs(Math.round(found.left * 1e5) / 1e5), settings);
  return found.left > 0 ? say`take off ${amount}` : say`thinner than meant by ${amount}`;
}

export function onPaper({ path, value }: Held, workshop: Workshop): string {
  if (value.kind === 'text') return value.text;
  if (value.kind === 'name' && workshop.catalogue.property(path)?.kind === 'choice') {
    return nameInWords(value.name, workshop.wording);
  }
  if (value.kind === 'name' && workshop.catalogue.property(path)?.kind === 'part') {
    return partInWords(value.name, workshop.wording);
  }
  return writeOnPaper(path, value, workshop.settings());
}

export function inWords(path: string, workshop: Workshop): string {
  return valueInWords(path, (each) => workshop.catalogue.partOf(each), workshop.wording);
}
