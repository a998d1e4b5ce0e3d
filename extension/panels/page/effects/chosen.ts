/** The effect that is looked at, by index of the reading and of the effect on it. */
export interface Chosen {
  readonly response: number;
  readonly effect: number;
}
