/** Whatever is on the page while somebody types, the rules give findings, not exceptions, and no half-made numbers. */
import { expect, it } from 'vitest';
import { rulePages } from '../../language/checks/manual.js';
import { check } from './marked-text.js';

const NONSENSE = /NaN|undefined|Infinity|\[object/;

it.each(rulePages().filter(({ bad }) => bad !== ''))('$code: its text cut off anywhere', ({ bad }) => {
  const step = Math.max(1, Math.floor(bad.length / 9));
  for (let length = 1; length < bad.length; length += step) {
    for (const { message, fixes } of check(bad.slice(0, length)).findings) {
      expect(message).not.toMatch(NONSENSE);
      for (const { edits } of fixes) for (const { text } of edits) expect(text).not.toMatch(NONSENSE);
    }
  }
});

it.each(rulePages().filter(({ bad }) => bad !== ''))('$code: its text with a line taken out', ({ bad }) => {
  const lines = bad.split('\n');
  for (let i = 0; i < lines.length; i++) {
    for (const { message } of check(lines.filter((_, at) => at !== i).join('\n')).findings)
      expect(message).not.toMatch(NONSENSE);
  }
});

it.each([
  '0 mm',
  '-1 mm',
  '1e300 mm',
  '0',
  '"x"',
  'unknown',
  'below 3 mm',
  '1 mm x 2 mm',
  '(1 mm, 2 mm)',
  '2026-01-01',
  'a, b',
])('takes %s wherever a value can stand', (value) => {
  const paths = [
    'top.thickness',
    'top.wood',
    'body.length',
    'soundhole.diameter',
    'bracing.x-bass.from',
    'bracing.x-bass.height',
    'strings',
    'scale',
    'bridge.mass',
    'form',
  ];
  const text = `model tarn { ${paths.map((path) => `${path}: ${value}`).join('\n')} }
recipe tarn-1 for tarn {
  ${paths.map((path) => `change ${path}: ${value} -> ${value}`).join('\n')}
  hold top.mass at ${value} by top.thickness
  expect top.mass: ${value}
}
build no-1 of tarn-1 { ${paths.map((path) => `${path}: ${value}`).join('\n')}  reading day-1 { resonance.top: ${value}  humidity: ${value} } }
wood w-1 is sitka-spruce { blank: ${value}\nmass: ${value}\ntap.along: ${value}\nhumidity: ${value}\nmoisture: ${value} }`;
  for (const { message } of check(text).findings) expect(message).not.toMatch(NONSENSE);
});
