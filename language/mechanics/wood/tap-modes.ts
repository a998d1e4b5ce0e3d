/**
 * The three taps of a free half-plate from more of its modes, for when one of the three is missing from a record or
 * stands doubtful. Frequencies in Hz.
 */
import { solveDense } from '../linear-algebra/dense-solve.js';
import { MechanicsError, positive } from '../error.js';
import { SECOND_TO_FIRST_BENDING } from '../braces/free-beam.js';

/**
 * First digit: nodal lines running along the grain; second: nodal lines running across it. `11` twist, `02` first
 * bending along the grain, `20` first bending across it.
 */
export type TapMode = (typeof RELATED_MODES)[number];

/** Those between which the relations are known. */
export const RELATED_MODES = ['11', '02', '20', '12', '21', '03', '13', '22'] as const;

export type TapPeaks = Readonly<Partial<Record<TapMode, number>>>;

export interface FittedTaps {
  readonly along: number;
  readonly across: number;
  readonly twist: number;
  /** Root mean square of the misfits, each over its own uncertainty; above 2 the peaks disagree with one another. */
  readonly misfit: number;
}

/**
 * Taps that fit all the given peaks best, through f₁₂² = f₀₂² + 4.06 f₁₁², f₀₃² = 7.598 f₀₂², f₂₁² = f₂₀² + 3.84 f₁₁²,
 * f₂₁² + f₀₃² = 7.598 f₀₂² + f₂₀² + 4.07 f₁₁² (Poisson coupling drives f₂₁ and f₀₃ apart but keeps their sum), f₁₃² =
 * 7.598 f₀₂² + 8.8 f₁₁², f₂₂² = f₀₂² + f₂₀² + 16.25 f₁₁².
 *
 * The form follows Rayleigh's method with free-beam shapes (G.B. Warburton, Proc. I.Mech.E. 168, 1954, from memory);
 * the numbers are medians over twenty finite-element plates of guitar spruce, 570 × 210 mm (D.G. Badiane et al., as in
 * `wood.ts`), and each relation counts by its scatter there. For half-plates of such proportions only. Throws when the
 * peaks do not determine all three taps, or lead to an impossible one.
 */
export function tapsFromModes(peaks: TapPeaks): FittedTaps {
  const equations = list(peaks);
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => equations.reduce((sum, { terms, weight }) => sum + weight ** 2 * terms[i]! * terms[j]!, 0)),
  );
  const right = [0, 1, 2].map((i) => equations.reduce((sum, { terms, weight }) => sum + weight ** 2 * terms[i]!, 0));
  if (normal.some((row, i) => row[i]! <= 0)) throw tooFew();
  const squares = solveDense(normal, right);
  if (squares.some((square) => !(square > 0))) {
    throw new MechanicsError(
      'tap frequencies',
      'These peaks do not belong to one free plate: check which mode is which.',
    );
  }
  const errors = equations.map(
    ({ terms, weight }) => weight * (terms.reduce((sum, term, i) => sum + term * squares[i]!, 0) - 1),
  );
  const [along, across, twist] = squares.map(Math.sqrt) as [number, number, number];
  return { along, across, twist, misfit: Math.hypot(...errors) / Math.sqrt(errors.length) };
}

export interface OddPeak {
  /** Absent where no one peak is to blame. */
  readonly mode?: TapMode;
  /** Hz at which the others put it. */
  readonly expected?: number;
}

/**
 * Whether peaks contradict one another, and which of them is at odds with the rest: the one without which they agree best, if they then
 * do. Undefined where they agree, or are too few to tell. Hz. Never throws on peaks above zero.
 */
export function oddPeak(peaks: TapPeaks): OddPeak | undefined {
  const all = attempt(peaks);
  if (all === 'too few' || (all !== 'impossible' && all.misfit <= MOST_MISFIT)) return undefined;
  const named = RELATED_MODES.filter((mode) => peaks[mode] !== undefined);
  const without = named.flatMap((mode) => {
    const rest = attempt({ ...peaks, [mode]: undefined });
    return typeof rest === 'string' ? [] : [{ mode, rest }];
  });
  const best = without.reduce<(typeof without)[number] | undefined>(
    (least, each) => (least && least.rest.misfit <= each.rest.misfit ? least : each),
    undefined,
  );
  // Of four peaks any one left out makes the other three agree: none can be told to be the odd one.
  if (named.length < 5 || !best || best.rest.misfit > MOST_MISFIT / 2) return {};
  const { along, across, twist } = best.rest;
  const [a, b, c] = RELATIONS[best.mode].terms;
  return { mode: best.mode, expected: Math.sqrt(a * along ** 2 + b * across ** 2 + c * twist ** 2) };
}

/** Above this the peaks disagree. */
const MOST_MISFIT = 2;

function attempt(peaks: TapPeaks): FittedTaps | 'too few' | 'impossible' {
  try {
    return tapsFromModes(peaks);
  } catch (error) {
    if (!(error instanceof MechanicsError)) throw error;
    return error.message === TOO_FEW ? 'too few' : 'impossible';
  }
}

type Terms = readonly [along: number, across: number, twist: number];

const SECOND = SECOND_TO_FIRST_BENDING ** 2;

/** Coefficients of f₀₂², f₂₀², f₁₁² and the relative scatter of the square over the twenty plates. */
export const RELATIONS: Readonly<Record<TapMode | 'sum', { readonly terms: Terms; readonly scatter: number }>> = {
  '02': { terms: [1, 0, 0], scatter: 0 },
  '20': { terms: [0, 1, 0], scatter: 0 },
  '11': { terms: [0, 0, 1], scatter: 0 },
  '12': { terms: [1, 0, 4.06], scatter: 0.009 },
  '03': { terms: [SECOND, 0, 0], scatter: 0.035 },
  '21': { terms: [0, 1, 3.84], scatter: 0.039 },
  '13': { terms: [SECOND, 0, 8.8], scatter: 0.014 },
  '22': { terms: [1, 1, 16.25], scatter: 0.016 },
  sum: { terms: [SECOND, 1, 4.07], scatter: 0.01 },
};

/** 1 % of frequency for shear, rotary inertia and supports; half a hertz for reading the peak. */
const MODEL = 0.02;
const READING = 0.5;

function list(peaks: TapPeaks): { terms: number[]; weight: number }[] {
  const { '21': mixed, '03': second } = peaks;
  const both = mixed !== undefined && second !== undefined;
  const equations = RELATED_MODES.flatMap((mode) => {
    const frequency = peaks[mode];
    if (frequency === undefined || (both && mode === '21')) return [];
    return [equation(RELATIONS[mode], positive('tap frequency', frequency) ** 2)];
  });
  if (both) equations.push(equation(RELATIONS.sum, mixed ** 2 + second ** 2));
  if (equations.length < 3) throw tooFew();
  return equations;
}

function equation(relation: { terms: Terms; scatter: number }, square: number): { terms: number[]; weight: number } {
  return {
    terms: relation.terms.map((term) => term / square),
    weight: 1 / Math.hypot(relation.scatter, MODEL, READING / Math.sqrt(square)),
  };
}

function tooFew(): MechanicsError {
  return new MechanicsError('tap frequencies', TOO_FEW);
}

const TOO_FEW = 'These peaks are too few to tell along, across and twist apart.';
