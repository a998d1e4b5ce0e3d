/** Asks an evaluation for what a drawing needs; what is missing ends the part that needs it. */
import type { PlateAnalysis, WoodFit } from '../../recipes/evaluation/analyst.js';
import type { Ask, Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Value } from '../../facts/facts.js';

/** Something a part of a drawing needs is not known. */
export class NotKnown extends Error {
  constructor(readonly paths: readonly string[]) {
    super(`not known: ${paths.join(', ')}`);
  }
}

export class PlainAsk implements Ask {
  /** Shapes are asked for by whole paths. */
  readonly member = '';

  private readonly made = new Map<string, unknown>();

  constructor(private readonly evaluation: Evaluation) {}

  number(path: string): number {
    return this.evaluation.number(path) ?? this.missing(path);
  }

  numberIf(path: string): number | undefined {
    const si = this.evaluation.number(path);
    return si === undefined && this.isSpoilt(path) ? this.missing(path) : si;
  }

  numberOr(path: string, fallback: number): number {
    const si = this.numberIf(path);
    return si === undefined ? fallback : si;
  }

  /** Written so that it cannot be used is not the same as left out: nothing is taken in its place. */
  private isSpoilt(path: string): boolean {
    const derived = this.evaluation.derived(path);
    const absent = derived && !derived.known ? derived.missing : [path];
    return absent.some((each) => this.evaluation.isSaid(each));
  }

  word(path: string): string | undefined {
    const value = this.value(path);
    return value?.kind === 'name' ? value.name : value?.kind === 'text' ? value.text : undefined;
  }

  value(path: string): Value | undefined {
    return this.evaluation.ground.value(path);
  }

  members(part: string): readonly string[] {
    return this.evaluation.ground.members(part);
  }

  missing(path: string): never {
    const derived = this.evaluation.derived(path);
    throw new NotKnown(derived && !derived.known && derived.missing.length > 0 ? derived.missing : [path]);
  }

  /** A plan is drawn from what is written; nothing has to be solved for it. */
  analyse(): PlateAnalysis {
    throw new NotKnown(['resonance']);
  }

  fit(): WoodFit {
    throw new NotKnown(['tap']);
  }

  /** What several parts of a drawing are made from is made once for all of them. */
  shared<T>(name: string, make: (ask: Ask) => T): T {
    if (!this.made.has(name)) this.made.set(name, make(this));
    return this.made.get(name) as T;
  }

  doubt(): void {
    // A drawing shows no uncertainty.
  }

  assume(): void {
    // A drawing shows what an assumption comes to; hovers and findings say that one was made.
  }
}

/** Goes on with a harmless number where one is missing, so that everything missing is named at once; what comes out is worth nothing then. */
export class GatheringAsk extends PlainAsk {
  readonly absent = new Set<string>();

  override number(path: string): number {
    return this.gathered(() => super.number(path));
  }

  override numberIf(path: string): number | undefined {
    return this.gathered(() => super.numberIf(path));
  }

  private gathered<T>(ask: () => T): T | number {
    try {
      return ask();
    } catch (error) {
      if (!(error instanceof NotKnown)) throw error;
      for (const each of error.paths) this.absent.add(each);
      return 1;
    }
  }
}
