/** Hover on a part: what it is, and what is computed of it. */
import { shown } from '../checks/phrases.js';
import { concretePaths } from '../recipes/effects.js';
import type { Desk } from './desk.js';
import { paragraphs, plain, table } from './markdown.js';
import type { Subject } from './subject.js';

const SHOWN = 8;

export function partHover(desk: Desk, subject: Subject, path: string): string | undefined {
  const part = desk.workshop.catalogue.part(path);
  const { evaluation } = subject;
  const computed = evaluation
    ? concretePaths(evaluation.derivations.all, evaluation)
        .filter((each) => each.startsWith(`${path}.`))
        .flatMap((each) => {
          const derived = evaluation.derived(each);
          return derived?.known
            ? [[plain(each), shown(derived.si, derived.quantity, evaluation.uncertainty(each))]]
            : [];
        })
    : [];
  if (!part && computed.length === 0) return undefined;
  return paragraphs(
    part ? `**${plain(path)}**: ${part.sentence}` : `**${plain(path)}**`,
    computed.length > 0 ? table(['computed', 'value'], computed.slice(0, SHOWN)) : undefined,
  );
}
