/** What a set of appointments brings: its own values and those of the sets it takes up, in the order written. */
import type { Definition, PropertyStatement, Statement } from '../../facts/facts.js';
import { allStatements } from './values.js';

export interface Brought {
  readonly statement: PropertyStatement;
  /** The set that says it. */
  readonly definition: Definition;
}

/** Each set is taken up once, so that sets that take up each other come to an end. */
export function broughtBy(name: string, find: (name: string) => Definition | undefined): readonly Brought[] {
  const taken = new Set<string>();
  const brought: Brought[] = [];
  // By hand and not by calls within calls: a chain may be as long as a file.
  const open: { readonly definition: Definition; readonly rest: Iterator<Statement, unknown> }[] = [];
  const takeUp = (next: string) => {
    const definition = taken.has(next) ? undefined : find(next);
    taken.add(next);
    if (definition) open.push({ definition, rest: allStatements(definition.statements)[Symbol.iterator]() });
  };
  takeUp(name);
  for (let inner = open.at(-1); inner !== undefined; inner = open.at(-1)) {
    const next = inner.rest.next();
    const statement = next.done ? undefined : next.value;
    if (statement === undefined) open.pop();
    else if (statement.kind === 'with') takeUp(statement.name.text);
    else if (statement.kind === 'property') brought.push({ statement, definition: inner.definition });
  }
  return brought;
}

/** Names of the sets this one takes up itself. */
export function takenUpBy(definition: Definition): readonly string[] {
  return [...allStatements(definition.statements)].flatMap((one) => (one.kind === 'with' ? [one.name.text] : []));
}
