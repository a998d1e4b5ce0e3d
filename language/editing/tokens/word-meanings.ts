/** What the names, paths and values of a definition stand for, with the place of each. */
import type { Definition, DefinitionKind, Path, Span, Value, Word } from '../../facts/facts.js';
import { kindsNamedBy, wantedKinds } from '../../recipes/shelf/mentions.js';
import { allStatements } from '../../recipes/instrument/values.js';
import type { Written } from '../../recipes/instrument/written.js';
import type { Desk } from '../../checks/desk.js';
import type { Meaning, TokenKind, TokenModifier } from './meaning.js';

/** Lines count from the definition's first. */
export interface WordMeaning extends Meaning {
  readonly span: Span;
}

export function meaningsIn(desk: Desk, definition: Definition): readonly WordMeaning[] {
  const found: WordMeaning[] = [];
  const note = (span: Span, kind: TokenKind, ...modifiers: TokenModifier[]) =>
    void found.push({ span, kind, modifiers });
  const name = (word: Word, kinds: readonly DefinitionKind[]) => {
    if (word.text !== '') found.push({ span: word.span, ...namedAs(desk, word.text, kinds) });
  };

  if (definition.name.text !== '') note(definition.name.span, definition.kind, 'declaration');
  if (definition.relation) name(definition.relation.target, wantedKinds(definition));
  for (const statement of allStatements(definition.statements)) {
    if (statement.kind === 'with') name(statement.name, ['appointments']);
    if (statement.kind === 'accept') note(statement.code.span, 'label');
    if (statement.kind === 'reading' && statement.name) note(statement.name.span, 'label');
    if (statement.kind === 'because' || statement.kind === 'note') note(statement.text.span, 'text', 'documentation');
    if ('reason' in statement && statement.reason) note(statement.reason.span, 'text', 'documentation');
  }
  for (const written of desk.workshop.written(definition)) {
    for (const { word, kind } of wordsOfPath(desk, definition, written)) {
      note(word.span, kind, ...modifiersOf(written, kind));
    }
    for (const { as, value } of written.values) {
      const kinds = kindsNamedBy(written.path.text, definition, desk.workshop.catalogue);
      for (const { kind, span, modifiers } of meaningsOfValue(desk, value, kinds)) {
        note(span, kind, ...modifiers, ...(as === 'old' ? (['readonly'] as const) : []));
      }
    }
  }
  return found;
}

/** Each word of a path: the parts on the way, and what stands at its end. */
function wordsOfPath(
  { workshop: { catalogue } }: Desk,
  definition: Definition,
  { path, canonical, property, derived, role }: Written,
): readonly { readonly word: Word; readonly kind: TokenKind }[] {
  const isOfInstrument = definition.kind === 'recipe' || definition.kind === 'model';
  const kindOfEnd = (): TokenKind => {
    if (property || (role !== 'part' && catalogue.property(canonical))) return 'property';
    if (derived) return 'derived';
    return role === 'part' && catalogue.part(canonical) ? 'part' : 'unknown';
  };
  return path.segments.map((word, i) => {
    if (i === path.segments.length - 1) return { word, kind: kindOfEnd() };
    const upTo = catalogue.canonical(upToWord(path, i), isOfInstrument ? undefined : definition.kind);
    // `top.stiffness.along` goes through a word that is no part, to a quantity that is known.
    const isOnTheWay = catalogue.part(upTo) !== undefined || derived !== undefined || property !== undefined;
    return { word, kind: isOnTheWay ? 'part' : 'unknown' };
  });
}

function upToWord(path: Path, i: number): string {
  const words = path.text.split('.');
  return words.slice(0, words.length - path.segments.length + i + 1).join('.');
}

function modifiersOf({ statement, role }: Written, kind: TokenKind): readonly TokenModifier[] {
  if (kind === 'derived') return ['readonly'];
  const isChanged = statement.kind === 'change' || statement.kind === 'drop' || role === 'by';
  return isChanged && kind !== 'part' ? ['modification'] : [];
}

function meaningsOfValue(desk: Desk, value: Value, kinds: readonly DefinitionKind[]): readonly WordMeaning[] {
  switch (value.kind) {
    case 'name':
      return [{ span: value.span, ...(kinds.length > 0 ? namedAs(desk, value.name, kinds) : CHOICE) }];
    case 'unknown':
      return [{ span: value.span, ...CHOICE }];
    case 'list':
      return value.items.flatMap((item) => meaningsOfValue(desk, item, kinds));
    case 'quantity':
      return writtenNumbers(value.span, value.unitSpan);
    case 'range':
      return [value.low, value.high].flatMap((end) => (end ? meaningsOfValue(desk, end, kinds) : []));
    case 'size':
      return value.parts.flatMap((part) => meaningsOfValue(desk, part, kinds));
    case 'point':
      return [value.station, value.offset].flatMap((part) => meaningsOfValue(desk, part, kinds));
    case 'text':
      return [{ span: value.span, kind: 'text', modifiers: [] }];
    case 'date':
      return [{ span: value.span, kind: 'date', modifiers: [] }];
    case 'unreadable':
      return [];
  }
}

const CHOICE: Meaning = { kind: 'choice', modifiers: [] };

/** A number begins a quantity; where its unit stands close behind it the two are told apart. */
function writtenNumbers(span: Span, unitSpan: Span | undefined): readonly WordMeaning[] {
  const number = { start: span.start, end: unitSpan ? unitSpan.start : span.end };
  const unit: readonly WordMeaning[] = unitSpan ? [{ span: unitSpan, kind: 'unit', modifiers: [] }] : [];
  return [{ span: number, kind: 'number', modifiers: [] }, ...unit];
}

/** What a name turns out to be, of the kinds that would do. */
function namedAs(desk: Desk, name: string, kinds: readonly DefinitionKind[]): Meaning {
  for (const kind of kinds) {
    const definition = desk.shelf.find(kind, name);
    if (!definition) continue;
    const place = desk.shelf.placement(definition);
    const isOfLibrary = place !== undefined && desk.shelf.isLibrary(place.uri);
    return { kind, modifiers: isOfLibrary ? ['defaultLibrary', 'readonly'] : [] };
  }
  return { kind: 'unknown', modifiers: [] };
}
