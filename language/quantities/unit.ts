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
  /** Symbol of the unit of the other system that a maker sets beside this one; 'itself' where both systems use it. */
  readonly beside: string;
  /** A number without a unit may have meant this one, where it is at least so large; absent: it never did. */
  readonly bare?: number;
  /** What films are measured in, rather than in the other unit of the same size. */
  readonly film?: boolean;
  /** The finest figure that means something at the bench (common practice); three digits where it is not said. */
  readonly shown?: Fineness;
  readonly source: string;
  /** One plain sentence for a hover. */
  readonly sentence: string;
}

/** How finely a value in a unit is written. */
export interface Fineness {
  /** Significant digits shown … */
  readonly digits: number;
  /** … but never more decimals than this. Digits before the point are never rounded away. */
  readonly decimals: number;
  /** … unless fewer significant digits than this would be left; 2 when absent. */
  readonly least?: number;
  /** Zeros at the end are kept: thousandths of an inch are always written as three digits. */
  readonly keepZeros?: boolean;
}
