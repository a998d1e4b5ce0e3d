/** A wish as a maker types it: an expectation, or a step. */
import type { Held } from '../../recipes/instrument/instrument.js';
import { type BookmatchParser, readFile } from '../../recipes/shelf/reader.js';
import { type Wish, wishIn } from '../../recipes/ways/wish.js';
import type { Workshop } from '../../recipes/workshop.js';

/** `resonance.top: 170 Hz`, `top.mass: below 160 g`, `top.sag: by 2 %`; undefined where it cannot be read. */
export function readWish(
  workshop: Workshop,
  parser: BookmatchParser,
  values: ReadonlyMap<string, Held>,
  wished: string,
): Wish | undefined {
  const evaluation = workshop.evaluateInFull(values);
  for (const word of ['expect', 'change']) {
    const facts = readFile('wish:', `recipe wish for wish { ${word} ${wished} }`, parser);
    const [entry, more] = facts.definitions;
    const problems = [...facts.problems, ...(entry?.definition.problems ?? [])];
    if (!entry || more || problems.length > 0) continue;
    const wish = wishIn(entry.definition, evaluation, (path) => workshop.catalogue.canonical(path));
    if (wish) return wish;
  }
  return undefined;
}
