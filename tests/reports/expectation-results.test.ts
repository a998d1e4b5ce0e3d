/** `expect` lines as tests: passed, failed, not to be told yet, or wrong in themselves. */
import { describe, expect, it } from 'vitest';
import { expectationTests } from '../../language/reports/expectation-results.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

/** Outcome and message of each `expect` of a recipe after v-31. */
function testsOf(statements: string, others = ''): readonly (readonly [string, string])[] {
  const desk = deskOf(`${VENNICK}${others}`, `// second\nrecipe v-50 from v-31 {\n${statements}\n}\n`);
  return expectationTests(desk).flatMap(({ tests }) =>
    tests.map(({ outcome, message }) => [outcome, message] as const),
  );
}

describe('expectations as tests', () => {
  it('stand under their recipe, where they are written', () => {
    const desk = deskOf(VENNICK, '// second\nrecipe v-50 from v-31 {\n  expect top.mass: below 200 g\n}\n');
    const [recipe, ...others] = expectationTests(desk);
    expect(others).toEqual([]);
    expect(recipe).toMatchObject({ recipe: 'v-50', uri: 'file:1', range: { start: { line: 1, character: 7 } } });
    expect(recipe!.tests).toMatchObject([
      { label: 'top.mass: below 200 g', range: { start: { line: 2, character: 2 } } },
    ]);
  });

  it('pass with what it comes to', () => {
    expect(testsOf('expect top.mass: below 200 g')).toEqual([
      ['passed', expect.stringMatching(/^It comes to 1\d\d g\.$/)],
    ]);
  });

  it('fail with how far off it is', () => {
    const [[outcome, message] = []] = testsOf('expect top.mass: below 100 g');
    expect(outcome).toBe('failed');
    expect(message).toMatch(/top\.mass comes to 1\d\d.* g: .* above what is expected \(below 100 g\)/);
  });

  it('fail also where the finding has been accepted', () => {
    const accepted = 'expect top.mass: below 100 g\naccept expectation-missed because "It will be."';
    expect(testsOf(accepted)).toEqual([['failed', expect.stringMatching(/^It comes to 1\d\d g\.$/)]]);
  });

  it('are unknown where something is missing, and name it', () => {
    const [[outcome, message] = []] = testsOf('change top.wood: sitka-31 -> nowhere\nexpect top.mass: below 200 g');
    expect(outcome).toBe('unknown');
    expect(message).toContain('top.wood');
  });

  it('are faulty where the line cannot be tested', () => {
    expect(testsOf('expect top.loudness: below 3 g').map(([outcome]) => outcome)).toEqual(['faulty']);
    expect(testsOf('expect top.mass: below 200 mm').map(([outcome]) => outcome)).toEqual(['faulty']);
    expect(testsOf('expect top.mass: below 200').map(([outcome]) => outcome)).toEqual(['faulty']);
  });

  it('count once where two recipes have one name', () => {
    const twice = 'recipe v-50 from v-31 { expect top.mass: below 1 g }\n';
    expect(testsOf('expect top.mass: below 200 g', twice)).toHaveLength(1);
  });
});
