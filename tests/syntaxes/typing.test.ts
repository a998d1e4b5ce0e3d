import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

interface LanguageConfiguration {
  readonly wordPattern: string;
  readonly indentationRules: { readonly increaseIndentPattern: string; readonly decreaseIndentPattern: string };
}

const CONFIGURATION = JSON.parse(readFileSync('syntaxes/language-configuration.json', 'utf8')) as LanguageConfiguration;

describe('the line after is indented', () => {
  const increase = new RegExp(CONFIGURATION.indentationRules.increaseIndentPattern);
  test.each([
    ['recipe tarn-7 from tarn-6 {', true],
    ['  together "lighter X" {', true],
    ['  top { // the usual', true],
    ['  top { wood: sitka-118   thickness: 2.85 mm }', false],
    ['  because "a brace { in a text"', false],
    ['// recipe tarn-7 {', false],
    ['  thickness: 2.85 mm', false],
  ])('%s', (line, indented) => {
    expect(increase.test(line)).toBe(indented);
  });
});

test('a closing brace goes back out', () => {
  const decrease = new RegExp(CONFIGURATION.indentationRules.decreaseIndentPattern);
  expect(decrease.test('    }')).toBe(true);
  expect(decrease.test('    wood: sitka-118 }')).toBe(false);
});

test('hyphens and dots belong to a word, units and signs do not', () => {
  const words = 'change bracing.x-bass.height: 15 mm -> -.5 mm'.match(new RegExp(CONFIGURATION.wordPattern, 'g'));
  expect(words).toEqual(['change', 'bracing.x-bass.height', '15', 'mm', '-.5', 'mm']);
});
