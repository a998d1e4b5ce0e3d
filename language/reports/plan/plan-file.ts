/** A plan or templates as a file, for whoever saves it. */
import type { Workshop } from '../../recipes/workshop.js';
import { PLAN_PARTS, picturesOf } from './pictures-of.js';
import { TEMPLATES } from './templates.js';
import type { dxfOf } from './write/dxf.js';
import type { pdfOf } from './write/pdf.js';
import { pdfWords } from './write/pdf-words.js';
import { beside } from './write/picture.js';
import { svgOf } from './write/svg.js';
import type { Paper } from './write/tiles.js';
import { english } from '../../wording/wording.js';

/** The two writers that take large libraries. */
export interface PlanFiles {
  readonly dxfOf: typeof dxfOf;
  readonly pdfOf: typeof pdfOf;
}

export interface PlanFileAsked {
  readonly name: string;
  /** Of those listed by `planParts`. */
  readonly parts: readonly string[];
  readonly format: 'svg' | 'dxf' | 'pdf';
  readonly paper: Paper;
}

export type PlanFile =
  | { readonly fileName: string; readonly bytes: Uint8Array }
  /** A whole sentence. */
  | { readonly trouble: string };

/** What can be drawn, in words. */
export function planParts({ wording }: Workshop): readonly { readonly key: string; readonly title: string }[] {
  const whole = { key: 'plan', title: wording.text(english('Whole plan')) };
  return [whole, ...TEMPLATES.map(({ key, title }) => ({ key, title: wording.text(title) }))];
}

export async function planFile(
  workshop: Workshop,
  { name, parts, format, paper }: PlanFileAsked,
  load: (() => Promise<PlanFiles>) | undefined,
): Promise<PlanFile> {
  const { wording } = workshop;
  const keys = PLAN_PARTS.filter((part) => Array.isArray(parts) && parts.includes(part));
  const made = picturesOf(workshop, name, keys);
  if (!made || made.pictures.length === 0) {
    return { trouble: wording.say`Nothing of ${name} is known well enough to be drawn.` };
  }
  const fileName = `${name}-${keys.join('-')}.${format}`;
  const one = made.pictures.length === 1 ? made.pictures[0]! : beside(made.pictures, name, name);
  const text = (written: string): PlanFile => ({ fileName, bytes: new TextEncoder().encode(written) });
  if (format === 'svg') return text(svgOf(one, { language: wording.language }));
  if (!load)
    return { trouble: wording.text(english('Here only SVG can be written; the terminal writes DXF and PDF.')) };
  const files = await load();
  if (format === 'dxf') return text(files.dxfOf(one));
  const words = pdfWords(name, workshop.settings().title ?? '', wording);
  return { fileName, bytes: await files.pdfOf(made.pictures, paper, words, new Date()) };
}
