/** What the bench sets by, worked out from what the recipe says: for the card that goes with the instrument, and for whoever sets it up again. */
import { writeQuantity } from '../quantities/write.js';
import type { Workshop } from '../recipes/workshop.js';
import { SETUP_QUANTITIES } from '../recipes/derived/setup-quantities.js';
import { CLIMATE_QUANTITIES } from '../recipes/derived/climate-quantities.js';
import type { DerivedQuantity, Evaluation } from '../recipes/evaluation/evaluation.js';
import { concretePaths } from '../recipes/evaluation/effects.js';
import type { SheetSection } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

/** Nothing where none of it can be worked out. */
export function setupFigures(
  { wording: { text } }: Workshop,
  { side: { evaluation } }: SheetSubject,
): readonly SheetSection[] {
  const rows = rowsOf(SETUP_QUANTITIES, evaluation, text);
  if (rows.length === 0) return [];
  return [{ title: text('Worked out for the setup'), columns: [text('what'), text('computed')], rows }];
}

/** What it will do where it will live; nothing where nobody says where that is. */
export function climateFigures(
  { wording: { text } }: Workshop,
  { side: { evaluation } }: SheetSubject,
): readonly SheetSection[] {
  const ofPlates = CLIMATE_QUANTITIES.filter(({ path }) => !path.includes('*'));
  const rows = rowsOf(ofPlates, evaluation, text);
  if (rows.length === 0) return [];
  return [{ title: text('Once it has settled where it will live'), columns: [text('what'), text('computed')], rows }];
}

function rowsOf(
  quantities: readonly DerivedQuantity[],
  evaluation: Evaluation,
  text: (english: string) => string,
): readonly (readonly string[])[] {
  return quantities.flatMap((quantity) => {
    // What each string has of its own stands in one line, the highest first.
    const figures = concretePaths([quantity], evaluation).flatMap((path) => {
      const derived = evaluation.derived(path);
      if (!derived?.known || derived.given) return [];
      return [writeQuantity(derived.si, quantity.dimension, { unit: quantity.unit, digits: 2 })];
    });
    return figures.length === 0 ? [] : [[text(quantity.sentence), figures.join(', ')]];
  });
}
