/**
 * Which evaluation a new one will be much like: the one the recipe had before an edit, and that of what the recipe starts from.
 * Whether there are any makes no difference to an answer, only to how soon it is there; so nobody leans on what is noted here,
 * and nothing is kept for it.
 */
import type { Evaluation, Kin } from './evaluation.js';

export class Kinship {
  private readonly evaluations = new Map<string, WeakRef<Evaluation>>();
  private readonly starts = new Map<string, string>();
  private most = 1000;

  /** What a recipe starts from: another recipe, or for a base recipe any other of its model. */
  startsFrom(recipe: string, start: { readonly kind: string; readonly name: string } | undefined): void {
    if (!start) this.starts.delete(recipe);
    else this.starts.set(recipe, start.kind === 'model' ? baseOf(start.name) : start.name);
  }

  /** The recipe it starts from. */
  startOf(recipe: string): string | undefined {
    const start = this.starts.get(recipe);
    return start === undefined || isBase(start) ? undefined : start;
  }

  of(recipe: string): Kin {
    const start = this.starts.get(recipe);
    return { before: this.latest(recipe), like: start === undefined ? undefined : this.latest(start) };
  }

  latest(recipe: string): Evaluation | undefined {
    return this.evaluations.get(recipe)?.deref();
  }

  note(recipe: string, evaluation: Evaluation): void {
    const kept = new WeakRef(evaluation);
    this.evaluations.set(recipe, kept);
    const start = this.starts.get(recipe);
    if (start !== undefined && isBase(start)) this.evaluations.set(start, kept);
    if (this.evaluations.size > this.most) this.tidy();
  }

  /** Names that are gone, such as every name while it was being typed. */
  private tidy(): void {
    for (const [name, kept] of this.evaluations) {
      if (kept.deref()) continue;
      this.evaluations.delete(name);
      this.starts.delete(name);
    }
    this.most = 1000 + 2 * this.evaluations.size;
  }
}

/** No recipe has a name with a space in it. */
function baseOf(model: string): string {
  return `base of ${model}`;
}

function isBase(name: string): boolean {
  return name.includes(' ');
}
