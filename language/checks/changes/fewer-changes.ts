/** Two ways to make fewer changes of many: one tweak in several places, or a chain of recipes that change one thing each. */
import type { Variable } from '../../recipes/instrument/counting.js';
import type { BlockStatement, Definition, Statement } from '../../facts/facts.js';
import { isWithin } from '../../recipes/instrument/instrument.js';
import type { Solved, Workshop } from '../../recipes/workshop.js';
import type { Edit, Fix } from '../finding.js';
import { indentOf, insertAt, insertLine, remove, replace, restated, textAt } from '../mending.js';
import { type Wording } from '../../wording/wording.js';

/** Wraps the changes in `together`, where the first of them stands. */
export function groupAsOne(definition: Definition, counted: readonly Variable[], { say }: Wording): readonly Fix[] {
  const statements = movable(definition, counted);
  if (statements.length < 2 || bringsModel(counted) || counted.some((variable) => variable.group)) return [];
  return [{ title: say`Group them as one tweak`, edits: groupEdits(definition, statements) }];
}

/** Puts statements of a definition, in their order, into one `together` whose reason is still to be written. */
export function groupEdits(definition: Definition, statements: readonly Statement[]): readonly Edit[] {
  const [first] = statements;
  if (!first) return [];
  const leaving = leavingWith(definition, statements);
  const at = definition.statements.find((one) => holds(one, first)) ?? first;
  const indent = indentOf(definition, at.span.start);
  const lines = statements.map((statement) => `${indent}  ${restated(definition, statement)}`);
  const group = `together "" {\n${lines.join('\n')}\n${indent}}`;
  const rest = leaving.filter((one) => one !== at).map((one) => remove(definition, one));
  return leaving.includes(at)
    ? [replace(definition, at.span, group), ...rest]
    : [insertLine(definition, group, at), ...rest];
}

/** What goes when these statements are moved: they themselves, or the whole block where nothing else is in it, no remark either. */
export function leavingWith(definition: Definition, statements: readonly Statement[]): readonly Statement[] {
  const empties = (one: Statement): boolean =>
    statements.includes(one) ||
    (one.kind === 'block' &&
      one.statements.length > 0 &&
      one.statements.every(empties) &&
      !hasRemark(definition, one, statements));
  const within = (all: readonly Statement[]): readonly Statement[] =>
    all.flatMap((one) =>
      empties(one) ? [one] : one.kind === 'block' || one.kind === 'request' ? within(one.statements) : [],
    );
  return within(definition.statements);
}

/** Whether a block holds a comment outside the statements that are moved, and go with all they hold. */
function hasRemark(definition: Definition, block: BlockStatement, moved: readonly Statement[]): boolean {
  const within = (statements: readonly Statement[]): string =>
    statements
      .map((one) =>
        one.kind === 'block' && !moved.includes(one) ? within(one.statements) : textAt(definition, one.span),
      )
      .join('');
  const remarks = (text: string) => text.split(/\/\/|\/\*/).length;
  return remarks(textAt(definition, block.span)) > remarks(within(block.statements));
}

function holds(one: Statement, inner: Statement): boolean {
  return one === inner || (one.kind === 'block' && one.statements.some((next) => holds(next, inner)));
}

/**
 * Gives every change but the last a recipe of its own, in the order of their predicted effect, each from the one before;
 * this recipe keeps the last. Holds go along, since each step is to be compensated like the whole.
 */
export function splitIntoChain(
  definition: Definition,
  recipe: Solved,
  counted: readonly Variable[],
  workshop: Workshop,
): readonly Fix[] {
  const { say } = workshop.wording;
  const { relation } = definition;
  if (!relation || counted.length < 2 || counted.length > MOST_STEPS || bringsModel(counted)) return [];
  if (areEntangled(recipe, counted)) return [];
  const byEffect = [...counted].sort((a, b) => strength(b) - strength(a));
  const moving = byEffect.slice(0, -1);
  const names = freeNames(recipe.name, moving.length, workshop);
  const holds = recipe.holds.map(({ statement }) => textAt(definition, statement.span));
  const moved: Statement[] = [];
  const steps: string[] = [];
  let parent = relation.target.text;
  for (const [i, variable] of moving.entries()) {
    const name = names[i];
    if (name === undefined) return [];
    const statements = variable.group ? [variable.group] : movable(definition, [variable]);
    if (statements.length === 0) return [];
    const body = [...statements.map((statement) => restated(definition, statement)), ...holds];
    const alone = say`${variable.label.replace(/["\\]/g, '')}, by itself.`;
    const reason = `because "${alone}"`;
    steps.push(`recipe ${name} from ${parent} {\n${[reason, ...body].map((line) => `  ${line}`).join('\n')}\n}\n\n`);
    moved.push(...statements);
    parent = name;
  }
  return [
    {
      title: say`Split into ${counted.length} recipes of one change each`,
      edits: [
        insertAt(definition, definition.span.start, steps.join('')),
        replace(definition, relation.target.span, parent),
        ...leavingWith(definition, moved).map((statement) => remove(definition, statement)),
      ],
      preferred: true,
    },
  ];
}

/** A longer chain than this would be no help to anybody. */
export const MOST_STEPS = 12;

/** Whether one change works on what another of them brings or takes away, so that their order matters. */
export function areEntangled({ changes }: Solved, counted: readonly Variable[]): boolean {
  return counted.some((variable) =>
    variable.changes.some(({ path }) =>
      changes.some(
        (other) => !variable.changes.includes(other) && (isWithin(path, other.path) || isWithin(other.path, path)),
      ),
    ),
  );
}

/** How far the largest effect stands out of what can be told apart. */
function strength(variable: Variable): number {
  const [best] = variable.effects;
  return best ? Math.abs(best.difference) / (best.discernible || Number.MIN_VALUE) : 0;
}

/** The statements written in this definition, each once. */
function movable(definition: Definition, variables: readonly Variable[]): readonly Statement[] {
  const statements = variables.flatMap(({ changes }) => changes.map(({ statement }) => statement));
  return [...new Set(statements)].sort(
    (a, b) => a.span.start.line - b.span.start.line || a.span.start.character - b.span.start.character,
  );
}

function freeNames(name: string, count: number, workshop: Workshop): readonly string[] {
  const names: string[] = [];
  for (let i = 0, letter = 'a'.charCodeAt(0); i < count; letter++) {
    const candidate = `${name}-${letter <= 122 ? String.fromCharCode(letter) : letter - 122}`;
    if (workshop.shelf.find('recipe', candidate)) continue;
    names.push(candidate);
    i++;
  }
  return names;
}

/** A change of model brings many differences with one line, which cannot be made one at a time. */
export function bringsModel(counted: readonly Variable[]): boolean {
  const statements = counted.flatMap(({ changes }) => changes.map(({ statement }) => statement));
  return new Set(statements).size < counted.length;
}
