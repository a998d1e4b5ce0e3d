/** Hover on a property: its value in both systems, what is usual, what moving it does, then where it comes from. */
import type { Freeze, PlausibleRange, Property, VariableClass } from '../../catalogue/property.js';
import { cautionsOnValue } from '../../catalogue/cautions.js';
import { shown, shownDifference, writeValue } from '../../checks/phrases.js';
import { writeBoth, writeQuantity } from '../../quantities/write.js';
import { tapAsWritten } from '../../facts/plate-mode.js';
import type { DefinitionKind, Value } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { cautionLines } from './hover-cautions.js';
import type { Desk } from '../../checks/desk.js';
import { shareOf } from '../../reports/figures.js';
import { bullets, code, paragraphs, plain, table } from '../markdown.js';
import { canBeTold, isWorthSaying, movesOf } from './moves.js';
import { stringsHover } from './hover-strings.js';
import { sensibleStep } from './sensible-step.js';
import { type Subject, tagsAt } from '../../reports/subject.js';
import { sourceNumbers, sourcesLine } from './hover-sources.js';
import { english, type Wording } from '../../wording/wording.js';

/** `said`: a value written at the place itself that is not in force, such as one read on a day or asked for by a client. */
export function propertyHover(desk: Desk, subject: Subject, path: string, property: Property, said?: Value): string {
  const { wording } = desk.workshop;
  const { say, text } = wording;
  const held = subject.values.get(path);
  const value = said ?? held?.value;
  const name = `**${plain(tapAsWritten(path))}**`;
  const headline = value ? `${name} = ${inBoth(value)}` : say`${name}: nothing is said of it along the line`;
  const range = rangeOf(desk, subject, path, property);
  return paragraphs(
    headline,
    text(property.sentence),
    range && usualLine(range, property, wording),
    held && said === undefined ? movesTable(subject, path, property, held, wording) : undefined,
    bullets(
      [
        held &&
          (said === undefined
            ? origin(held, subject, wording)
            : say`${plain(held.from.definition.name.text)} has ${plain(writeValue(held.value))}.`),
        computedBeside(subject, path, held, wording),
        property.choices && say`One of ${property.choices.map(code).join(', ')}.`,
        countingLine(property.class, wording),
        property.freeze && freezeLine(property.freeze, wording),
      ].filter((line) => line !== undefined),
    ),
    path === 'strings' ? stringsHover(subject, wording) : undefined,
    value && cautionLines(cautionsOnValue(path, writeValue(value)), wording),
    range && sourcesLine(range.source, wording),
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

function origin(held: Held, subject: Subject, wording: Wording): string {
  const { say, text } = wording;
  const owner = plain(held.from.definition.name.text);
  const where = held.from.definition === subject.definition ? text(HERE[held.via]) : inOwner(held, owner, wording);
  const steps: string[] = [];
  for (let before = held.before; before && steps.length < STEPS_SHOWN; before = before.before) {
    // A hold starts from the recipe's own value; the parent's own line says it once.
    steps.push(say`${plain(writeValue(before.value))} in ${plain(before.from.definition.name.text)}`);
  }
  return steps.length === 0 ? `${where}.` : say`${where}; was ${steps.join(text(', before that '))}.`;
}

function inOwner({ via }: Held, owner: string, { say }: Wording): string {
  switch (via) {
    case 'stated':
      return say`Set in ${owner}`;
    case 'changed':
      return say`Changed in ${owner}`;
    case 'added':
      return say`Added in ${owner}`;
    case 'package':
      return say`Brought by a package of appointments, in ${owner}`;
    case 'solved':
      return say`Solved by a hold in ${owner}`;
    case 'built':
      return say`As made, written in ${owner}`;
  }
}

const HERE: Readonly<Record<Held['via'], string>> = {
  stated: english('Set here'),
  changed: english('Changed here'),
  added: english('Added here'),
  package: english('Brought by a package of appointments, here'),
  solved: english('Solved by a hold here'),
  built: english('As made, written here'),
};

/** Something weighed or stated that could also be computed: both are of interest. */
function computedBeside(
  { evaluation, definition }: Subject,
  path: string,
  held: Held | undefined,
  { say }: Wording,
): string | undefined {
  if (!evaluation) return undefined;
  const derived = evaluation.derived(path);
  if (!derived?.known || derived.given) return undefined;
  const text = shown(derived.si, derived.quantity, evaluation.uncertainty(path));
  return held || definition.kind === 'build' ? say`Computed: ${text}.` : say`Not stated; computed: ${text}.`;
}

function rangeOf(desk: Desk, subject: Subject, path: string, property: Property): PlausibleRange | undefined {
  const tags = tagsAt(desk, subject, path);
  return property.dimension && desk.workshop.catalogue.plausibleRange(path, tags, property.where[0]);
}

/** In one line; the sources, by number, stand at the foot. */
function usualLine(range: PlausibleRange, { dimension, unit }: Property, { say, text }: Wording): string | undefined {
  if (!dimension) return undefined;
  const write = (si: number) => writeQuantity(si, dimension, { unit });
  const [low, high, typical] = [write(range.low), write(range.high), write(range.typical)];
  const of = range.of === undefined ? '' : plain(range.of.split(' ').join(', '));
  const usual =
    of === ''
      ? say`Usually ${low} to ${high}, typically ${typical}`
      : say`Usually, for ${of}: ${low} to ${high}, typically ${typical}`;
  const note = range.note === undefined ? '' : ` (${plain(text(range.note))})`;
  return `${usual}${note} ${sourceNumbers(range.source)}`;
}

function countingLine(kind: VariableClass, { text }: Wording): string | undefined {
  const line = CLASSES[kind];
  return line && text(line);
}

const CLASSES: Readonly<Record<VariableClass, string | undefined>> = {
  voicing: english('Voicing: a change of it is counted.'),
  body: english('Body: a change of it is counted.'),
  setup: english('Setup: not counted, unless it moves the voice by more than the shop could overlook.'),
  option: english('An option: not counted, unless it moves the voice by more than the shop could overlook.'),
  appointment: english('An appointment: not counted, unless it moves the voice by more than the shop could overlook.'),
  record: undefined,
};

function freezeLine({ costly, impossible, easier }: Freeze, { say, text }: Wording): string | undefined {
  const stage = (name: string) => text(name.replace(/-/g, ' '));
  const parts: string[] = [];
  if (costly) parts.push(say`re-work after ${stage(costly)}`);
  if (impossible) parts.push(say`no longer possible after ${stage(impossible)}`);
  const until = easier?.costly ?? easier?.impossible;
  if (easier && until) {
    parts.push(
      easier.way === 'smaller'
        ? say`smaller without re-work until ${stage(until)}`
        : say`larger without re-work until ${stage(until)}`,
    );
  }
  return parts.length === 0 ? undefined : say`A change means ${parts.join('; ')}.`;
}

const MOVES_SHOWN = 5;

function movesTable(
  subject: Subject,
  path: string,
  property: Property,
  held: Held,
  wording: Wording,
): string | undefined {
  const { say, text } = wording;
  const { evaluation } = subject;
  if (!evaluation || held.value.kind !== 'quantity' || !property.dimension) return undefined;
  const { quantity } = held.value;
  const step = quantity.unit && sensibleStep(property, quantity.si);
  const moves = step ? movesOf(path, step.si, evaluation).filter(isWorthSaying) : [];
  if (!step || moves.length === 0) return undefined;
  const size = writeQuantity(Math.abs(step.si), property.dimension, { unit: quantity.unit, difference: true });
  const rows = moves.slice(0, MOVES_SHOWN).map((move) => {
    const share = move.value === 0 ? '' : ` (${shareOf(move.difference / move.value, wording)})`;
    const known = move.discernible === 0 ? text('not said') : shown(move.discernible, move.quantity);
    const threshold = canBeTold(move) || isRecord(subject.definition.kind) ? known : say`${known}, too small to tell`;
    return [plain(move.path), `${shownDifference(move.difference, move.quantity)}${share}`, threshold];
  });
  // Nothing made twice is compared in a wood set: there it is how well each figure is known that matters.
  const beside = isRecord(subject.definition.kind) ? text('known to within') : text('told apart above');
  const amount = size.replace(/^\+/, '');
  const head = step.word === 'less' ? say`${amount} less moves` : say`${amount} more moves`;
  return table([head, text('by about'), beside], rows);
}

function isRecord(kind: DefinitionKind): boolean {
  return kind === 'wood' || kind === 'species' || kind === 'strings';
}
