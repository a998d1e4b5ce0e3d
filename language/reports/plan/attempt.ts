/** Draws what can be drawn: a part that lacks something is named with what it lacks, and the rest is drawn all the same. */
import { MechanicsError } from '../../mechanics/error.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Wording } from '../../wording/wording.js';
import { braceDrawn, type DrawnBrace } from './drawn-from.js';
import { NotKnown, PlainAsk } from './plain-ask.js';
import type { NotDrawn } from './plan.js';

export type BraceRoot = 'bracing' | 'back-bracing';

export class Attempts {
  readonly missing: NotDrawn[] = [];
  readonly ask: PlainAsk;
  private readonly braces = new Map<BraceRoot, readonly DrawnBrace[]>();

  constructor(
    private readonly evaluation: Evaluation,
    private readonly told: Wording['told'],
  ) {
    this.ask = new PlainAsk(evaluation);
  }

  /** What is made, or nothing, and a word on why. A part without a name is told elsewhere. */
  of<T>(part: string, make: (ask: PlainAsk) => readonly T[]): readonly T[] {
    try {
      return make(this.ask);
    } catch (error) {
      if (!(error instanceof NotKnown) && !(error instanceof MechanicsError)) throw error;
      const why = error instanceof NotKnown ? { paths: error.paths } : { paths: [], trouble: this.told(error.message) };
      if (part !== '' && !this.missing.some((one) => one.part === part)) this.missing.push({ part, ...why });
      return [];
    }
  }

  readonly bracesOf = (root: BraceRoot): readonly DrawnBrace[] => {
    const known = this.braces.get(root);
    if (known) return known;
    const made = this.evaluation.ground
      .members(root)
      .flatMap((member) => this.of(`${root}.${member}`, (ask) => [braceDrawn(ask, root, member)]));
    this.braces.set(root, made);
    return made;
  };
}
