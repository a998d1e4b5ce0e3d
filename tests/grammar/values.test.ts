import { expect, test } from 'vitest';
import { reader } from './facts-in-words.js';

const { says, problems } = reader();

test.each([
  ['2.85 mm', '0.00285 length'],
  ['2.85mm', '0.00285 length'],
  ['.110 in', '0.002794 length'],
  ['110 thou', '0.002794 length'],
  ['7/64"', '0.00277813 length'],
  ['1 3/4 in', '0.04445 length'],
  ['1-3/4 in', '0.04445 length'],
  ['1¾ in', '0.04445 length'],
  ['1 ½″', '0.0381 length'],
  ['5 in.', '0.127 length'],
  ["28'", '8.5344 length'],
  ['5 ft 3 in', '1.6002 length'],
  ['5\'3"', '1.6002 length'],
  ['12.5 lb', '5.6699 mass'],
  ['390 kg/m³', '390 density'],
  ['390 kg/m3', '390 density'],
  ['390 kg/m^3', '390 density'],
  ['11.2 GPa', '11200000000 pressure'],
  ['45 %RH', '0.45 relative humidity'],
  ['45 % RH', '0.45 relative humidity'],
  ['7 %MC', '0.07 moisture content'],
  ['186 Hz', '186 frequency'],
  ['20 °C', '293.15 temperature'],
  ['19.5 N·m', '19.5 torque'],
  ['19.5 N m', '19.5 torque'],
  ['5 %', '0.05'],
  ['9/10', '0.9'],
  ['-150 mm', '-0.15 length'],
  ['−150 mm', '-0.15 length'],
  ['–150 mm', '-0.15 length'],
  ['1e-3 m', '0.001 length'],
  ['2.85 mm ± 0.05 mm', '0.00285 length ± 0.00005'],
  ['2.85 mm +/- 0.05 mm', '0.00285 length ± 0.00005'],
  ['2.85 ± 0.05 mm', '0.00285 length ± 0.00005'],
  ['2.85 mm ± 0.05', '0.00285 length ± 0.00005'],
  ['2.85 mm ± 2 %', '0.00285 length ± 0.000057'],
  ['20 °C ± 2 °C', '293.15 temperature ± 2'],
  ['170..185 Hz', '170 frequency to 185 frequency'],
  ['170 Hz .. 185 Hz', '170 frequency to 185 frequency'],
  ['170…185 Hz', '170 frequency to 185 frequency'],
  ['below 190 g', 'below 0.19 mass'],
  ['above 2 deg', 'above 0.0349066 angle'],
  ['560 mm x 212 mm x 4.41 mm', '0.56 length x 0.212 length x 0.00441 length'],
  ['560 x 212 x 4.41 mm', '0.56 length x 0.212 length x 0.00441 length'],
  ['560x212 mm', '0.56 length x 0.212 length'],
  ['560 mm × 212 mm', '0.56 length x 0.212 length'],
  ['5/16"x3/4"', '0.0079375 length x 0.01905 length'],
  ['(78 mm, -150 mm)', '(0.078 length, -0.15 length)'],
  ['(78, -150 mm)', '(0.078 length, -0.15 length)'],
  ['"red stone band"', '"red stone band"'],
  ['"say \\"hello\\" \\\\ bye"', '"say "hello" \\ bye"'],
  ['“curly quotes”', '"curly quotes"'],
  ['""', '""'],
  ['quartersawn', 'quartersawn'],
  ['bridge.plate', 'bridge.plate'],
  ['12-string', '12-string'],
  ['strings.6', 'strings.6'],
  ['F#3', 'F#3'],
  ['2026-03-14', 'date 2026-03-14'],
  ['unknown', 'unknown!'],
  ['E4, B3, G3', '[E4, B3, G3]'],
  ['.012 in, .016 in', '[0.0003048 length, 0.0004064 length]'],
  ['12, 16, 24 thou', '[0.0003048 length, 0.0004064 length, 0.0006096 length]'],
  ['1,2,3', '[1, 2, 3]'],
  ['E4,\n  B3,\n  G3', '[E4, B3, G3]'],
  ['3', '3'],
])('%s', (text, told) => {
  expect(says(`p: ${text}`)).toEqual([`p = ${told}`]);
});

test('a word after a number is its unit unless it starts the next statement or joins', () => {
  expect(says('thickness: 7/64" width: 5/16"')).toEqual(['thickness = 0.00277813 length', 'width = 0.0079375 length']);
  expect(says('count: 6 width: 8 mm')).toEqual(['count = 6', 'width = 0.008 length']);
  expect(says('count: 6 lower-bout.width: 8 mm')).toEqual(['count = 6', 'lower-bout.width = 0.008 length']);
  expect(says('count: 6 waist { width: 8 mm }')).toEqual(['count = 6', 'waist { waist.width = 0.008 length }']);
  expect(says('count: 6 mm: 3')).toEqual(['count = 6', 'mm = 3']);
  expect(says('count: 6\nmm: 3')).toEqual(['count = 6', 'mm = 3']);
  expect(says('count: 6 because "x"')).toEqual(['count = 6', 'because "x"']);
  expect(says('width: 8 mm x-bass { height: 1 mm }')).toEqual([
    'width = 0.008 length',
    'x-bass { x-bass.height = 0.001 length }',
  ]);
});

test('what the quantity reports: written text and the place of its unit', () => {
  const [problem] = problems('p: 2.85 mmm');
  expect(problem).toMatchObject({
    code: 'unknown-unit',
    suggestions: ['mm'],
    span: { start: { line: 1, character: 8 }, end: { line: 1, character: 11 } },
  });
});

test.each([
  ['2.85 mmm', 'unknown-unit', 'mmm'],
  ['2.85 mmm ± 0.05 mm', 'unknown-unit', 'mmm'],
  ['170..185 hzz', 'unknown-unit', 'hzz'],
  ['560 x 212 x 4.41 mmm', 'unknown-unit', 'mmm'],
  ['2,85 mm', 'bad-number', '2,85'],
  ['1,200 mm', 'bad-number', '1,200'],
  ['7/0 in', 'bad-number', '7/0'],
  ['3 mm 4 mm', 'bad-number', '3 mm 4'],
  ['3 ft 4 g', 'bad-number', '3 ft 4 g'],
  ['170 -185 Hz', 'bad-number', '170 -185'],
  ['170-185 Hz', 'bad-number', '170-185'],
  ['170–185 Hz', 'bad-number', '170–185'],
  ['3 mm ± 2 g', 'bad-number', 'g'],
  ['2026-02-30', 'bad-date', '2026-02-30'],
  ['2026-3-14', 'bad-date', '2026-3-14'],
  ['14.3.2026', 'bad-date', '14.3.2026'],
  ['3/4/2026', 'bad-date', '3/4/2026'],
  ['3/4/19', 'bad-date', '3/4/19'],
])('%s is told off once, at the word at fault', (text, code, at) => {
  const found = problems(`before: 1 mm\np: ${text}\nafter: 1 mm`);
  expect(found).toHaveLength(1);
  const [{ span, code: foundCode }] = found as [(typeof found)[number]];
  expect(foundCode).toBe(code);
  expect(`p: ${text}`.slice(span.start.character, span.end.character)).toBe(at);
});

test('an ambiguous date offers both readings', () => {
  expect(problems('p: 3/4/2026')[0]?.suggestions).toEqual(['2026-04-03', '2026-03-04']);
});
