import type { Dimension } from './dimension.js';

/** One unit of measure, as data. `si = number * factor + (offset ?? 0)`. */
export interface Unit {
  /** The canonical spelling, used when writing. */
  readonly symbol: string;
  /** Every accepted spelling, the symbol among them. */
  readonly spellings: readonly string[];
  /** UCUM code, where UCUM has one. */
  readonly ucum?: string;
  readonly dimension: Dimension;
  readonly factor: number;
  /** Only temperatures: added after the factor. */
  readonly offset?: number;
  /** The factor is exact by definition. */
  readonly exact: boolean;
  readonly system: 'metric' | 'inch' | 'both';
  readonly source: string;
  /** One plain sentence for a hover. */
  readonly sentence: string;
}
