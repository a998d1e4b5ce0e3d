/** What the player sees or plugs in, taken out of a recipe into appointments of their own, which the recipe takes up. */
import { leavingWith } from '../../checks/fewer-changes.js';
import { indentOf, insertAt, insertLine, remove, replace, textAt } from '../../checks/mending.js';
import type { ChangeStatement, Definition, PropertyStatement, Statement } from '../../recipes/facts.js';
import { isCursor, type Marked, markedStatements, type Offer, readableRecipe } from './offer.js';
import { firstDifference, readAfter } from './proof.js';

export function extractAppointments(marked: Marked): readonly Offer[] {
  const { desk, definition } = marked;
  const { workshop } = desk;
  const { say } = workshop.wording;
  if (definition.kind !== 'recipe') return [];
  const here = markedStatements(marked).filter(isValue);
  const wanted = isCursor(marked) ? allValues(definition.statements) : here;
  const fitting = wanted.filter((statement) => isAppointment(marked, statement));
  const isAsked = isCursor(marked) ? here.some((statement) => fitting.includes(statement)) : fitting.length > 0;
  if (!isAsked) return [];
  const title = say`Move to appointments of their own`;
  const refuse = (reason: string): readonly Offer[] => [{ title, kind: 'extract', reason }];
  const unfit = readableRecipe(marked);
  if (unfit !== undefined) return refuse(unfit);
  const stranger = wanted.find((statement) => !fitting.includes(statement));
  if (stranger && !isCursor(marked)) {
    return refuse(
      say`${stranger.path.text} is no appointment: it belongs to the recipe. Mark only what the player sees or plugs in.`,
    );
  }
  const name = freeName(marked);
  const outer = indentOf(definition, definition.span.start);
  const lines = fitting.map((statement) => `${outer}  ${asValue(definition, statement)}`);
  const [first] = fitting;
  if (!first) return [];
  const leaving = leavingWith(definition, fitting);
  const [at] = leaving;
  const take = `with ${name}`;
  const isTop = at !== undefined && definition.statements.includes(at);
  const edits = [
    insertAt(definition, definition.span.start, `appointments ${name} {\n${lines.join('\n')}\n${outer}}\n\n${outer}`),
    ...(isTop
      ? [replace(definition, at.span, take)]
      : [
          insertLine(
            definition,
            take,
            definition.statements.find((one) => holds(one, first)),
          ),
        ]),
    ...leaving.filter((one) => !(isTop && one === at)).map((one) => remove(definition, one)),
  ];
  const [appointments, recipe] = readAfter(definition, edits, marked.parser);
  if (!appointments || !recipe) return refuse(say`The recipe could not be rewritten.`);
  const start = workshop.startOf(definition.name.text);
  const after = workshop.wouldBe(recipe, start, [appointments]);
  const lost = firstDifference(workshop.wouldBe(definition, start), after);
  if (lost !== undefined) return refuse(say`Something else in this recipe also works on ${lost}. Settle that first.`);
  return [{ title, kind: 'extract', edits }];
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
