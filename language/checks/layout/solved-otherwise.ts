/** What the solver of plates took otherwise than the recipe draws it, at the line it is drawn by. */
import type { Definition } from '../../facts/facts.js';
import { type PlateName, solverNotes, type SolverNote } from '../../recipes/derived/mode-quantities.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { isInForce } from '../in-force.js';
import type { Rule } from '../rule.js';
import { lineOf } from './laid-out.js';

export const SOLVED_OTHERWISE: Rule = {
  code: 'solved-otherwise',
  severity: 'hint',
  title: 'A part that is worked out otherwise than it is drawn',
  reason:
    'Where a part cannot be worked out as it lies, the solver takes what can: of a brace the length that lies on the top. The figures of that plate are of what was taken. Told only of recipes that hold or expect what takes the solver, so that findings never wait for it; the hover of a figure says it of every recipe.',
  bad: '',
  good: '',
  of: ['recipe'],
  check(definition, workshop, report) {
    const { name } = definition;
    if (!isInForce(definition, workshop) || !workshop.needsModes(name.text)) return;
    const [evaluation, instrument] = [workshop.evaluation(name.text), workshop.instrument(name.text)];
    if (!evaluation || !instrument) return;
    for (const note of (['top', 'back'] as const).flatMap((plate) => notesOf(evaluation, plate))) {
      const line = drawnBy(note.path, instrument.values, definition);
      // What came with the parent is told there.
      if (line) report(lineOf(definition, line), workshop.wording.told(note.message));
    }
  },
};

/** None while, or where, the plate is not solved. */
function notesOf(evaluation: Evaluation, plate: PlateName): readonly SolverNote[] {
  const { key, make } = solverNotes(plate);
  const { outcome, absent, pending } = evaluation.part(key, make);
  return pending || absent.length > 0 || 'failed' in outcome ? [] : (outcome.made as readonly SolverNote[]);
}

/** The line of this definition that has most to do with where a part lies: its own places, whatever is said of it, what it lies on. */
function drawnBy(part: string, values: ReadonlyMap<string, Held>, definition: Definition): Held | undefined {
  const own = [...values.values()].filter(({ from }) => from.definition === definition);
  const beginsWith = (start: string) => own.find(({ path }) => path === start || path.startsWith(`${start}.`));
  const places = ['from', 'to', 'curve', 'station'].map((word) => `${part}.${word}`);
  return [...places, part, 'soundhole', 'body', 'cutaway'].map(beginsWith).find((held) => held !== undefined);
}
