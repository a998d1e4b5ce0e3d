/** The dirty notebook: every entry gets a question or a warning that names the sensible readings; nothing is guessed. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openWorkshop } from '../../language/shop.js';
import { readFile } from '../../language/recipes/shelf/reader.js';

const folder = new URL('../../examples/hollin-reach/', import.meta.url);
const { parser, shelf, checks, workshop } = openWorkshop();
shelf.put(
  ...readdirSync(folder).map((name) => readFile(name, readFileSync(new URL(name, folder), 'utf8'), parser)),
);
const findings = checks.file('old-notebook.bookmatch');

function said(build: string): string {
  const of = findings.filter(({ place }) => 'definition' in place && place.definition.name.text === build);
  return of.map(({ message, fixes }) => [message, ...fixes.map(({ title }) => title)].join(' ')).join(' | ');
}

describe('the old notebook', () => {
  it.each([
    ['no-9', '.110 has no unit', '0.110 in = 2.79 mm'],
    ['no-9', '28 has no unit', '28 ft = 8.53 m'],
    ['no-9', 'F# is a note', '185.0 Hz'],
    ['no-9', 'F# is a note', '92.5 Hz'],
    ['no-10', '2.8 has no unit', '2.8 mm'],
    ['no-10', '45 has no unit', '45 %RH'],
    ['no-11', '110 has no unit', '110 thou = 2.79 mm'],
    ['no-11', '6/4 has no unit', '6/64 in = 2.38 mm'],
    ['no-12', '0.110 mm is below the usual', '0.110 in = 2.79 mm'],
    ['no-12', '6 has no unit', '6/64 in = 2.38 mm'],
    ['no-12', '4 has no unit', '4/64 in = 1.59 mm'],
    ['no-13', '5 mil is 0.127 mm', '0.127 mm'],
    ['no-14', 'year first', '2019-04-03'],
    ['no-14', 'year first', '2019-03-04'],
    ['no-14', 'In which rig', 'rig: r2'],
    ['no-14', '5 has no unit', '5 oz = 142 g'],
    ['no-15', 'Hygrometer A reads 12 %RH high', '33 %RH'],
    ['no-15', 'Hygrometer A reads 12 %RH high', '45 %RH ± 12 %RH'],
    ['no-15', '0.15 oz more than old-vennick says', '27 g'],
    ['no-15', '11 mm is above the usual', 'Is it meant?'],
  ])('asks about %s: %s … %s', (build, question, reading) => {
    expect(said(build)).toContain(question);
    expect(said(build)).toContain(reading);
  });

  it('takes none of the bare numbers for a value, and `unknown` for what it is', () => {
    expect(workshop.build('no-9')!.evaluation.number('top.thickness')).toBeUndefined();
    expect(workshop.build('no-11')!.evaluation.number('top.thickness')).toBeUndefined();
    expect(workshop.build('no-13')!.evaluation.number('top.thickness')).toBeUndefined();
    expect(said('no-13')).not.toContain('unknown');
  });
});
