/** What takes the solver, from the text of a recipe on. */
import { describe, expect, it } from 'vitest';
import { lensesOf } from '../../language/editing/hints/lenses.js';
import { TopSolver } from '../../language/mechanics/plate/index.js';
import { NO_ANALYST, type PlateTask } from '../../language/recipes/evaluation/analyst.js';
import { DeferredAnalyst } from '../../language/recipes/evaluation/deferred-analyst.js';
import { concretePaths } from '../../language/recipes/evaluation/effects.js';
import { solveTask } from '../../language/recipes/evaluation/solving.js';
import { bracedShop, OWN } from './braced-shop.js';

describe('a plate', () => {
  it('is made once for everything that comes of it, and for every recipe that has the same', () => {
    const asked: PlateTask[] = [];
    const { workshop } = bracedShop(`recipe v-2 from v-1 { title: "The same."  neck.mass: 500 g }`, () => ({
      ...NO_ANALYST,
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
      ...NO_ANALYST,
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

describe('hold', () => {
  const HELD = `recipe v-2 from v-1 { because "A heavier bridge, no lower."
    change bridge.mass: by 5 g
    hold resonance.top by bracing.x-bass.height
  }`;

  it('solves the brace height that keeps a resonance', () => {
    const { workshop, checks } = bracedShop(HELD);
    const [hold] = workshop.instrument('v-2')!.solvedHolds;
    expect(hold!.outcome.kind).toBe('solved');
    const [before, after] = ['v-1', 'v-2'].map((name) => workshop.inFull(name)!);
    expect(after!.number('resonance.top')! / before!.number('resonance.top')!).toBeCloseTo(1, 5);
    const unheld = bracedShop(HELD.replace(/hold .*/, '')).workshop.inFull('v-2')!;
    const moved = unheld.number('resonance.top')! - before!.number('resonance.top')!;
    expect(moved).toBeLessThan(-0.5);
    // A higher brace makes it higher: it goes up for what the heavier bridge took.
    expect(after!.number('bracing.x-bass.height')).toBeGreaterThan(0.0159);
    expect(checks.file(OWN).filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it('says so when a resonance is out of reach of the brace', () => {
    const { workshop } = bracedShop(
      'recipe v-2 from v-1 { because "?"  hold resonance.top at 400 Hz by bracing.x-bass.height }',
    );
    expect(workshop.instrument('v-2')!.solvedHolds[0]!.outcome).toMatchObject({ kind: 'out-of-reach' });
  });

  it('is pending, and everything else known, until the solver has delivered; then it is what it is at once elsewhere', () => {
    const solver = new TopSolver();
    const waiting: (() => void)[] = [];
    let news = 0;
    const { workshop, checks } = bracedShop(
      HELD,
      (memo) =>
        new DeferredAnalyst(
          memo,
          { solve: (task, done) => void waiting.push(() => done(solveTask(solver, task))), stop: () => undefined },
          () => news++,
        ),
    );
    const outcome = () => workshop.instrument('v-2')!.solvedHolds[0]!.outcome;
    expect(outcome()).toEqual({ kind: 'pending' });
    expect(workshop.evaluation('v-2')!.number('top.mass')).toBeGreaterThan(0.1);
    expect(checks.file(OWN).map(({ code }) => code)).not.toContain('hold-out-of-reach');
    let rounds = 0;
    while (outcome().kind === 'pending') {
      expect(++rounds).toBeLessThan(20);
      waiting.shift()!();
    }
    expect(news).toBe(rounds);
    expect(outcome()).toEqual(bracedShop(HELD).workshop.instrument('v-2')!.solvedHolds[0]!.outcome);
  });
});
