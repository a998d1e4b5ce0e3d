/** Values of the wrong sort: text where a number belongs, a word that is not a choice, a note for a frequency. */
import { choiceCalled } from '../../catalogue/choice-words.js';
import type { Property } from '../../catalogue/property.js';
import { DIMENSION, sameDimension } from '../../quantities/dimension.js';
import { readNote } from '../../quantities/pitch.js';
import { didYouMean } from '../../quantities/suggest.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition, Value } from '../../facts/facts.js';
import { KINDS_OF_VALUE } from '../../recipes/shelf/mentions.js';
import type { Workshop } from '../../recipes/workshop.js';
import type { Written } from '../../recipes/instrument/written.js';
import { rangeFor } from '../amounts.js';
import type { Fix } from '../finding.js';
import { meantNames } from '../names/meant-names.js';
import { replace, textAt } from '../mending.js';
import { EVERY_KIND, type Rule } from '../rule.js';
import { english, sentences } from '../../wording/wording.js';
import { suggestion } from '../phrases.js';
import { fits } from '../sound-value.js';
import { asItsSort } from './other-sort.js';
import { saysNone } from '../../recipes/instrument/values.js';

export const WRONG_KIND_OF_VALUE: Rule = {
  code: 'wrong-kind-of-value',
  severity: 'error',
  title: 'A value of the wrong sort',
  reason:
    'A thickness is a number with a unit, a wood is a name, a rosette is described in words. Anything else cannot be used there.',
  bad: `model tarn { top.thickness: "about three" }`,
  good: `model tarn { top.thickness: 2.9 mm }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, text } = workshop.wording;
    for (const { written, property, canonical, value } of statedIn(definition, workshop)) {
      if (fits(value, property) || isNote(value, property) || isOddDate(value, property) || property.kind === 'choice')
        continue;
      report(
        value.span,
        sentences(say`${canonical} needs ${text(WANTED[property.kind])}.`, example(written, definition, workshop)),
        {
          fixes: mending(value, property, definition, workshop),
        },
      );
    }
  },
};

export const UNKNOWN_CHOICE: Rule = {
  code: 'unknown-choice',
  severity: 'error',
  title: 'A word that is not one of the choices',
  reason: 'Where the catalogue knows a list of words, it also knows what each of them does. Another word does nothing.',
  bad: `model tarn { bracing.x-bass.profile: parabola }`,
  good: `model tarn { bracing.x-bass.profile: parabolic }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, or } = workshop.wording;
    for (const { property, canonical, value } of statedIn(definition, workshop)) {
      if (property.kind !== 'choice' || fits(value, property)) continue;
      // `no-cutaway` is as plain as `none`.
      if (saysNone(value) && workshop.catalogue.partWithout(canonical) !== undefined) continue;
      const choices = property.choices ?? [];
      const word = value.kind === 'text' ? value.text : textAt(definition, value.span);
      const exact = choiceCalled(word, choices);
      const near = exact === undefined ? didYouMean(word, choices) : [exact];
      const begun = near.length > 0 ? near : choices.filter((choice) => sharedStart(choice, word) >= 4);
      const part = begun.length > 0 ? undefined : partBeside(word, canonical, definition, workshop);
      const hint =
        begun.length > 0
          ? suggestion(begun, workshop.wording)
          : part === undefined
            ? say`Choose ${or(choices)}.`
            : say`Write that beside it, as \`${`${part} { … }`}\`, and here ${or(choices)}.`;
      report(value.span, sentences(say`${word} is no choice for ${canonical}.`, hint), {
        fixes: (begun.length > 0 ? begun : choices.length <= 6 ? choices : []).map((choice, i) => ({
          title: say`Write ${choice}`,
          edits: [replace(definition, value.span, choice)],
          preferred: i === 0 && begun.length > 0,
        })),
      });
    }
  },
};

