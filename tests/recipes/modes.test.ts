/** What takes the solver, from the text of a recipe on. */
import { describe, expect, it } from 'vitest';
import { lensesOf } from '../../language/editing/lenses.js';
import type { PlateTask } from '../../language/recipes/analyst.js';
import { concretePaths } from '../../language/recipes/effects.js';
import { bracedShop, OWN } from './braced-shop.js';

describe('a plate', () => {
  it('is made once for everything that comes of it, and for every recipe that has the same', () => {
    const asked: PlateTask[] = [];
    const { workshop } = bracedShop(`recipe v-2 from v-1 { title: "The same."  finish.film: 0.1 mm }`, () => ({
      analysis: (task) => void asked.push(task),
    }));
    for (const name of ['v-1', 'v-2']) {
      const evaluation = workshop.inFull(name)!;
      for (const path of concretePaths(evaluation.derivations.all, evaluation)) evaluation.derived(path);
    }
    expect(asked.length).toBeGreaterThan(20);
    expect(new Set(asked).size).toBe(2);
    expect(new Set(asked.map(({ key }) => key)).size).toBe(2);
  });

  it('is not asked for by findings', () => {
    let asked = 0;
    const { checks } = bracedShop(`recipe v-2 from v-1 { change top.thickness: by -0.1 mm }`, () => ({
      analysis: () => {
        asked++;
        return undefined;
      },
    }));
    checks.file(OWN);
    expect(asked).toBe(0);
  });
});

describe('what a person looks at', () => {
  it('has its resonances: the lens of a recipe says what its changes do to them', () => {
    const { shelf, workshop, checks } = bracedShop(
      `recipe v-2 from v-1 { because "Higher X."
        change bracing.x-bass.height: 15.9 mm -> 18 mm  change bracing.x-treble.height: 15.9 mm -> 18 mm }`,
    );
    const desk = { shelf, workshop, checks, text: () => undefined };
    const [lens] = lensesOf(desk, OWN);
    const [before, after] = ['v-1', 'v-2'].map((name) => workshop.inFull(name)!.number('resonance.air')!) as [
      number,
      number,
    ];
    // Stiffer braces, higher resonances; of the three the one that can be told apart best.
    expect(after).toBeGreaterThan(before + 2);
    expect(lens!.text).toContain(` · main air +${(after - before).toFixed(1)} Hz`);
  });
});
