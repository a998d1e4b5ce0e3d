/** What a sheet can be made of, wherever it stands. */
import { describe, expect, it } from 'vitest';
import { printablesOf } from '../../language/reports/printables.js';
import { SHEET_KINDS } from '../../language/sheets/sheet.js';
import { sheetOf } from '../../language/sheets/sheets.js';
import { deskOf } from '../editing/desk-of.js';

const desk = deskOf(
  `model w { form: om }
recipe w-1 for w { }
build no-1 of w-1 { }`,
  `order c-1 of w-1 { client: "AB" }
order c-2 of no-1 { client: "CD" }
order c-3 of nobody { client: "EF" }
order w-1 of w-1 { client: "GH" }
order c-1 of no-1 { client: "IJ" }
wood sitka-1 is sitka-spruce { use: top }`,
);

describe('a sheet can be made', () => {
  const found = printablesOf(desk);

  it('of recipes, builds, and orders for one of them, each with what it is of', () => {
    expect(found.map(({ kind, name, parent }) => `${kind} ${name}, ${parent}`)).toEqual([
      'recipe w-1, w',
      'build no-1, w-1',
      'order c-1, w-1',
      'order c-2, no-1',
    ]);
  });

  it('of whatever is listed, every kind of it', () => {
    for (const { name } of found) {
      for (const kind of SHEET_KINDS) expect(sheetOf(desk.workshop, name, kind), `${kind} of ${name}`).toBeDefined();
    }
  });

  it('from where it is written', () => {
    expect(found.at(-1)).toMatchObject({ uri: 'file:1', range: { start: { line: 1 }, end: { line: 1 } } });
  });
});
