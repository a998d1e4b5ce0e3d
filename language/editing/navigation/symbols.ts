/** Names and structure of a file and of the folder: outline, quick search, selection. */
import type {
  ChangeStatement,
  Definition,
  DefinitionKind,
  DropStatement,
  Position,
  PropertyStatement,
  Span,
  Statement,
} from '../../facts/facts.js';
import { writeValue } from '../../checks/phrases.js';
import { BARE_KINDS } from '../../checks/names/name-rules.js';
import type { Wording } from '../../wording/wording.js';
import { contains, type Desk, type Location, locationOf, shifted } from '../../checks/desk.js';
import { spotAt } from './spot.js';

export interface Symbol {
  readonly name: string;
  readonly kind: DefinitionKind | 'part' | 'property' | 'statement';
  readonly detail: string;
  readonly range: Span;
  /** The words to select when jumping to it. */
  readonly selection: Span;
  readonly children: readonly Symbol[];
}

export function documentSymbols(desk: Desk, uri: string): readonly Symbol[] {
  return (desk.shelf.file(uri)?.definitions ?? []).map(({ definition, line }) => ({
    name:
      definition.name.text ||
      desk.workshop.wording.say`${desk.workshop.wording.text(BARE_KINDS[definition.kind])} without a name`,
    kind: definition.kind,
    detail: definition.relation
      ? `${definition.kind} ${definition.relation.word} ${definition.relation.target.text}`
      : definition.kind,
    range: shifted(definition.span, line),
    selection: shifted(definition.name.text === '' ? definition.head : definition.name.span, line),
    children: definition.statements.flatMap((statement) => symbolOf(statement, line, desk.workshop.wording)),
  }));
}

/** Definitions anywhere in the folder whose name has the letters of the query in order. */
export function workspaceSymbols(desk: Desk, query: string): readonly (Location & { definition: Definition })[] {
  const letters = query.toLowerCase();
  return desk.shelf.uris().flatMap((uri) =>
    desk.shelf.file(uri)!.definitions.flatMap(({ definition }) => {
      const location = locationOf(desk, definition, definition.name.span);
      return location && hasLettersInOrder(definition.name.text.toLowerCase(), letters)
        ? [{ ...location, definition }]
        : [];
    }),
  );
}

/** Spans around a place, innermost first: word, statement, its blocks, the definition. */
export function selectionRanges(desk: Desk, uri: string, position: Position): readonly Span[] {
  const spot = spotAt(desk, uri, position);
  if (!spot) return [];
  const around = [...spot.statements].reverse().map((statement) => shifted(statement.span, spot.line));
  const all = [spot.range, ...around, shifted(spot.definition.span, spot.line)];
  return all.filter((span, i) => i === 0 || !sameSpan(span, all[i - 1]!));
}

function symbolOf(statement: Statement, line: number, wording: Wording): Symbol[] {
  const here = { range: shifted(statement.span, line), children: [] };
  switch (statement.kind) {
    case 'block':
    case 'add':
      return [
        {
          ...here,
          name: statement.path.segments.map((word) => word.text).join('.'),
          kind: 'part',
          detail: statement.kind === 'add' ? wording.text('added') : '',
          selection: shifted(statement.path.span, line),
          children: statement.statements.flatMap((inner) => symbolOf(inner, line, wording)),
        },
      ];
    case 'together':
    case 'rework':
      return [
        {
          ...here,
          name: statement.reason?.text || statement.kind,
          kind: 'statement',
          detail: statement.kind,
          selection: here.range,
          children: statement.statements.flatMap((inner) => symbolOf(inner, line, wording)),
        },
      ];
    case 'reading':
    case 'request':
      return [
        {
          ...here,
          name:
            statement.kind === 'reading' ? (statement.name?.text ?? 'reading') : (statement.date?.date ?? 'request'),
          kind: 'statement',
          detail: statement.kind,
          selection: here.range,
          children: statement.statements.flatMap((inner) => symbolOf(inner, line, wording)),
        },
      ];
    case 'property':
    case 'change':
    case 'drop': {
      const detail = valueOf(statement);
      const selection = shifted(statement.path.span, line);
      return [
        { ...here, name: statement.path.segments.map((w) => w.text).join('.'), kind: 'property', detail, selection },
      ];
    }
    default:
      return [];
  }
}

/** What stands behind the path, so that an outline can be read by itself. */
function valueOf(statement: PropertyStatement | ChangeStatement | DropStatement): string {
  if (statement.kind === 'drop') return 'drop';
  if (statement.kind === 'property') return writeValue(statement.value);
  const [from, to] = [statement.old, statement.new].map((value) => (value ? writeValue(value) : ''));
  if (statement.by) return `by ${writeValue(statement.by)}`;
  return from === '' ? `→ ${to}` : `${from} → ${to}`;
}

function hasLettersInOrder(name: string, letters: string): boolean {
  let at = 0;
  for (const letter of letters) {
    at = name.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

function sameSpan(a: Span, b: Span): boolean {
  return contains(a, b.start) && contains(a, b.end) && contains(b, a.start) && contains(b, a.end);
}
