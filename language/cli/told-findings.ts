/** Findings as they are told outside an editor: with the file's name, lines and columns counted from one. */
import { type Finding, type Place, SEVERITIES, type Severity } from '../checks/finding.js';
import { shifted } from '../checks/desk.js';
import type { Definition, Span } from '../facts/facts.js';
import type { Shop } from './open-shop.js';

export interface CheckReport {
  readonly findings: readonly ToldFinding[];
  /** How many files were looked at. */
  readonly files: number;
}

export interface ToldFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly file: string;
  readonly range: ToldRange;
  /** The line of text it starts on. */
  readonly line: string;
  readonly related: readonly ToldRelated[];
  /** What can be done about it, in words. */
  readonly remedies: readonly string[];
}

export interface ToldRelated {
  readonly file: string;
  readonly range: ToldRange;
  readonly message: string;
}

/** Lines and columns count from one; the end column is the one after the last character. */
export interface ToldRange {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}

export function findingsOfFiles(shop: Shop, uris: readonly string[]): readonly ToldFinding[] {
  return uris.flatMap((uri) => inTextOrder(shop.checks.file(uri).map((finding) => told(finding, shop))));
}

export function findingsOfDefinition(shop: Shop, definition: Definition): readonly ToldFinding[] {
  return inTextOrder(shop.checks.definition(definition).map((finding) => told(finding, shop)));
}

function told(finding: Finding, shop: Shop): ToldFinding {
  const place = placed(finding.place, shop);
  return {
    code: finding.code,
    severity: finding.severity,
    message: finding.message,
    file: shop.nameOf(place.uri),
    range: fromOne(place.span),
    line: lineAt(shop.text(place.uri) ?? '', place.span.start.line),
    related: finding.related.map((related) => {
      const { uri, span } = placed(related.place, shop);
      return { file: shop.nameOf(uri), range: fromOne(span), message: related.message };
    }),
    remedies: finding.fixes.map((fix) => fix.title),
  };
}

function placed(place: Place, shop: Shop): { uri: string; span: Span } {
  if ('uri' in place) return place;
  const { uri, line } = shop.shelf.placement(place.definition) ?? { uri: '', line: 0 };
  return { uri, span: shifted(place.span, line) };
}

function fromOne({ start, end }: Span): ToldRange {
  return {
    start: { line: start.line + 1, column: start.character + 1 },
    end: { line: end.line + 1, column: end.character + 1 },
  };
}

/** Found without cutting the whole text into lines: a file may be one enormous line. */
function lineAt(text: string, line: number): string {
  const ends = /\r\n|\r|\n/g;
  let from = 0;
  for (let i = 0; i < line; i++) {
    if (!ends.exec(text)) return '';
    from = ends.lastIndex;
  }
  return text.slice(from, ends.exec(text)?.index ?? text.length);
}

function inTextOrder(findings: readonly ToldFinding[]): readonly ToldFinding[] {
  return [...findings].sort(
    (a, b) =>
      a.range.start.line - b.range.start.line ||
      a.range.start.column - b.range.start.column ||
      SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity),
  );
}
