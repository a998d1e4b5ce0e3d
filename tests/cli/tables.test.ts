/** Tables for a spreadsheet, out and in. */
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { createParser } from '../../language/grammar/parse.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { forCsv } from '../../language/cli/border.js';
import { bookmatch } from './terminal.js';

const SHOP = `model corrie { scale: 645 mm  bridge.mass: 27 g }
recipe corrie-1 for corrie { because "First."  top.thickness: 2.8 mm }
recipe corrie-2 from corrie-1 { because "Lighter."  change bridge.mass: 27 g -> 22 g }
${[183, 181, 182].map((hz, i) => `build no-${i + 1} of corrie-1 { reading day-1 { resonance.top: ${hz} Hz } }`).join('\n')}
build no-4 of corrie-2 { reading day-1 { resonance.top: 190 Hz } }`;
const read = (csv: string) => bookmatch({ 'line.bookmatch': SHOP, 'old.csv': csv }, 'readings', 'old.csv');

describe('effects as a table', () => {
  it('has a row for each effect and a number for each end, as any reader of tables has it (RFC 4180)', async () => {
    const { out, code } = await bookmatch(
      { 'line.bookmatch': SHOP },
      'effects',
      '--model',
      'corrie',
      '--format',
      'csv',
    );
    expect(code).toBe(0);
    const [row] = parse<Record<string, string>>(out, { columns: true });
    expect(row).toMatchObject({ reading: 'resonance.top', unit: 'Hz', change: 'bridge.mass 22 g', verdict: 'builds' });
    expect(Number(row!['builds'])).toBeCloseTo(8, 0);
  });

  it('is made of a model only', async () => {
    expect((await bookmatch({ 'line.bookmatch': SHOP }, 'effects', '--format', 'csv')).code).toBe(2);
  });

  it('holds no formula, whatever a maker wrote', () => {
    const rows = [['=HYPERLINK("x")', '+1', '-2', '@a', 'a,"b"', 'a\nb', -2.5]];
    const [back] = parse(forCsv(rows));
    for (const field of back!.slice(0, 4)) expect(field).toMatch(/^'/);
    expect(back![4]).toBe('a,"b"');
    expect(back![6]).toBe('-2.5');
  });
});

describe('old readings', () => {
  it('become builds that read without a problem', async () => {
    const { out, err, code } = await read(
      'Build,Recipe,Occasion,Date,Stage,resonance.top (Hz),Air [Hz],mass.finished\r\n' +
        'No 7,corrie-1,day 1,2019-05-02,strung,183,97,1820 g\r\nNo 7,corrie-1,day 30,2019-06-01,strung,179,,\r\n',
    );
    expect(err).toBe('');
    expect(code).toBe(0);
    const facts = readFile('old', out, createParser());
    expect([...facts.problems, ...facts.definitions.flatMap(({ definition }) => definition.problems)]).toEqual([]);
    expect(out).toContain('build No-7 of corrie-1 {');
    expect(out).toContain(
      'reading day-1 { date: 2019-05-02  stage: strung  resonance.top: 183 Hz  resonance.air: 97 Hz  mass.finished: 1820 g }',
    );
    expect(out).toContain('reading day-30 { date: 2019-06-01  stage: strung  resonance.top: 179 Hz }');
  });

  it('are asked about where they are unclear, and not guessed', async () => {
    const { out, err, code } = await read(
      'build;recipe;resonance.top;date;mood\nno-8;corrie-9;183;03/04/2021;good\nno-8;corrie-1;17,5 Hz;;\n;corrie-1;180 Hz;;\n',
    );
    expect(code).toBe(1);
    for (const part of ['In which unit is resonance.top?', 'Which day is 03/04/2021', 'What is the column mood?', 'There is no recipe corrie-9', 'Row 4 names no instrument', 'What is 17,5 Hz']) expect(err).toContain(part); // prettier-ignore
    expect(out).not.toMatch(/183|17|good/);
  });

  it('that are no table are refused without a fault', async () => {
    for (const csv of ['', '"', 'a\n"b', '\u0000']) expect([0, 1, 2]).toContain((await read(csv)).code);
    expect((await bookmatch({ 'line.bookmatch': SHOP }, 'readings', 'none.csv')).code).toBe(2);
  });
});
