/** An analyst that answers later: what is pending is asked for once, and everything that leaned on it once more when it has come. */
import { expect, test } from 'vitest';
import { TopSolver } from '../../language/mechanics/plate/index.js';
import type { PlateTask } from '../../language/recipes/evaluation/analyst.js';
import { DeferredAnalyst } from '../../language/recipes/evaluation/deferred-analyst.js';
import { concretePaths } from '../../language/recipes/evaluation/effects.js';
import type { Evaluation } from '../../language/recipes/evaluation/evaluation.js';
import { solveTask } from '../../language/recipes/evaluation/solving.js';
import { bracedShop } from './braced-shop.js';

function waitingShop() {
  const solver = new TopSolver();
  const waiting: (() => void)[] = [];
  const asked: PlateTask[] = [];
  let dropped = 0;
  let analyst: DeferredAnalyst | undefined;
  const { workshop } = bracedShop(`recipe v-2 from v-1 { title: "The same." }`, (memo) => {
    analyst = new DeferredAnalyst(
      memo,
      {
        solve: (task, done) => void waiting.push(() => done(solveTask(solver, task))),
        stop: () => {
          dropped += 1;
        },
      },
      () => undefined,
    );
    return {
      analysis: (task) => {
        asked.push(task);
        return analyst!.analysis(task);
      },
      fit: (task) => analyst!.fit(task),
      round: () => analyst!.round(),
    };
  });
  return { workshop, waiting, asked, analyst: () => analyst!, dropped: () => dropped };
}

function pendingPaths(evaluation: Evaluation): readonly string[] {
  return concretePaths(evaluation.derivations.all, evaluation).filter((path) => {
    const answer = evaluation.derived(path);
    return answer?.known === false && answer.pending;
  });
}

test('looking again at what is pending asks the analyst nothing, until something has come', () => {
  const { workshop, waiting, asked } = waitingShop();
  const first = pendingPaths(workshop.inFull('v-1')!);
  expect(first.length).toBeGreaterThan(10);
  const before = asked.length;
  expect(pendingPaths(workshop.inFull('v-1')!)).toEqual(first);
  expect(asked.length).toBe(before);

  waiting.shift()!();
  const second = pendingPaths(workshop.inFull('v-1')!);
  expect(second.length).toBeLessThan(first.length);
  expect(asked.length).toBeGreaterThan(before);

  while (waiting.length > 0) waiting.shift()!();
  expect(pendingPaths(workshop.inFull('v-1')!)).toEqual([]);
});

test('what an edit has dropped is asked for again', () => {
  const { workshop, waiting, asked, analyst, dropped } = waitingShop();
  const first = pendingPaths(workshop.inFull('v-1')!);
  const before = asked.length;
  analyst().forget();
  expect(dropped()).toBe(1);
  expect(pendingPaths(workshop.inFull('v-1')!)).toEqual(first);
  expect(asked.length).toBeGreaterThan(before);
  expect(waiting).toHaveLength(1);
  for (let left = 4; left > 0 && waiting.length > 0; left--) {
    waiting.shift()!();
    pendingPaths(workshop.inFull('v-1')!);
  }
  expect(pendingPaths(workshop.inFull('v-1')!)).toEqual([]);
});

test('the uncertainty of what was pending is there as soon as the number is', () => {
  const { workshop, waiting } = waitingShop();
  const path = 'resonance.top';
  expect(workshop.inFull('v-1')!.uncertainty(path)).toBe(0);
  while (waiting.length > 0 || pendingPaths(workshop.inFull('v-1')!).length > 0) waiting.shift()!();
  const evaluation = workshop.inFull('v-1')!;
  expect(evaluation.number(path)).toBeGreaterThan(50);
  expect(evaluation.uncertainty(path)).toBeGreaterThan(0.1);
});
