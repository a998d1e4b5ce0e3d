/** What stands at a place in a file, in the terms of the language: the question behind every hover, jump and rename. */
import type {
  Definition,
  DefinitionKind,
  Path,
  Position,
  QuantityValue,
  Span,
  Statement,
  Value,
  Word,
} from '../../facts/facts.js';
import { wantedKinds } from '../../recipes/shelf/mentions.js';
import { contains, type Desk, shifted } from '../../checks/desk.js';

export interface Spot {
  readonly definition: Definition;
  /** First line of the definition in its file. */
  readonly line: number;
  /** Statements around the place, outermost first. */
  readonly statements: readonly Statement[];
  readonly what: WhatStands;
  /** The word or value itself, lines counted from the file's first. */
  readonly range: Span;
}

export type WhatStands =
  | { readonly kind: 'name'; readonly word: Word }
  /** The parent, model, recipe or species named in a head. */
  | { readonly kind: 'target'; readonly word: Word; readonly wanted: readonly DefinitionKind[] }
  /** A word of a path; `path` is canonical up to and including that word, `whole` to its end. */
  | { readonly kind: 'path'; readonly word: Word; readonly path: string; readonly whole: string }
  /** A value; `path` is the property it belongs to. */
  | { readonly kind: 'value'; readonly value: Value; readonly path: string }
  | { readonly kind: 'unit'; readonly value: QuantityValue; readonly path: string }
  | { readonly kind: 'package'; readonly word: Word }
  | { readonly kind: 'code'; readonly word: Word }
  /** Inside the definition, on none of these. */
  | { readonly kind: 'nothing' };

export function spotAt(desk: Desk, uri: string, position: Position): Spot | undefined {
  const entry = desk.shelf
    .file(uri)
    ?.definitions.find(({ definition, line }) => contains(shifted(definition.span, line), position));
  if (!entry) return undefined;
  const { definition, line } = entry;
  const inside = { line: position.line - line, character: position.character };
  const statements = statementsAround(definition.statements, inside);
  const found = inHead(definition, inside) ?? inStatement(desk, definition, statements.at(-1), inside);
  const span = found?.span ?? { start: inside, end: inside };
  return { definition, line, statements, what: found?.what ?? { kind: 'nothing' }, range: shifted(span, line) };
}

interface Found {
  readonly what: WhatStands;
  readonly span: Span;
}

function statementsAround(statements: readonly Statement[], position: Position): readonly Statement[] {
  for (const statement of statements) {
    if (!contains(statement.span, position)) continue;
    return 'statements' in statement ? [statement, ...statementsAround(statement.statements, position)] : [statement];
  }
  return [];
}

function inHead(definition: Definition, position: Position): Found | undefined {
  const { name, relation } = definition;
  if (name.text !== '' && contains(name.span, position)) return { what: { kind: 'name', word: name }, span: name.span };
  if (relation && contains(relation.target.span, position)) {
    const word = relation.target;
    return { what: { kind: 'target', word, wanted: wantedKinds(definition) }, span: word.span };
  }
  return undefined;
}

function inStatement(
  desk: Desk,
  definition: Definition,
  statement: Statement | undefined,
  position: Position,
): Found | undefined {
  if (!statement) return undefined;
  const canonical = (path: string) => desk.workshop.catalogue.canonical(path, definition.kind);
  const onPath = (path: Path | undefined) => (path ? inPath(path, position, canonical) : undefined);
  const onValue = (value: Value | undefined, path: Path) =>
    value ? inValue(value, canonical(path.text), position) : undefined;
  switch (statement.kind) {
    case 'property':
      return onPath(statement.path) ?? onValue(statement.value, statement.path);
    case 'change':
      return (
        onPath(statement.path) ??
        onValue(statement.old, statement.path) ??
        onValue(statement.new, statement.path) ??
        onValue(statement.by, statement.path)
      );
    case 'block':
    case 'add':
    case 'drop':
      return onPath(statement.path);
    case 'hold':
      return (
        onPath(statement.quantity) ??
        onPath(statement.by) ??
        statement.along?.map(onPath).find((found) => found !== undefined) ??
        onValue(statement.at, statement.quantity)
      );
    case 'expect':
      return onPath(statement.quantity) ?? onValue(statement.value, statement.quantity);
    case 'with':
      return onWord(statement.name, 'package', position);
    case 'accept':
      return onWord(statement.code, 'code', position);
    default:
      return undefined;
  }
}

function onWord(word: Word, kind: 'package' | 'code', position: Position): Found | undefined {
  return contains(word.span, position) ? { what: { kind, word }, span: word.span } : undefined;
}

function inPath(path: Path, position: Position, canonical: (path: string) => string): Found | undefined {
  const at = path.segments.findIndex((word) => contains(word.span, position));
  const word = path.segments[at];
  if (!word) return undefined;
  const words = path.text.split('.');
  const upTo = words.slice(0, words.length - path.segments.length + at + 1).join('.');
  return { what: { kind: 'path', word, path: canonical(upTo), whole: canonical(path.text) }, span: word.span };
}

function inValue(value: Value, path: string, position: Position): Found | undefined {
  if (!contains(value.span, position)) return undefined;
  for (const part of partsOf(value)) {
    const found = inValue(part, path, position);
    if (found) return found;
  }
  if (value.kind === 'quantity' && value.unitSpan && contains(value.unitSpan, position)) {
    return { what: { kind: 'unit', value, path }, span: value.unitSpan };
  }
  return { what: { kind: 'value', value, path }, span: value.span };
}

function partsOf(value: Value): readonly Value[] {
  switch (value.kind) {
    case 'range':
      return [value.low, value.high].filter((part) => part !== undefined);
    case 'size':
      return value.parts;
    case 'point':
      return [value.station, value.offset];
    case 'list':
      return value.items;
    default:
      return [];
  }
}
