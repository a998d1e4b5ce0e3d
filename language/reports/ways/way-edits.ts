/** The text that makes a way come true in its recipe: a change, or another number in the change that is there already. */
import type { Definition, Statement } from '../../facts/facts.js';
import type { Edit } from '../../checks/finding.js';
import { insertLine, replace } from '../../checks/mending.js';
import { allStatements } from '../../recipes/instrument/values.js';
import type { Way } from '../../recipes/ways/ways.js';
import type { Workshop } from '../../recipes/workshop.js';
import { sizeInWords } from './way-words.js';

export function wayEdits(
  definition: Definition,
  way: Way,
  { catalogue, wording, instrument }: WayShop,
): readonly Edit[] {
  const [old, next] = [sizeInWords(way, way.old), sizeInWords(way, way.new)];
  const own = way.paths.map((path) => ownStatement(definition, path, catalogue, instrument));
  if (own.every((statement) => statement !== undefined)) {
    return own.map((statement) => {
      const value =
        statement.kind === 'property' ? statement.value : statement.kind === 'change' ? statement.new : undefined;
      return value
        ? replace(definition, value.span, next)
        : replace(definition, statement.span, lineOf(way.paths[0]!, old, next));
    });
  }
  const lines = way.paths.map((path) => lineOf(path, old, next));
  const before = definition.statements.find(({ kind }) => kind !== 'because');
  if (lines.length === 1) return [insertLine(definition, lines[0]!, before)];
  const reason = wording.text(way.new < way.old ? 'both a little less' : 'both a little more');
  return [insertLine(definition, `together "${reason}" { ${lines.join('  ')} }`, before)];
}

type WayShop = Pick<Workshop, 'catalogue' | 'wording'> & { readonly instrument: Workshop['instrument'] };

function lineOf(path: string, old: string, next: string): string {
  return `change ${path}: ${old} -> ${next}`;
}

/** The statement of this recipe that gives the path its value, where it does so itself. */
function ownStatement(
  definition: Definition,
  path: string,
  catalogue: Workshop['catalogue'],
  instrument: Workshop['instrument'],
): Statement | undefined {
  const held = instrument(definition.name.text)?.values.get(path);
  if (held?.from.definition !== definition) return undefined;
  for (const statement of allStatements(definition.statements)) {
    if (statement.kind !== 'property' && statement.kind !== 'change') continue;
    if (catalogue.canonical(statement.path.text) === path) return statement;
  }
  return undefined;
}
