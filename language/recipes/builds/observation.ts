/** One reading of one instrument, as the model of effects takes it. */
export interface Observation {
  /** ln of the reading. */
  readonly log: number;
  /** ln of what is computed for the very same instrument, in the state and the rig it was read in. */
  readonly computed?: number;
  /** The instrument, and its state between two reworks, by number. */
  readonly owner: number;
  readonly state: number;
  /** Days strung and the like, by number: each has a level of its own. */
  readonly occasion: number;
  /** Variance of ln reading from the last digit written down. */
  readonly rounding: number;
  /** How far the instrument is along each factor's step: 0 as the reference, 1 the whole step. */
  readonly steps: readonly number[];
  /** Place in the series, from −½ to ½. */
  readonly time: number;
}
