/** The line above each recipe and model. */
import { describe, expect, it } from 'vitest';
import { lensesOf } from '../../language/editing/hints/lenses.js';
import { deskOf, VENNICK } from './desk-of.js';

const lenses = (text: string) => lensesOf(deskOf(text, VENNICK), 'file:0').map((lens) => lens.text);

describe('lenses', () => {
  it('say what a recipe changes, what that does, and how often it was built', () => {
    expect(
      lenses('recipe v-32 from v-31 { change bridge.mass: 27 g -> 22 g }\nbuild no-32 of v-32 { top.mass: 160 g }'),
    ).toEqual(['1 change · bridge moving mass −5 g · built as no-32']);
  });

  it('say at equal what a hold keeps', () => {
    const [text] = lenses(
      'recipe v-37 from v-31 { change top.wood: sitka-31 -> engelmann-37  hold top.stiffness.along by top.thickness }',
    );
    // m ∝ ρ·h: 372·2.96 over 421·2.80 is −6.6 %, of 154 g.
    expect(text).toMatch(/^1 change · top −10\.\d g at equal stiffness · .+ · not built$/);
  });

  it('call a substitution one', () => {
    const [text] = lenses(
      'recipe v-32 from v-31 { change top.wood: sitka-31 -> sitka-32  hold top.stiffness.along by top.thickness }',
    );
    expect(text).toBe('another set of the same wood · nothing that could be told apart · not built');
  });

  it('say how many changes were allowed when there are more', () => {
    const [text] = lenses(
      'recipe v-32 from v-31 { change bridge.mass: 27 g -> 22 g  change soundhole.diameter: 101 mm -> 95 mm }',
    );
    expect(text).toMatch(/^2 changes \(1 allowed\) · /);
  });

  it('tell like effects on several braces together', () => {
    const [text] = lenses(`recipe v-32 from v-31 { together "lower X" {
      change bracing.x-bass.height: 15.9 mm -> 14.9 mm
      change bracing.x-treble.height: 15.9 mm -> 14.9 mm
    } }`);
    // 1 − (14.9/15.9)³ = 17.7 %.
    expect(text).toMatch(/^1 change · x-bass and x-treble stiffness −18 % · /);
  });

  it('have nothing to compare on the first of a line, or on a model', () => {
    const desk = deskOf('recipe w-1 for w { }\nrecipe w-2 from w-1 { }\nbuild no-1 of w-2 { }\nmodel w { }');
    expect(lensesOf(desk, 'file:0')).toMatchObject([
      { text: 'first of its line · not built' },
      { text: 'no change counted · built as no-1', compare: ['w-1', 'w-2'] },
      { text: '2 recipes · 1 build' },
    ]);
    expect(lensesOf(desk, 'file:0').map(({ compare }) => compare)).toEqual([undefined, ['w-1', 'w-2'], undefined]);
  });

  it('lead from a model that was built to what each change did', () => {
    const desk = deskOf('recipe w-1 for w { }\nbuild no-1 of w-1 { }\nmodel w { }\nmodel v { }');
    expect(lensesOf(desk, 'file:0').map(({ effects }) => effects)).toEqual([undefined, 'w', undefined]);
  });

  it('offer the sheets of an order that can have some', () => {
    const desk = deskOf(
      'order c-7 of v-31 { client: "AB" }\norder c-8 of nothing { client: "AB" }\norder c-7 of v-31 { }',
      VENNICK,
    );
    expect(lensesOf(desk, 'file:0')).toMatchObject([{ sheets: 'c-7', range: { start: { line: 0 } } }]);
  });

  it('stand on the head, and only on the one in force of two of a name', () => {
    const desk = deskOf('\nrecipe w-1 for w { }\nrecipe w-1 for w { }\nmodel w { }');
    const ranges = lensesOf(desk, 'file:0').map(({ range }) => range.start.line);
    expect(ranges).toEqual([1, 3]);
  });

  it('have an answer for a ring', () => {
    expect(lenses('recipe a from b { }\nrecipe b from a { }')).toEqual([
      'first of its line · not built',
      'first of its line · not built',
    ]);
  });
});
