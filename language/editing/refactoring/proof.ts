/** The proof that a recipe written another way means the same: it is read as it would be, and the values are compared. */
import type { Edit } from '../../checks/finding.js';
import type { Definition } from '../../facts/facts.js';
import type { Held, Instrument } from '../../recipes/instrument/instrument.js';
import { type BookmatchParser, readFile } from '../../recipes/shelf/reader.js';
import { sameValue } from '../../recipes/instrument/values.js';

/** The definitions a text comes to once these edits of it are made, in its place; those of other definitions are left out. */
export function readAfter(
  definition: Definition,
  edits: readonly Edit[],
  parser: BookmatchParser,
): readonly Definition[] {
  return readFile('', textAfter(definition, edits), parser).definitions.map((entry) => entry.definition);
}

/** A definition's own text after edits of it. */
export function textAfter(definition: Definition, edits: readonly Edit[]): string {
  const text = ' '.repeat(definition.span.start.character) + definition.source;
  const starts = lineStarts(text);
  const offset = ({ line, character }: { line: number; character: number }) =>
    (starts[line] ?? text.length) + character;
  const own = edits
    .flatMap(({ place, text: by }) =>
      'definition' in place && place.definition === definition
        ? [{ from: offset(place.span.start), to: offset(place.span.end), by }]
        : [],
    )
    .sort((a, b) => a.from - b.from || a.to - b.to);
  let done = 0;
  let after = '';
  for (const { from, to, by } of own) {
    after += text.slice(done, from) + by;
    done = to;
  }
  return (after + text.slice(done)).slice(definition.span.start.character);
}

/** A path where two instruments differ, holds aside: what a hold solves is not compared, the holds are. */
export function firstDifference(a: Instrument, b: Instrument): string | undefined {
  const holds = ({ holds: all }: Instrument) => all.map(({ quantity, by }) => `${quantity} by ${by}`).sort();
  const [own, other] = [holds(a), holds(b)];
  const lone = own.find((hold, i) => hold !== other[i]) ?? other[own.length];
  if (lone !== undefined) return lone;
  const solved = new Set(a.holds.map(({ by }) => by));
  const paths = new Set([...a.values.keys(), ...b.values.keys()]);
  const value = (values: ReadonlyMap<string, Held>, path: string) => values.get(path)?.value;
  return [...paths].find((path) => !solved.has(path) && !sameValue(value(a.values, path), value(b.values, path)));
}

function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (const { index, 0: end } of text.matchAll(/\r\n|\n|\r/g)) starts.push(index + end.length);
  return starts;
}
