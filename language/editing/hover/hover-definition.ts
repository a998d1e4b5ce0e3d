/** Hover on the name of a recipe, model, build or anything else that has one. */
import { writeValue } from '../../checks/phrases.js';
import { isCounted, type Verdict } from '../../recipes/instrument/counting.js';
import { weightTestOf } from '../../recipes/builds/added-mass-test.js';
import type { Reading } from '../../recipes/builds/builds.js';
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition } from '../../facts/facts.js';
import type { Change } from '../../recipes/instrument/instrument.js';
import { agrees } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Desk } from '../../checks/desk.js';
import { inShort } from '../../reports/in-short.js';
import { familyOf, buildsCounted, recipesCounted } from '../../reports/descendants.js';
import { bullets, paragraphs, plain } from '../markdown.js';
import { english, type Wording } from '../../wording/wording.js';

export function definitionHover(desk: Desk, definition: Definition): string {
  switch (definition.kind) {
    case 'recipe':
      return recipeHover(desk, definition);
    case 'model':
      return modelHover(desk, definition);
    case 'build':
      return buildHover(desk, definition);
    default:
      return otherHover(desk, definition);
  }
}

function recipeHover({ workshop }: Desk, recipe: Definition): string {
  const name = recipe.name.text;
  return paragraphs(
    headline(recipe, workshop.wording),
    becauseOf(recipe),
    lineOf(workshop, name),
    changesOf(workshop, name),
    builtAs(workshop, name),
  );
}

function headline({ kind, name, relation }: Definition, { text }: Wording): string {
  const target = relation ? ` ${relation.word} ${plain(relation.target.text)}` : '';
  return `**${plain(name.text)}**: ${kind === 'strings' ? text('a set of strings') : kind}${target}`;
}

function becauseOf(recipe: Definition): string | undefined {
  const texts = recipe.statements.filter((statement) => statement.kind === 'because').map(({ text }) => text.text);
  return texts.length === 0 ? undefined : `“${plain(texts.join(' '))}”`;
}

const NAMES_SHOWN = 6;

function lineOf(workshop: Workshop, name: string): string | undefined {
  const { say } = workshop.wording;
  const { recipes, model, trouble } = workshop.lineage(name);
  const names = recipes.map((each) => plain(each.name.text));
  const shown =
    names.length <= NAMES_SHOWN
      ? names
      : [names[0]!, say`… ${names.length - NAMES_SHOWN + 1} more …`, ...names.slice(2 - NAMES_SHOWN)];
  if (trouble?.kind === 'ring') return say`Its parents lead back to itself: ${trouble.names.map(plain).join(' → ')}.`;
  if (names.length < 2) return model && say`The first of its line (model ${plain(model.name.text)}).`;
  const line = shown.join(' → ');
  return model ? say`Line: ${line} (model ${plain(model.name.text)}).` : say`Line: ${line}.`;
}

function changesOf(workshop: Workshop, name: string): string | undefined {
  const { say, text } = workshop.wording;
  const count = workshop.count(name);
  if (workshop.parentOf(name) === undefined) return undefined;
  const lines = count.variables.map(({ variable, verdict }) => {
    const does = inShort(variable.effects, 2, workshop.wording);
    const effect = does.length === 0 ? '' : say`; by itself: ${does.join(', ')}`;
    const written = variable.changes.length === 1 ? `: ${stepOf(variable.changes[0]!, workshop.wording)}` : '';
    const why = isCounted(verdict) ? '' : ` (${text(VERDICTS[verdict])})`;
    return `${plain(variable.label)}${written}${why}${effect}`;
  });
  const solved = workshop
    .instrument(name)!
    .solvedHolds.filter(({ outcome }) => outcome.kind === 'solved')
    .map(({ request }) => say`${plain(request.by)}: solved to hold ${plain(request.quantity)}`);
  const total =
    count.total === 0
      ? say`No changes counted.`
      : count.total === 1
        ? say`1 change counted.`
        : say`${count.total} changes counted.`;
  return `${total}\n\n${bullets([...lines, ...solved])}`.trim();
}

