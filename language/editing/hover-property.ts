/** Hover on a property: its value in both systems, where it comes from, what is plausible, what it moves. */
import type { Freeze, Property, VariableClass } from '../catalogue/property.js';
import { cautionsOnValue } from '../catalogue/cautions.js';
import { shown, shownDifference, writeValue } from '../checks/phrases.js';
import { writeBoth, writeQuantity } from '../quantities/write.js';
import type { DefinitionKind, Value } from '../recipes/facts.js';
import type { Held } from '../recipes/instrument.js';
import { cautionLines } from './hover-cautions.js';
import type { Desk } from './desk.js';
import { shareOf } from './figures.js';
import { bullets, code, paragraphs, plain, table } from './markdown.js';
import { canBeTold, isWorthSaying, movesOf } from './moves.js';
import { sensibleStep } from './sensible-step.js';
import { type Subject, tagsAt } from './subject.js';

/** `said`: a value written at the place itself that is not in force, such as one read on a day or asked for by a client. */
export function propertyHover(desk: Desk, subject: Subject, path: string, property: Property, said?: Value): string {
  const held = subject.values.get(path);
  const value = said ?? held?.value;
  const name = `**${plain(path)}**`;
  const headline = value ? `${name} = ${inBoth(value)}` : `${name}: nothing is said of it along the line`;
  return paragraphs(
    headline,
    property.sentence,
    bullets(
      [
        held &&
          (said === undefined
            ? origin(held, subject)
            : `${plain(held.from.definition.name.text)} has ${plain(writeValue(held.value))}.`),
        computedBeside(subject, path, held),
        plausibleLine(desk, subject, path, property),
        property.choices && `One of ${property.choices.map(code).join(', ')}.`,
        countingLine(property.class),
        property.freeze && freezeLine(property.freeze),
      ].filter((line) => line !== undefined),
    ),
    held && said === undefined ? movesTable(subject, path, property, held) : undefined,
    value && cautionLines(cautionsOnValue(path, writeValue(value))),
  );
}

/** A value as written, and in the units of the other system. */
export function inBoth(value: Value): string {
  const written = plain(writeValue(value));
  if (value.kind !== 'quantity' || !value.quantity.unit) return written;
  const { si, dimension, unit } = value.quantity;
  const other = /\(.*\)$/.exec(writeBoth(si, dimension, unit))?.[0];
  return other === undefined ? written : `${written} ${other}`;
}

const STEPS_SHOWN = 4;

function origin(held: Held, subject: Subject): string {
  const owner = held.from.definition.name.text;
  const isHere = held.from.definition === subject.definition;
  const where = isHere ? 'here' : `in ${plain(owner)}`;
  const steps: string[] = [];
  for (let before = held.before; before && steps.length < STEPS_SHOWN; before = before.before) {
    // A hold starts from the recipe's own value; the parent's own line says it once.
    steps.push(`${plain(writeValue(before.value))} in ${plain(before.from.definition.name.text)}`);
  }
  const was = steps.length === 0 ? '' : `; was ${steps.join(', before that ')}`;
  return `${ORIGIN[held.via]} ${where}${was}.`;
}

const ORIGIN: Readonly<Record<Held['via'], string>> = {
  stated: 'Set',
  changed: 'Changed',
  added: 'Added',
  package: 'Brought by a package of appointments,',
  solved: 'Solved by a hold',
  built: 'As made, written',
};

/** Something weighed or stated that could also be computed: both are of interest. */
function computedBeside({ evaluation, definition }: Subject, path: string, held: Held | undefined): string | undefined {
  if (!evaluation) return undefined;
  const derived = evaluation.derived(path);
  if (!derived?.known || derived.given) return undefined;
  const text = shown(derived.si, derived.quantity, evaluation.uncertainty(path));
  return held || definition.kind === 'build' ? `Computed: ${text}.` : `Not stated; computed: ${text}.`;
}

function plausibleLine(desk: Desk, subject: Subject, path: string, property: Property): string | undefined {
  const tags = tagsAt(desk, subject, path);
  const range = desk.workshop.catalogue.plausibleRange(path, tags, property.where[0]);
  if (!range || !property.dimension) return undefined;
  const { dimension } = property;
  const write = (si: number) => writeQuantity(si, dimension, { unit: property.unit });
  const of = range.of === undefined ? '' : ` for ${plain(range.of.split(' ').join(', '))}`;
  const note = range.note === undefined ? '' : `; ${range.note}`;
  return `Plausible${of}: ${write(range.low)} to ${write(range.high)}, typically ${write(range.typical)} (${plain(range.source + note)}).`;
}

function countingLine(kind: VariableClass): string | undefined {
  return CLASSES[kind];
}

const CLASSES: Readonly<Record<VariableClass, string | undefined>> = {
  voicing: 'Voicing: a change of it is counted.',
  body: 'Body: a change of it is counted.',
  setup: 'Setup: not counted, unless it moves the voice by more than the shop could overlook.',
  option: 'An option: not counted, unless it moves the voice by more than the shop could overlook.',
  appointment: 'An appointment: not counted, unless it moves the voice by more than the shop could overlook.',
  record: undefined,
};

function freezeLine({ costly, impossible, easier }: Freeze): string | undefined {
  const parts: string[] = [];
  if (costly) parts.push(`re-work after ${stage(costly)}`);
  if (impossible) parts.push(`no longer possible after ${stage(impossible)}`);
  const until = easier?.costly ?? easier?.impossible;
  if (easier && until) parts.push(`${easier.way} without re-work until ${stage(until)}`);
  return parts.length === 0 ? undefined : `A change means ${parts.join('; ')}.`;
}

function stage(name: string): string {
  return name.replace(/-/g, ' ');
}

const MOVES_SHOWN = 5;

function movesTable(subject: Subject, path: string, property: Property, held: Held): string | undefined {
  const { evaluation } = subject;
  if (!evaluation || held.value.kind !== 'quantity' || !property.dimension) return undefined;
  const { quantity } = held.value;
  const step = quantity.unit && sensibleStep(property, quantity.si);
  const moves = step ? movesOf(path, step.si, evaluation).filter(isWorthSaying) : [];
  if (!step || moves.length === 0) return undefined;
  const size = writeQuantity(Math.abs(step.si), property.dimension, { unit: quantity.unit, difference: true });
  const rows = moves.slice(0, MOVES_SHOWN).map((move) => {
    const share = move.value === 0 ? '' : ` (${shareOf(move.difference / move.value)})`;
    const told = canBeTold(move) || isRecord(subject.definition.kind) ? '' : ', too small to tell';
    const threshold = move.discernible === 0 ? 'not said' : shown(move.discernible, move.quantity);
    return [plain(move.path), `${shownDifference(move.difference, move.quantity)}${share}`, threshold + told];
  });
  // Nothing made twice is compared in a wood set: there it is how well each figure is known that matters.
  const beside = isRecord(subject.definition.kind) ? 'known to within' : 'told apart above';
  return table([`${size.replace(/^\+/, '')} ${step.word} moves`, 'by about', beside], rows);
}

function isRecord(kind: DefinitionKind): boolean {
  return kind === 'wood' || kind === 'species' || kind === 'strings';
}
