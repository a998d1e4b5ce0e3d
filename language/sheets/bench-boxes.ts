/** What a sheet is headed with: filled in where the build says it, to be filled in by hand where it does not. */
import type { Value } from '../facts/facts.js';
import type { Workshop } from '../recipes/workshop.js';
import { writeInShopUnit } from '../reports/shop-values.js';
import { boxFor, type SheetBox } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

export function benchBoxes(workshop: Workshop, subject: SheetSubject): readonly SheetBox[] {
  const { text } = workshop.wording;
  const last = lastConditions(workshop, subject);
  return [
    boxFor(text('Serial number'), serialOf(workshop, subject)),
    boxFor(text('Started'), said(workshop, subject, 'started')),
    boxFor(text('Hygrometer'), last('hygrometer')),
    boxFor(text('Humidity'), last('humidity')),
    boxFor(text('Temperature'), last('temperature')),
  ];
}

/** The number on the label, or the build's own name. */
export function serialOf(workshop: Workshop, subject: SheetSubject): string | undefined {
  const { definition } = subject;
  return said(workshop, subject, 'serial') ?? (definition.kind === 'build' ? definition.name.text : undefined);
}

/** What the build says of itself. */
export function said(workshop: Workshop, { definition }: SheetSubject, path: string): string | undefined {
  return definition.kind === 'build' ? writtenPlainly(path, workshop.stated(definition).get(path)?.value) : undefined;
}

/** What held when it was last read. */
function lastConditions(workshop: Workshop, { definition }: SheetSubject) {
  const readings = definition.kind === 'build' ? (workshop.build(definition.name.text)?.readings ?? []) : [];
  return (condition: 'hygrometer' | 'humidity' | 'temperature'): string | undefined => {
    const held = readings.flatMap(({ conditions }) => conditions.get(condition) ?? []).at(-1);
    return writtenPlainly(condition, held?.value);
  };
}

function writtenPlainly(path: string, value: Value | undefined): string | undefined {
  if (!value) return undefined;
  return value.kind === 'text' ? value.text : writeInShopUnit(path, value, 'build');
}
