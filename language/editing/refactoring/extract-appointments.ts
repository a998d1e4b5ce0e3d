/**
 * What the player sees or plugs in, taken out of a recipe into appointments of their own, which the recipe takes up; or
 * out of what a client asks for, which the request takes up.
 */
import { leavingWith } from '../../checks/changes/fewer-changes.js';
import { indentOf, insertAt, insertLine, remove, replace, textAt } from '../../checks/mending.js';
import type { Edit } from '../../checks/finding.js';
import type { ChangeStatement, Definition, PropertyStatement, RequestStatement, Statement } from '../../facts/facts.js';
import { sameValue } from '../../recipes/instrument/values.js';
import { isCursor, type Marked, markedStatements, type Offer, readableRecipe, touches } from './offered-refactoring.js';
import { firstDifference, readAfter } from './proof.js';

export function extractAppointments(marked: Marked): readonly Offer[] {
  const { definition } = marked;
  if (definition.kind === 'recipe') return extracted(marked, definition.statements, markedStatements(marked));
  const request = definition.kind === 'order' ? requestMarked(marked) : undefined;
  if (!request) return [];
  return extracted(marked, request.statements, markedStatements(marked, request.statements), request);
}

/** The one request the mark lies in. */
function requestMarked({ definition, span }: Marked): RequestStatement | undefined {
  const all = definition.statements.filter((one) => touches(one.span, span));
  const [first] = all;
  return all.length === 1 && first?.kind === 'request' ? first : undefined;
}

function extracted(
  marked: Marked,
  statements: readonly Statement[],
  touched: readonly Statement[],
  request?: RequestStatement,
): readonly Offer[] {
  const { desk } = marked;
  const { say } = desk.workshop.wording;
  const here = touched.filter(isValue);
  const wanted = isCursor(marked) ? allValues(statements) : here;
  const fitting = wanted.filter((statement) => isAppointment(marked, statement));
  const isAsked = isCursor(marked) ? here.some((statement) => fitting.includes(statement)) : fitting.length > 0;
  if (!isAsked) return [];
  const title = say`Move to appointments of their own`;
  const refuse = (reason: string): readonly Offer[] => [{ title, kind: 'extract', reason }];
  const unfit = request ? unreadableOrder(marked) : readableRecipe(marked);
  if (unfit !== undefined) return refuse(unfit);
  const stranger = wanted.find((statement) => !fitting.includes(statement));
  if (stranger && !isCursor(marked)) {
    return refuse(
      request
        ? say`${stranger.path.text} is no appointment: it stays in the request. Mark only what the player sees or plugs in.`
        : say`${stranger.path.text} is no appointment: it belongs to the recipe. Mark only what the player sees or plugs in.`,
    );
  }
  const edits = moving(marked, statements, fitting);
  const trouble = request ? troubleInOrder(marked, edits) : troubleInRecipe(marked, edits);
  return trouble === undefined ? [{ title, kind: 'extract', edits }] : refuse(trouble);
}

function moving(marked: Marked, statements: readonly Statement[], fitting: readonly ValueStatement[]): readonly Edit[] {
  const { definition } = marked;
  const name = freeName(marked);
  const outer = indentOf(definition, definition.span.start);
  const lines = fitting.map((statement) => `${outer}  ${asValue(definition, statement)}`);
  const leaving = leavingWith(definition, fitting);
  const [at] = leaving;
  const take = `with ${name}`;
  const isTop = at !== undefined && statements.includes(at);
  return [
    insertAt(definition, definition.span.start, `appointments ${name} {\n${lines.join('\n')}\n${outer}}\n\n${outer}`),
    isTop
      ? replace(definition, at.span, take)
      : insertLine(
          definition,
          take,
          statements.find((one) => fitting[0] && holds(one, fitting[0])),
        ),
    ...leaving.filter((one) => !(isTop && one === at)).map((one) => remove(definition, one)),
  ];
}

/** Why the recipe would not mean the same. */
function troubleInRecipe(
  { desk: { workshop }, definition, parser }: Marked,
  edits: readonly Edit[],
): string | undefined {
  const { say } = workshop.wording;
  const [appointments, recipe] = readAfter(definition, edits, parser);
  if (!appointments || !recipe) return say`The recipe could not be rewritten.`;
  const start = workshop.startOf(definition.name.text);
  const after = workshop.wouldBe(recipe, start, [appointments]);
  const lost = firstDifference(workshop.wouldBe(definition, start), after);
  return lost === undefined ? undefined : say`Something else in this recipe also works on ${lost}. Settle that first.`;
}

/** Why the order would not ask for the same: what it asked for must stand in it or in the appointments. */
function troubleInOrder(
  { desk: { workshop }, definition, parser }: Marked,
  edits: readonly Edit[],
): string | undefined {
  const { say } = workshop.wording;
  const after = readAfter(definition, edits, parser);
  if (after.length !== 2 || after.some(({ problems }) => problems.length > 0)) {
    return say`The order could not be rewritten.`;
  }
  const asked = (all: readonly Definition[]) =>
    all
      .flatMap((each) => workshop.written(each).filter(({ role }) => role === 'value'))
      .map(({ canonical, values }) => ({ canonical, value: values.at(-1)?.value }));
  const now = asked(after);
  const isKept = ({ canonical, value }: (typeof now)[number]) =>
    now.some((one) => one.canonical === canonical && sameValue(one.value, value));
  const lost = asked([definition]).find((one) => !isKept(one));
  return lost && say`${lost.canonical} would be lost. Take it out of its block first.`;
}

function unreadableOrder({ desk, definition }: Marked): string | undefined {
  return definition.problems.length > 0
    ? desk.workshop.wording.say`Something in this order cannot be read. Mend that first.`
    : undefined;
}

type ValueStatement = PropertyStatement | ChangeStatement;

function isValue(statement: Statement): statement is ValueStatement {
  return statement.kind === 'property' || (statement.kind === 'change' && statement.new !== undefined);
}

function allValues(statements: readonly Statement[]): readonly ValueStatement[] {
  return statements.flatMap((one) => (one.kind === 'block' ? allValues(one.statements) : isValue(one) ? [one] : []));
}

function isAppointment({ desk: { workshop } }: Marked, { path }: ValueStatement): boolean {
  const property = workshop.catalogue.property(workshop.catalogue.canonical(path.text), 'appointments');
  return property?.class === 'appointment' || property?.class === 'option';
}

/** `path: value`, with its source; of a change the new value. */
function asValue(definition: Definition, statement: ValueStatement): string {
  const value = statement.kind === 'property' ? statement.value : statement.new!;
  const end = statement.kind === 'property' ? statement.span.end : value.span.end;
  return `${statement.path.text}: ${textAt(definition, { start: value.span.start, end })}`;
}

function holds(one: Statement, inner: Statement): boolean {
  return one === inner || (one.kind === 'block' && one.statements.some((next) => holds(next, inner)));
}

function freeName({ desk: { shelf }, definition }: Marked): string {
  const name = `${definition.name.text}-appointments`;
  for (let i = 1; ; i++) {
    const candidate = i === 1 ? name : `${name}-${i}`;
    if (!shelf.find('appointments', candidate)) return candidate;
  }
}
