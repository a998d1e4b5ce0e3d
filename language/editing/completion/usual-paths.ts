/** What makers state in definitions of a kind, going by those there are. */
import type { Definition, DefinitionKind, Statement } from '../../facts/facts.js';
import { allStatements } from '../../recipes/instrument/values.js';
import type { Desk } from '../../checks/desk.js';

/** So many are looked at, the last by name: enough to see a habit. */
const LOOKED_AT = 30;

/** Paths stated in other definitions of the kind, in the catalogue's words. */
export function usualPaths({ shelf, workshop }: Desk, kind: DefinitionKind, except?: Definition): ReadonlySet<string> {
  const paths = new Set<string>();
  for (const name of shelf.names(kind).slice(-LOOKED_AT)) {
    const definition = shelf.find(kind, name);
    if (!definition || definition === except) continue;
    for (const statement of allStatements(definition.statements)) {
      const written = statedPath(statement);
      if (written !== undefined) paths.add(workshop.catalogue.canonical(written, kind));
    }
  }
  return paths;
}

function statedPath(statement: Statement): string | undefined {
  return statement.kind === 'property' ? statement.path.text : undefined;
}
