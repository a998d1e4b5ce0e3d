/** Which recipes are worth a solver's time whether or not anybody looks: those that hold or expect what only it knows. */
import { nameOf } from './name-of.js';
import { type Analyst, NO_ANALYST } from '../evaluation/analyst.js';
import type { Questions } from '../questions.js';

export function modeQueries(workshop: Questions) {
  const { shelf, catalogue } = workshop;

  const isNeeded = workshop.barrier.query(
    'needs modes',
    (recipe: string): boolean => {
      const statements = shelf.find('recipe', recipe)?.statements ?? [];
      return statements.some(
        (statement) =>
          (statement.kind === 'hold' || statement.kind === 'expect') &&
          workshop.derivedAt(catalogue.canonical(statement.quantity.text))?.slow,
      );
    },
    { otherwise: false, of: nameOf('recipe') },
  );

  return {
    isNeeded: (recipe: string): boolean => isNeeded.get(recipe),
    /** For the questions behind findings: five hundred tops would keep a solver busy for a minute. */
    analystFor: (recipe: string): Analyst => (isNeeded.get(recipe) ? workshop.analyst : NO_ANALYST),
  };
}
