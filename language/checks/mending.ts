/** The edits fixes are made of. Every text inserted keeps the indentation of the lines around it. */
import type { Definition, Position, Span, Statement } from '../facts/facts.js';
import type { Provenance } from '../recipes/instrument/instrument.js';
import type { Edit, Place } from './finding.js';

export function replace(definition: Definition, span: Span, text: string): Edit {
  return { place: { definition, span }, text };
}

export function insertAt(definition: Definition, at: Position, text: string): Edit {
  return replace(definition, { start: at, end: at }, text);
}

/** The text of a span, as written. */
export function textAt(definition: Definition, span: Span): string {
  const lines = linesOf(definition);
  const first = lines[span.start.line] ?? '';
  if (span.start.line === span.end.line) return first.slice(span.start.character, span.end.character);
  const middle = lines.slice(span.start.line + 1, span.end.line);
  return [first.slice(span.start.character), ...middle, (lines[span.end.line] ?? '').slice(0, span.end.character)].join(
    '\n',
  );
}

/** Takes a statement out, with its line where it has that to itself. */
export function remove(definition: Definition, statement: Statement): Edit {
  const { start, end } = statement.span;
  const lines = linesOf(definition);
  const before = (lines[start.line] ?? '').slice(0, start.character);
  const after = (lines[end.line] ?? '').slice(end.character);
  const alone = before.trim() === '' && after.trim() === '' && end.line + 1 < lines.length;
  if (!alone) return replace(definition, statement.span, '');
  return replace(
    definition,
    { start: { line: start.line, character: 0 }, end: { line: end.line + 1, character: 0 } },
    '',
  );
}

/** Puts a line before a statement, indented like it; with no statement, at the start of the body. */
export function insertLine(definition: Definition, text: string, before?: Statement): Edit {
  const first = before ?? definition.statements[0];
  if (first) {
    const { start } = first.span;
    // A definition written on one line stays on one line.
    const after = start.line === 0 ? '  ' : `\n${indentOf(definition, start)}`;
    return insertAt(definition, start, `${text}${after}`);
  }
  const brace = openingBrace(definition);
  const indent = indentOf(definition, definition.span.start);
  return insertAt(definition, brace, `\n${indent}  ${text}\n${indent}`);
}

/** Just after the opening brace, or at the end of the head where there is none. */
function openingBrace(definition: Definition): Position {
  const lines = linesOf(definition);
  const { end } = definition.head;
  for (const [line, text] of lines.entries()) {
    if (line < end.line) continue;
    const at = text.indexOf('{', line === end.line ? end.character : 0);
    if (at >= 0) return { line, character: at + 1 };
  }
  return end;
}

/** The white space at the start of the line a position stands on. */
export function indentOf(definition: Definition, at: Position): string {
  return /^[ \t]*/.exec(linesOf(definition)[at.line] ?? '')?.[0] ?? '';
}

/** A statement as it would stand at the top of a body: its whole path instead of the enclosing blocks. */
export function restated(definition: Definition, statement: Statement): string {
  if (!('path' in statement)) return textAt(definition, statement.span);
  const { path } = statement;
  const before = textAt(definition, { start: statement.span.start, end: path.span.start });
  const after = textAt(definition, { start: path.span.end, end: statement.span.end });
  return `${before}${path.text}${after}`;
}

/** The end of a statement, or of the remark that follows it on its line. */
export function behind(definition: Definition, { end }: Span): Position {
  const rest = textAt(definition, { start: end, end: { line: end.line, character: Number.MAX_SAFE_INTEGER } });
  const remark = /^[ \t]*\/\/.*$/.exec(rest);
  return { line: end.line, character: end.character + (remark?.[0].length ?? 0) };
}

export function placeOf({ definition, span }: Provenance): Place {
  return { definition, span };
}

/** The lines of a definition, the first one filled up so that columns count as in the file. */
function linesOf(definition: Definition): readonly string[] {
  const lines = definition.source.split(/\r\n|\n|\r/);
  return [' '.repeat(definition.span.start.character) + (lines[0] ?? ''), ...lines.slice(1)];
}
