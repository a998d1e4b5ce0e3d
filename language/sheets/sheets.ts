/** Which sheet is made by what. */
import type { Workshop } from '../recipes/workshop.js';
import { benchSheet } from './bench.js';
import { careCard } from './care.js';
import { clientSheet } from './client.js';
import { papersSheet } from './papers.js';
import type { Sheet, SheetKind } from './sheet.js';
import { type SheetSubject, subjectOf } from './sheet-subject.js';

type Maker = (workshop: Workshop, subject: SheetSubject) => Sheet;

// A map, since the kind comes from outside: every plain object has a `constructor`.
const MAKERS: ReadonlyMap<string, Maker> = new Map(
  Object.entries({
    bench: benchSheet,
    client: clientSheet,
    care: careCard,
    papers: papersSheet,
  } satisfies Record<SheetKind, Maker>),
);

/** The sheet of a recipe, of a build, or of an order; undefined when there is none of that name or kind. */
export function sheetOf(workshop: Workshop, name: string, kind: SheetKind): Sheet | undefined {
  const make = MAKERS.get(kind);
  const subject = make && subjectOf(workshop, name);
  return subject && make(workshop, subject);
}
