import { expect, test } from 'vitest';
import type { Problem } from '../../language/facts/facts.js';
import { reader } from './facts-in-words.js';

const { file } = reader();

/** The one problem of a text, its lines counted from the file's first. */
function onlyProblem(text: string): Problem & { line: number } {
  const facts = file(text);
  const found = [
    ...facts.problems.map((problem) => ({ ...problem, line: 0 })),
    ...facts.definitions.flatMap(({ definition, line }) =>
      definition.problems.map((problem) => ({ ...problem, line })),
    ),
  ];
  expect(found).toHaveLength(1);
  return found[0]!;
}

function mended(text: string, { span, line }: Problem & { line: number }, suggestion: string): string {
  const lines = text.split('\n');
  const offset = (at: { line: number; character: number }): number =>
    lines.slice(0, line + at.line).reduce((sum, one) => sum + one.length + 1, 0) + at.character;
  return text.slice(0, offset(span.start)) + suggestion + text.slice(offset(span.end));
}

test.each([
  'height 15 mm',
  'height = 15 mm',
  'height: 15 mm;',
  'cut: quarter sawn',
  'lower bout: 390 mm',
  'lower bout { width: 390 mm }',
  'top: { thickness: 3 mm }',
  'air: 170–185 Hz',
  'wood: sitka—118',
  'air: 170-185 Hz',
  'thickness: 2,85 mm',
  'thickness: 1,200 mm',
  'thickness: 2.85 mmm',
  'thickness: 1 5/4 in',
  'finished: 14.3.2026',
  'finished: 3/4/2026',
  'finished: 3/4/19',
  'finished: 2026-3-14',
  'note "abc',
  'top { note "abc }',
  '/* so far',
])('each suggestion mends the line: %s', (line) => {
  const text = `recipe a from b {\n  before: 1 mm\n  ${line}\n  after: 1 mm\n}`;
  const problem = onlyProblem(text);
  expect(problem.suggestions.length).toBeGreaterThan(0);
  for (const suggestion of problem.suggestions) {
    const facts = file(mended(text, problem, suggestion));
    expect([...facts.problems, ...facts.definitions[0]!.definition.problems], suggestion).toEqual([]);
  }
});

test.each([
  'recpie a from b { }',
  'recipe tarn 8 from a { }',
  'recipe c.d from a { }',
  'recipe "c d" from a { }',
  'recipe c of a { }',
  'rig r of a { }',
  'recipe c from a { } }',
])('each suggestion mends the head: %s', (text) => {
  const problem = onlyProblem(text);
  for (const suggestion of problem.suggestions) {
    const facts = file(mended(text, problem, suggestion));
    expect([...facts.problems, ...facts.definitions.flatMap(({ definition }) => definition.problems)]).toEqual([]);
    expect(facts.definitions).toHaveLength(1);
  }
});
