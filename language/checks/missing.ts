/** What is missing, told as the one thing to give: the wood, not each of its moduli. */
import type { Evaluation } from '../recipes/evaluation.js';
import type { Workshop } from '../recipes/workshop.js';

/** Paths that would make something known, those inside an unnamed wood or string set drawn together into it. */
export function whatIsMissing(
  missing: readonly string[],
  evaluation: Evaluation | undefined,
  workshop: Workshop,
): readonly string[] {
  return [...new Set(missing.map((path) => outermost(path, evaluation, workshop)))];
}

function outermost(path: string, evaluation: Evaluation | undefined, workshop: Workshop): string {
  for (let dot = path.indexOf('.'); dot > 0; dot = path.indexOf('.', dot + 1)) {
    const part = path.slice(0, dot);
    const kind = workshop.catalogue.property(part)?.kind;
    const isName = kind === 'wood' || kind === 'strings' || kind === 'rig' || kind === 'species';
    if (isName && evaluation?.ground.value(part)?.kind !== 'name') return part;
  }
  return path;
}
