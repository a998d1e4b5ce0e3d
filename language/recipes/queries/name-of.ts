/** Which questions are asked about a definition by its name. */
import type { Definition, DefinitionKind } from '../../facts/facts.js';

/** The name of a definition of these kinds; undefined for any other, and for one without a name. */
export function nameOf(...kinds: readonly DefinitionKind[]): (definition: Definition) => string | undefined {
  return ({ kind, name }) => (kinds.includes(kind) && name.text !== '' ? name.text : undefined);
}
