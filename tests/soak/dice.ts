/** Numbers that look random and are the same each time for the same seed (Lehmer's generator, with Park and Miller's factor of 1993). */
export class Dice {
  private state: number;

  constructor(seed: number) {
    this.state = (Math.abs(Math.trunc(seed)) % 2147483646) + 1;
    this.below(2);
  }

  /** A whole number from 0 up to, not including, `sides`. */
  below(sides: number): number {
    this.state = (this.state * 48271) % 2147483647;
    return this.state % sides;
  }

  one<T>(of: readonly T[]): T {
    const chosen = of[this.below(of.length)];
    if (chosen === undefined) throw new Error('nothing to choose from');
    return chosen;
  }
}
