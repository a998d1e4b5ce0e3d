import type { Dimension } from '../dimension.js';
import type { Unit } from '../unit.js';

/** What one row of a unit table says beyond symbol, dimension and factor. */
export interface UnitDetails {
  readonly ucum?: string;
  /** Further accepted spellings. Those that differ only in how a dot or a power is typed are added by themselves. */
  readonly also?: readonly string[];
  readonly offset?: number;
  /** False only where the factor is rounded. */
  readonly exact?: boolean;
  readonly system?: Unit['system'];
  readonly beside: Unit['beside'];
  readonly bare?: Unit['bare'];
  readonly film?: Unit['film'];
  readonly shown?: Unit['shown'];
  readonly source: string;
  readonly sentence: string;
}

/** One row of a unit table. */
export function defineUnit(symbol: string, dimension: Dimension, factor: number, details: UnitDetails): Unit {
  return {
    symbol,
    spellings: [...new Set([symbol, ...(details.also ?? [])].flatMap(typedWays))],
    ucum: details.ucum,
    dimension,
    factor,
    offset: details.offset,
    exact: details.exact ?? true,
    system: details.system ?? 'metric',
    beside: details.beside,
    bare: details.bare,
    film: details.film,
    shown: details.shown,
    source: details.source,
    sentence: details.sentence,
  };
}

const DOTS = ['·', '*', '.', '⋅'];
const POWERS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries<readonly string[]>({
    '²': ['²', '2', '^2'],
    '³': ['³', '3', '^3'],
    '⁴': ['⁴', '4', '^4'],
  }),
);
const MICRO = ['µ', 'μ', 'u'];

/** Every way a keyboard may produce the spelling: `N·m²` is also `N*m2`, `N.m^2`, … */
function typedWays(spelling: string): string[] {
  let ways = [''];
  for (const character of spelling) {
    const choices = character === '·' ? DOTS : character === 'µ' ? MICRO : (POWERS.get(character) ?? [character]);
    ways = choices.flatMap((choice) => ways.map((way) => way + choice));
  }
  return ways;
}

/** Where factors come from. */
export const SOURCE = {
  si: 'BIPM, The International System of Units (SI), 9th edition, 2019: units and prefixes (from memory)',
  accepted: 'BIPM, The International System of Units (SI), 9th edition, 2019: units accepted with the SI (from memory)',
  nist: 'NIST Special Publication 811 (2008), Appendix B (as quoted in a public transcription)',
  derived: 'Computed from the exact inch, pound and pound-force of NIST Special Publication 811 (2008), Appendix B',
  ucum: 'UCUM, The Unified Code for Units of Measure: table of units (ucum-essence)',
  practice: 'Common practice',
} as const;

/** Exact: 1 in, in metres. */
export const INCH = 0.0254;
/** Exact: 1 ft, in metres. */
export const FOOT = 0.3048;
/** Exact: 1 lb (avoirdupois), in kilograms. */
export const POUND = 0.45359237;
/** Exact: 1 lb × 9.806 65 m/s², in newtons. */
export const POUND_FORCE = 4.4482216152605;
/** Exact: standard gravity, in m/s². */
export const STANDARD_GRAVITY = 9.80665;
/** Exact: (0.0254 m)², in square metres. */
export const SQUARE_INCH = 0.00064516;
/** Exact: (0.0254 m)³, in cubic metres. */
export const CUBIC_INCH = 0.000016387064;
/** Exact: (0.3048 m)², in square metres. */
export const SQUARE_FOOT = 0.09290304;
/** Exact: (0.3048 m)³, in cubic metres. */
export const CUBIC_FOOT = 0.028316846592;