export const PITCH_AS_FREQUENCY: Rule = {
  code: 'pitch-as-frequency',
  severity: 'error',
  title: 'A note where a frequency belongs',
  reason:
    'A tap tone noted as F♯ may be one of several frequencies an octave apart, and a semitone wide. A number of hertz can be compared.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
build no-9 of tarn-1 { resonance.top: "F#+" }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
build no-9 of tarn-1 { resonance.top: 185 Hz }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, or } = workshop.wording;
    for (const { property, canonical, value } of statedIn(definition, workshop)) {
      if (!isNote(value, property)) continue;
      const written = noteText(value) ?? '';
      const reading = readNote(written);
      const notes = reading.ok ? [reading.note] : reading.code === 'missing-octave' ? reading.candidates : [];
      const options = notes.map(({ name, hz }) => `${hz.toFixed(1)} Hz (${name})`);
      const question = say`Is it ${or(options)}?`;
      report(value.span, sentences(say`${written} is a note; ${canonical} is a frequency.`, question), {
        fixes: notes.map(({ hz, name }) => ({
          title: say`Write ${hz.toFixed(1)} Hz (${name})`,
          edits: [replace(definition, value.span, `${hz.toFixed(1)} Hz`)],
        })),
      });
    }
  },
};

export const AMBIGUOUS_DATE: Rule = {
  code: 'ambiguous-date',
  severity: 'error',
  title: 'A date that can be read two ways',
  reason:
    'In some countries 3/4 is the third of April, in others the fourth of March. Written year first, a date means one day everywhere.',
  bad: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
build no-9 of tarn-1 { finished: "3/4/19" }`,
  good: `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { }
build no-9 of tarn-1 { finished: 2019-04-03 }`,
  of: EVERY_KIND,
  check(definition, workshop, report) {
    const { say, or } = workshop.wording;
    for (const { property, canonical, value } of statedIn(definition, workshop)) {
      if (!isOddDate(value, property)) continue;
      const dates = readingsOfDate(value.kind === 'text' ? value.text : '');
      report(value.span, say`${canonical}: which day is meant? Write it year first: ${or(dates)}.`, {
        fixes: dates.map((date) => ({ title: say`Write ${date}`, edits: [replace(definition, value.span, date)] })),
      });
    }
  },
};

interface Stated {
  readonly written: Written;
  readonly property: Property;
  readonly canonical: string;
  readonly value: Value;
}

function* statedIn(definition: Definition, workshop: Workshop): Iterable<Stated> {
  for (const written of workshop.written(definition)) {
    const { property, canonical, values, role } = written;
    if (!property || role !== 'value') continue;
    for (const { as, value } of values) {
      if (as !== 'step' && value.kind !== 'unreadable') yield { written, property, canonical, value };
    }
  }
}

const WANTED: Readonly<Record<Property['kind'], string>> = {
  quantity: english('a number with its unit'),
  count: english('a whole number'),
  ratio: english('a number'),
  size: english('a length, a width and a thickness'),
  point: english('a place: its station from the tail, then its offset'),
  text: english('words in double quotes'),
  choice: english('one of its choices'),
  date: english('a date'),
  list: english('one or more values with commas between them'),
  wood: english('the name of a wood'),
  species: english('the name of a species'),
  strings: english('the name of a set of strings'),
  rig: english('the name of a rig'),
  model: english('the name of a model'),
  part: english('the name of a part'),
};

function example(written: Written, definition: Definition, workshop: Workshop): string {
  const { say } = workshop.wording;
  const { kind, unit, dimension } = written.property ?? {};
  if (kind === 'quantity' && dimension) {
    const typical = rangeFor({ written }, definition, workshop)?.typical;
    const usual = typical === undefined ? `12 ${unit ?? 'mm'}` : writeQuantity(typical, dimension, { unit });
    return say`Write it like ${usual}.`;
  }
  if (kind === 'size') return say`Write it like ${'560 mm x 212 mm x 4.4 mm'}.`;
  if (kind === 'point') return say`Write it like ${'(78 mm, -150 mm)'}.`;
  return kind === 'date' ? say`Write it like ${'2026-03-14'}.` : '';
}

function mending(value: Value, property: Property, definition: Definition, workshop: Workshop): readonly Fix[] {
  const { say } = workshop.wording;
  const written = textAt(definition, value.span);
  const right = asItsSort(value, written, property);
  if (right !== undefined)
    return [{ title: say`Write ${right}`, edits: [replace(definition, value.span, right)], preferred: true }];
  const isName = ['wood', 'species', 'strings', 'rig', 'part'].includes(property.kind);
  if (value.kind === 'text' && (isName || property.kind === 'quantity') && /^[\w.]/.test(value.text)) {
    const bare = isName ? nameFor(value.text, property, definition, workshop) : value.text.trim();
    const isRight = isName || /^\d*\.?\d+\s*\D{1,4}$/.test(bare);
    if (isRight)
      return [
        { title: say`Write ${bare} without quotes`, edits: [replace(definition, value.span, bare)], preferred: true },
      ];
  }
  if (property.kind === 'text' && !written.includes('"')) {
    return [
      { title: say`Put it in quotes`, edits: [replace(definition, value.span, `"${written}"`)], preferred: true },
    ];
  }
  return [];
}

function nameFor(text: string, property: Property, definition: Definition, workshop: Workshop): string {
  const joined = text.trim().replace(/\s+/g, '-');
  const kinds = KINDS_OF_VALUE[property.kind];
  return (kinds && meantNames(joined, kinds, definition, workshop)[0]) ?? joined;
}

/** `scalloped`, where a brace has a scallop: the part beside this property that the word speaks of. */
function partBeside(
  word: string,
  canonical: string,
  { kind }: Definition,
  { catalogue }: Workshop,
): string | undefined {
  const { parts } = catalogue.children(canonical.slice(0, Math.max(canonical.lastIndexOf('.'), 0)), kind);
  const names = parts.map(({ path }) => path.slice(path.lastIndexOf('.') + 1));
  return names.find((name) => name !== '*' && word.toLowerCase().startsWith(name));
}

function noteText(value: Value): string | undefined {
  return value.kind === 'text' ? value.text.trim() : value.kind === 'name' ? value.name : undefined;
}

function isNote(value: Value, property: Property): boolean {
  if (property.kind !== 'quantity' || !property.dimension || !sameDimension(property.dimension, DIMENSION.frequency))
    return false;
  const text = noteText(value);
  if (text === undefined) return false;
  const reading = readNote(text);
  return reading.ok || reading.code === 'missing-octave';
}

function isOddDate(value: Value, property: Property): boolean {
  return property.kind === 'date' && value.kind === 'text' && readingsOfDate(value.text).length > 0;
}

/** `3/4/19`, `3.4.2019`: the days it may mean, day first before month first. Two figures of a year are of this century. */
function readingsOfDate(text: string): readonly string[] {
  const found = /^\s*(\d{1,2})[./-](\d{1,2})[./-](\d{2}|\d{4})\s*$/.exec(text);
  if (!found) return [];
  const [a, b, written] = [Number(found[1]), Number(found[2]), Number(found[3])];
  const year = written < 100 ? 2000 + written : written;
  const days = [calendarDay(year, b, a), calendarDay(year, a, b)];
  return [...new Set(days.filter((day) => day !== undefined))];
}

function calendarDay(year: number, month: number, day: number): string | undefined {
  const date = new Date(Date.UTC(year, month - 1, day));
  if (date.getUTCMonth() !== month - 1 || date.getUTCDate() !== day) return undefined;
  return date.toISOString().slice(0, 10);
}

function sharedStart(a: string, b: string): number {
  let i = 0;
  while (i < a.length && a[i] === b[i]) i++;
  return i;
}
