/** Instruments of the example shop laid side by side: what the table says, kept as files. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { comparisonTable, type ComparisonTable } from '../../language/reports/comparison/comparison-table.js';
import { deskOf } from '../editing/desk-of.js';

const FOLDER = 'examples/hollin-reach';
const { workshop } = deskOf(...readdirSync(FOLDER).map((name) => readFileSync(join(FOLDER, name), 'utf8')));
const table = (a: string, b: string) => comparisonTable(workshop, a, b)!;

/** The table as lines of text, without what takes the solver and what is the same in both. */
function inLines(shown: ComparisonTable): string {
  const cells = (...parts: readonly (string | undefined)[]) => parts.map((part) => part ?? '–').join(' | ');
  const moved = shown.derived.filter(({ verdict }) => verdict === 'distinct' || verdict === 'too-small');
  return [
    `${shown.a} beside ${shown.b}. ${shown.relation} ${shown.counted}.`,
    '',
    ...shown.changes.flatMap(({ title, standing, paths }) =>
      paths.map(({ name, a, b, difference, percent, word }) =>
        cells(title, name, a, b, difference, percent, word, standing),
      ),
    ),
    '',
    ...moved.flatMap(({ title, name, a, b, difference, percent, word, verdictInWords, contributions }) => [
      cells(title, name, a, b, difference, percent, word, verdictInWords),
      ...contributions.map(({ label, amount }) => `    ${label} ${amount}`),
    ]),
    '',
    ...shown.readings
      .filter(({ verdict }) => verdict !== 'pending')
      .map((row) =>
        cells(row.build, row.title, row.name, row.conditions, row.reading, row.prediction, row.verdictInWords),
      ),
    '',
    shown.evidence?.summary,
    ...(shown.evidence?.undeclared ?? []),
    ...(shown.evidence?.rows ?? []).map((row) =>
      cells(row.build, row.path, row.occasion, row.reading, row.mean, row.difference, row.word, row.verdictInWords),
    ),
    '',
  ].join('\n');
}

describe('side by side', () => {
  it.each([
    ['vennick-38', 'vennick-40'],
    ['no-33', 'no-38'],
    ['no-31', 'no-32'],
  ])('%s and %s', async (a, b) => {
    await expect(inLines(table(a, b))).toMatchFileSnapshot(`side-by-side/${a}-${b}.txt`);
  });

  it('counts both changes of the recipe that broke the rule, and says what is not counted', () => {
    const { counted, changes } = table('vennick-38', 'vennick-40');
    expect(counted).toBe('2 changes; 1 is allowed');
    expect(Object.fromEntries(changes.map(({ label, standing }) => [label, standing]))).toEqual({
      'bridge.mass': 'counted',
      'soundhole.diameter': 'counted',
      'top.thickness': 'solved by a hold, not counted',
      'top.wood': 'another set of the same wood, not counted',
    });
  });

  it('finds what the thinner top did to the pitch inside the scatter of three replicates', () => {
    const { evidence } = table('no-33', 'no-34');
    const top = evidence!.rows.find(({ path, occasion }) => path === 'resonance.top' && occasion === 'day-30')!;
    expect(top).toMatchObject({ difference: '+2 Hz', verdict: 'alike' });
    expect(top.scatterFrom).toContain('no-31, no-32 and no-33');
    expect(Math.abs(top.shares!.difference)).toBeLessThan(top.shares!.floor);
  });

  it('finds the new billet that nobody declared', () => {
    expect(table('no-33', 'no-38').evidence!.undeclared).toEqual([
      'bracing.wood is billet-4 in no-38 and billet-3 in no-33: no recipe declares it.',
    ]);
  });

  it('says that builds alike are the noise floor itself', () => {
    expect(table('no-31', 'no-32').evidence!.summary).toMatch(/replicates/);
  });
});
