/** Which sheet is made by what. */
import type { Workshop } from '../recipes/workshop.js';
import { benchSheet } from './bench.js';
import { careCard } from './care.js';
import { clientSheet } from './client.js';
import { papersSheet } from './papers.js';
import type { Sheet, SheetKind } from './sheet.js';
import { type SheetSubject, subjectOf } from './subject.js';

const MAKERS: Readonly<Record<SheetKind, (workshop: Workshop, subject: SheetSubject) => Sheet>> = {
  bench: benchSheet,
  client: clientSheet,
  care: careCard,
  papers: papersSheet,
};

/** The sheet of a recipe, of a build, or of an order; undefined when there is none of that name. */
export function sheetOf(workshop: Workshop, name: string, kind: SheetKind): Sheet | undefined {
  const subject = subjectOf(workshop, name);
  return subject && MAKERS[kind](workshop, subject);
}
