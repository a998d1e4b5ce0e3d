/** What is missing, told as the one thing to give: the wood, not each of its moduli. */
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Workshop } from '../../recipes/workshop.js';
import { type Wording } from '../../wording/wording.js';

/** Paths that would make something known, those inside an unnamed wood or string set drawn together into it. */
export function whatIsMissing(
  missing: readonly string[],
  evaluation: Evaluation | undefined,
  workshop: Workshop,
): readonly string[] {
  return [...new Set(missing.map((path) => outermost(path, evaluation, workshop)))];
}

/** Why something is not known, as part of a sentence. */
export function whyUnknown(
  missing: readonly string[],
  trouble: string | undefined,
  { say, some, text, told }: Wording,
): string {
  if (missing.length > 1) return say`${some(missing)} are missing`;
  return missing.length === 1
    ? say`${some(missing)} is missing`
    : trouble === undefined
      ? text('it is not known')
      : told(trouble);
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
