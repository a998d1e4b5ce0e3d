/** Every place where a definition names another: the edges of the folder, for jumping, renaming and unknown names. */
import type { Catalogue } from '../../catalogue/catalogue.js';
import type { ValueKind } from '../../catalogue/property.js';
import type { Definition, DefinitionKind, Span, Statement, Value } from '../../facts/facts.js';
import { allStatements } from '../instrument/values.js';

export interface Mention {
  readonly name: string;
  /** Kinds that would do, best first. */
  readonly kinds: readonly DefinitionKind[];
  readonly span: Span;
}

/** The kinds of definition that the head of this one may name. */
export function wantedKinds({ kind, relation }: Definition): readonly DefinitionKind[] {
  if (kind === 'wood') return ['species', 'wood'];
  if (kind === 'recipe') return relation?.word === 'for' ? ['model'] : ['recipe'];
  return kind === 'build' || kind === 'order' ? ['recipe'] : [];
}

/** The kinds of definition a property's value may name. A species stands in where no set was measured. */
export const KINDS_OF_VALUE: Partial<Record<ValueKind, readonly DefinitionKind[]>> = {
  wood: ['wood', 'species'],
  species: ['species'],
  strings: ['strings'],
  rig: ['rig'],
  model: ['model'],
};

export function mentionsIn(definition: Definition, catalogue: Catalogue): readonly Mention[] {
  const mentions: Mention[] = [];
  const { relation } = definition;
  if (relation && relation.target.text !== '') {
    mentions.push({ name: relation.target.text, kinds: wantedKinds(definition), span: relation.target.span });
  }
  for (const statement of allStatements(definition.statements)) {
    if (statement.kind === 'with') {
      mentions.push({ name: statement.name.text, kinds: ['appointments'], span: statement.name.span });
      continue;
    }
    for (const { path, value } of valuesOf(statement)) {
      const kinds = kindsNamedBy(path, definition, catalogue);
      if (kinds.length > 0) mentions.push(...namesIn(value).map(({ name, span }) => ({ name, kinds, span })));
    }
  }
  return mentions;
}

/** The kinds of definition the value at a written path may name; none for a path whose value is something else. */
export function kindsNamedBy(path: string, definition: Definition, catalogue: Catalogue): readonly DefinitionKind[] {
  const property = catalogue.property(catalogue.canonical(path, definition.kind), definition.kind);
  return (property && KINDS_OF_VALUE[property.kind]) ?? [];
}

/** The values a statement states, with the path each belongs to. */
export function valuesOf(statement: Statement): readonly { path: string; value: Value }[] {
  switch (statement.kind) {
    case 'property':
      return [{ path: statement.path.text, value: statement.value }];
    case 'change':
      return [statement.old, statement.new, statement.by]
        .filter((value) => value !== undefined)
        .map((value) => ({ path: statement.path.text, value }));
    case 'hold':
      return statement.at ? [{ path: statement.quantity.text, value: statement.at }] : [];
    case 'expect':
      return [{ path: statement.quantity.text, value: statement.value }];
    default:
      return [];
  }
}

function namesIn(value: Value): readonly { name: string; span: Span }[] {
  if (value.kind === 'name') return [{ name: value.name, span: value.span }];
  return value.kind === 'list' ? value.items.flatMap(namesIn) : [];
}
