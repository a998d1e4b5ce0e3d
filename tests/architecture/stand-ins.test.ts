/** The rule that keeps numbers from standing in for what a recipe does not say, held against what it must and must not catch. */
import { Linter } from 'eslint';
import tseslint from 'typescript-eslint';
import { expect, test } from 'vitest';
import standIns from '../../eslint-stand-ins.mjs';

const linter = new Linter();

function caught(line: string): number {
  const config = {
    files: ['**/*.ts'],
    languageOptions: { parser: tseslint.parser },
    plugins: { 'stand-ins': standIns },
    rules: { 'stand-ins/unknown': 'error' },
  } satisfies Linter.Config;
  const found = linter.verify(line, [config], { filename: 'a.ts' });
  expect(found.filter(({ fatal }) => fatal)).toEqual([]);
  return found.length;
}

test.each([
  `const angle = ask.numberIf('neck.angle') ?? 0;`,
  `const width = laid.number('width') || -1;`,
  `const band = mmOf(ask.numberIf('top.edge-width') ?? USUAL_BAND);`,
  `const top = long - (inMmIf(ask, 'sides.thickness') ?? 0);`,
  `const fret = Math.round(ask.numberIf('frets.count') ?? 14);`,
  `const asked = ask.numberIf('neck.angle'); const angle = asked ?? 0;`,
  `const angle = (ask.numberIf('a') ?? ask.numberIf('b')) ?? 0.5;`,
  `const si = evaluation.derived('top.mass')?.si ?? 0;`,
  `const kelvin = scope.get('temperature')?.value.quantity.si ?? 293.15;`,
  `const asked = ask.numberIf('neck.angle'); const angle = asked === undefined ? 0 : asked;`,
  `const [a] = [ask.numberIf('a') ?? 1 / 2];`,
])('caught: %s', (line) => {
  expect(caught(line)).toBe(1);
});

test.each([
  `const angle = taken(ask, 'neck.angle');`,
  `const rim = ask.numberIf('soundhole.edge-thickness') ?? ask.number('top.thickness');`,
  `const place = ask.numberIf('scallop.at') ?? length / 4;`,
  `const count = counts.get(word) ?? 0;`,
  `const step = Math.abs(input.si) * 1e-4 || 1e-9;`,
  `const scale = Math.max(Math.abs(target), Math.abs(present.si)) || 1;`,
  `const tolerance = value.quantity.tolerance ?? 0;`,
])('let through: %s', (line) => {
  expect(caught(line)).toBe(0);
});
