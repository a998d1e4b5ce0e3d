/** An evaluation on nearly the same ground, and what its answers may be taken over for. */
import type { Differences, Ground } from './derived-quantity.js';
import { isTouched, type Leanings } from './leanings.js';

export class Likeness<E extends { readonly ground: Ground; readonly era: number }> {
  private readonly other: WeakRef<E>;
  private readonly era: number;
  private differences: Differences | undefined;
  private reached: ReadonlySet<string> = new Set();
  private version = -1;
  private partsCompared = -1;

  constructor(
    private readonly ground: Ground,
    other: E,
    private readonly leanings: Leanings,
  ) {
    // It is not kept for this: whoever has lost it works everything out.
    this.other = new WeakRef(other);
    this.era = other.era;
  }

  /** Who may be asked for this; whether the answer holds here too is known once it is there (`holdsFor`). */
  for(name: string): E | undefined {
    const other = this.other.deref();
    return other && this.holdsFor(name, other) ? other : undefined;
  }

  /** Whether an answer that was worked out there is also the answer here. */
  holdsFor(name: string, other: E): boolean {
    const { leanings } = this;
    if (leanings.era !== this.era) return false;
    if (leanings.version !== this.version) this.look(other);
    return this.differences !== undefined && !this.reached.has(name) && !isTouched(name, this.differences);
  }

  /** At first, and again when more is known of what leans on what. */
  private look(other: E): void {
    const { leanings } = this;
    this.version = leanings.version;
    if (leanings.parts.size !== this.partsCompared) {
      this.differences = this.ground.differencesFrom?.(other.ground, leanings.parts);
      this.partsCompared = leanings.parts.size;
    }
    if (this.differences) this.reached = leanings.reachedFrom(this.differences);
  }
}
