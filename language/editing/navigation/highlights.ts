/** The other places in a file that name the same thing, or the same path in the same definition; where it is set, and where read. */
import type { Path, Position, Span, Statement } from '../../facts/facts.js';
import { type Desk, shifted } from '../../checks/desk.js';
import { referencesAt } from './references.js';
import { spotAt } from './spot.js';

export interface Highlight {
  readonly range: Span;
  /** The name is defined there, or the path is given a value. */
  readonly sets: boolean;
}

export function highlights(desk: Desk, uri: string, position: Position): readonly Highlight[] {
  const named = placesIn(desk, uri, position, true);
  if (named.length > 0) {
    const mentions = new Set(placesIn(desk, uri, position, false).map(keyOf));
    return named.map((range) => ({ range, sets: !mentions.has(keyOf(range)) }));
  }
  const spot = spotAt(desk, uri, position);
  if (spot?.what.kind !== 'path') return [];
  const { whole } = spot.what;
  const canonical = (path: string) => desk.workshop.catalogue.canonical(path, spot.definition.kind);
  return pathsIn(spot.definition.statements)
    .filter(({ path }) => canonical(path.text) === whole)
    .map(({ path, sets }) => ({ range: shifted(path.span, spot.line), sets }));
}

function placesIn(desk: Desk, uri: string, position: Position, declaration: boolean): readonly Span[] {
  return referencesAt(desk, uri, position, { declaration })
    .filter((place) => place.uri === uri)
    .map((place) => place.range);
}

function keyOf({ start }: Span): string {
  return `${start.line}:${start.character}`;
}

function pathsIn(statements: readonly Statement[]): readonly { readonly path: Path; readonly sets: boolean }[] {
  return statements.flatMap((statement) => {
    const inner = 'statements' in statement ? pathsIn(statement.statements) : [];
    if (statement.kind === 'hold') {
      const moved = [...(statement.by ? [statement.by] : []), ...(statement.along ?? [])];
      const by = moved.map((path) => ({ path, sets: true }));
      return [{ path: statement.quantity, sets: false }, ...by];
    }
    if (statement.kind === 'expect') return [{ path: statement.quantity, sets: false }];
    if (!('path' in statement)) return inner;
    return [{ path: statement.path, sets: statement.kind !== 'block' }, ...inner];
  });
}
