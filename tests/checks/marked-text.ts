/**
 * Texts with the findings they should give marked under the place:
 *
 *     change top.thickness: 2.95 mm -> 2.7 mm
 *     //                    ^^^^^^^ stale-change: not 2.95 mm
 *
 * A marker belongs to the nearest line above that is no marker. The carets cover the finding's place exactly; what comes
 * after the code is a part of its message. The marker lines are comments, so the text is given to the reader as it is.
 */
import { type Analyst, NO_ANALYST } from '../../language/recipes/evaluation/analyst.js';
import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { catalogue } from '../../language/catalogue/catalogue.js';
import { Checks } from '../../language/checks/check.js';
import type { Edit, Finding } from '../../language/checks/finding.js';
import { Bookshelf } from '../../language/recipes/shelf/bookshelf.js';
import { createParser, readFile } from '../../language/recipes/shelf/reader.js';
import { Workshop } from '../../language/recipes/workshop.js';

const parser = createParser();
const LIBRARY = 'library:species.bookmatch';
const library = readFile(
  LIBRARY,
  readFileSync(new URL('../../language/catalogue/species.bookmatch', import.meta.url), 'utf8'),
  parser,
);

export interface Checked {
  readonly text: string;
  readonly workshop: Workshop;
  readonly checks: Checks;
  readonly findings: readonly Finding[];
}

const FILE = 'file:///shop.bookmatch';

/** The text as the only file of a folder, beside the species library. */
export function check(text: string, analyst: Analyst = NO_ANALYST): Checked {
  const shelf = new Bookshelf();
  shelf.putLibrary(library);
  shelf.put(readFile(FILE, text, parser));
  const workshop = new Workshop(shelf, catalogue, analyst);
  const checks = new Checks(workshop);
  return { text, workshop, checks, findings: checks.file(FILE) };
}

export function codesOf(text: string): readonly string[] {
  return check(text).findings.map(({ code }) => code);
}

/** Expects every marked finding, and of the codes that are marked no other finding. Further codes may be named. */
export function expectMarked(text: string, ...alsoWatched: readonly string[]): Checked {
  const checked = check(text);
  const markers = markersIn(text);
  const watched = new Set([...markers.map(({ code }) => code), ...alsoWatched]);
  const found = checked.findings
    .filter(({ code }) => watched.has(code))
    .map((finding) => ({ ...whereIs(finding, checked), code: finding.code, message: finding.message }));
  const seen = found.map(({ code, line, from, to, message }) => `${line}:${from}-${to} ${code}: ${message}`).sort();
  const wanted = markers.map(({ code, line, from, to, message }) => {
    const match = found.find(
      (one) =>
        one.code === code && one.line === line && one.from === from && one.to === to && one.message.includes(message),
    );
    return match ? `${line}:${from}-${to} ${code}: ${match.message}` : `${line}:${from}-${to} ${code}: …${message}…`;
  });
  expect(seen).toEqual(wanted.sort());
  return checked;
}

/** The one finding of a code. */
export function finding({ findings }: Checked, code: string): Finding {
  const found = findings.filter((one) => one.code === code);
  expect(
    found.map(({ message }) => message),
    `findings: ${findings.map((one) => one.code).join(', ')}`,
  ).toHaveLength(1);
  return found[0]!;
}

/** The text after a fix of the one finding of a code; the fix is chosen by the beginning of its title. */
export function fixed(checked: Checked, code: string, title: string): string {
  const { fixes } = finding(checked, code);
  const fix = fixes.find((one) => one.title.startsWith(title));
  expect(fix, `fixes: ${fixes.map((one) => one.title).join(' | ')}`).toBeDefined();
  return applied(checked, fix!.edits);
}

export function applied(checked: Checked, edits: readonly Edit[]): string {
  const { text, workshop } = checked;
  const lines = text.split('\n');
  const starts = lines.map((_, i) => lines.slice(0, i).reduce((sum, line) => sum + line.length + 1, 0));
  const cuts = edits.map(({ place, text: put }) => {
    const shift = 'definition' in place ? workshop.shelf.placement(place.definition)!.line : 0;
    const at = ({ line, character }: { line: number; character: number }) => starts[line + shift]! + character;
    return { from: at(place.span.start), to: at(place.span.end), put };
  });
  cuts.sort((a, b) => b.from - a.from || b.to - a.to);
  return cuts.reduce((done, { from, to, put }) => done.slice(0, from) + put + done.slice(to), text);
}

function whereIs({ place }: Finding, { workshop }: Checked) {
  const shift = 'definition' in place ? workshop.shelf.placement(place.definition)!.line : 0;
  const { start, end } = place.span;
  return {
    line: start.line + shift,
    from: start.character,
    to: end.line === start.line ? end.character : Number.POSITIVE_INFINITY,
  };
}

function markersIn(text: string) {
  const markers: { code: string; message: string; line: number; from: number; to: number }[] = [];
  let above = 0;
  for (const [i, line] of text.split('\n').entries()) {
    const marker = /^\s*\/\/\s*(\^+)(\.*)\s+([\w-]+)(?::\s*(.*))?$/.exec(line);
    if (!marker) {
      above = i;
      continue;
    }
    const from = line.indexOf('^');
    // Dots after the carets: the finding goes on over the next lines.
    const to = marker[2] === '' ? from + marker[1]!.length : Number.POSITIVE_INFINITY;
    markers.push({ code: marker[3]!, message: (marker[4] ?? '').trim(), line: above, from, to });
  }
  return markers;
}
