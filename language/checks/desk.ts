/**
 * The desk: what every editing feature works on. A folder's definitions, the questions that can be asked of them, their
 * findings, and the text of each file. An editor keeps one; a test makes one from strings.
 */
import type { Checks } from '../checks/check.js';
import type { Definition, Position, Span } from '../facts/facts.js';
import type { Bookshelf } from '../recipes/shelf/bookshelf.js';
import type { Workshop } from '../recipes/workshop.js';

export interface Desk {
  readonly shelf: Bookshelf;
  readonly workshop: Workshop;
  readonly checks: Checks;
  /** The text of a file as it stands now; undefined for a file that is not there. */
  readonly text: (uri: string) => string | undefined;
}

/** A place in a file: lines counted from the file's first. */
export interface Location {
  readonly uri: string;
  readonly range: Span;
}

/** Where a span of a definition stands now; undefined once the definition has left the shelf. */
export function locationOf(desk: Desk, definition: Definition, span: Span): Location | undefined {
  const place = desk.shelf.placement(definition);
  return place && { uri: place.uri, range: shifted(span, place.line) };
}

export function shifted(span: Span, lines: number): Span {
  return {
    start: { line: span.start.line + lines, character: span.start.character },
    end: { line: span.end.line + lines, character: span.end.character },
  };
}

/** Whether a position lies in a span, its end included: a cursor just behind a word is still on it. */
export function contains(span: Span, position: Position): boolean {
  return !isBefore(position, span.start) && !isBefore(span.end, position);
}

export function isBefore(a: Position, b: Position): boolean {
  return a.line < b.line || (a.line === b.line && a.character < b.character);
}
