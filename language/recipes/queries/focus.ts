/** Which recipes are worth a solver's time: those somebody is looking at, and those that need it to be checked. */
import { type Analyst, NO_ANALYST } from '../analyst.js';
import type { Workshop } from '../workshop.js';

export function focusQueries(workshop: Workshop) {
  const { shelf, catalogue } = workshop;
  const { memo } = shelf;
  const watched = memo.input<string, true>();
  let names: ReadonlySet<string> = new Set();

  /** Whether a recipe holds or expects something only the solver knows. */
  const asksForModes = memo.query((name: string): boolean => {
    const statements = shelf.find('recipe', name)?.statements ?? [];
    return statements.some(
      (statement) =>
        (statement.kind === 'hold' || statement.kind === 'expect') &&
        workshop.derivedAt(catalogue.canonical(statement.quantity.text))?.slow,
    );
  });

  return {
    focusOn(recipes: Iterable<string>): void {
      const wanted = new Set(recipes);
      for (const name of names) if (!wanted.has(name)) watched.set(name, undefined);
      for (const name of wanted) watched.set(name, true);
      names = wanted;
    },
    analystFor: (recipe: string): Analyst =>
      watched.get(recipe) || asksForModes.get(recipe) ? workshop.analyst : NO_ANALYST,
  };
}