const VERDICTS: Readonly<Record<Verdict, string>> = {
  counted: english('counted'),
  promoted: english('counted, since its effect can be told'),
  substitution: english('a substitution, not counted'),
  held: english('solved, not counted'),
  'not-counted': english('not counted'),
  'no-change': english('changes nothing'),
};

function stepOf(change: Change, { text }: Wording): string {
  if (change.kind === 'add') return text('added');
  if (change.kind === 'drop') return text('dropped');
  const [before, after] = [change.before, change.after].map((held) =>
    held ? plain(writeValue(held.value)) : text('nothing'),
  );
  return `${before} → ${after}`;
}

function builtAs(workshop: Workshop, name: string): string {
  const { say } = workshop.wording;
  const builds = workshop.buildsOf(name).map((build) => plain(build.name.text));
  if (builds.length > 0) return say`Built as ${builds.join(', ')}.`;
  const last = workshop.lastBuiltAncestor(name);
  return last === undefined
    ? say`Not built yet.`
    : say`Not built yet; the last of its line that was is ${plain(last)}.`;
}

function modelHover(desk: Desk, model: Definition): string {
  const { recipes, builds } = familyOf(desk, model);
  return paragraphs(
    headline(model, desk.workshop.wording),
    statedIn(desk, model),
    `${recipesCounted(recipes, desk.workshop.wording)}, ${buildsCounted(builds, desk.workshop.wording)}.`,
  );
}

function buildHover(desk: Desk, definition: Definition): string {
  const { say, text } = desk.workshop.wording;
  const build = desk.workshop.build(definition.name.text);
  const departures = (build?.departures ?? [])
    .filter(({ meant, made }) => !agrees(made.value, meant.value))
    .map(
      ({ path, meant, made }) =>
        say`${plain(path)}: ${plain(writeValue(made.value))}, meant ${plain(writeValue(meant.value))}`,
    );
  const readings = (build?.readings ?? []).map((reading) => {
    const what = [...reading.values.values()].slice(0, 4).map((held) => `${held.path} ${writeValue(held.value)}`);
    const told = [what.join(', '), ...weighed(reading, desk)].join('; ');
    return `${plain(reading.name || text('measured'))}: ${plain(told)}`;
  });
  return paragraphs(
    headline(definition, desk.workshop.wording),
    departures.length > 0 ? `${say`Made otherwise than meant:`}\n\n${bullets(departures)}` : undefined,
    readings.length > 0 ? bullets(readings) : undefined,
  );
}

/** What two peaks and a known weight say together. */
function weighed(reading: Reading, { workshop: { wording } }: Desk): readonly string[] {
  const test = weightTestOf(reading);
  if (!test) return [];
  const { mass, stiffness, uncertainty } = test;
  const moving = writeQuantity(mass, DIMENSION.mass, { unit: 'g', uncertainty: mass * uncertainty });
  const spring = writeQuantity(stiffness, DIMENSION.stiffness, { unit: 'kN/m', uncertainty: stiffness * uncertainty });
  return [wording.say`by the weight on the bridge ${moving} seem to move there, on a spring of ${spring}`];
}

const VALUES_SHOWN = 8;

function otherHover(desk: Desk, definition: Definition): string {
  return paragraphs(headline(definition, desk.workshop.wording), statedIn(desk, definition));
}

function statedIn(desk: Desk, definition: Definition): string | undefined {
  const values = [...desk.workshop.stated(definition).values()];
  if (values.length === 0) return undefined;
  const lines = values.slice(0, VALUES_SHOWN).map(({ path, value }) => `${plain(path)}: ${plain(writeValue(value))}`);
  const more = values.length - lines.length;
  return bullets(more > 0 ? [...lines, desk.workshop.wording.say`and ${more} more`] : lines);
}
