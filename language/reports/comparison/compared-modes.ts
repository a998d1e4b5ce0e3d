/**
 * The first modes of a plate of two instruments: each beside the one in the other that moves most like it, since a change may
 * let two modes trade places.
 */
import { shownDifference } from '../../checks/phrases.js';
import { DIMENSION } from '../../quantities/dimension.js';
import type { Wording } from '../../wording/wording.js';
import type { Desk } from '../../checks/desk.js';
import { shareOf } from '../figures.js';
import { type DrawnMode, type ModeShapes, modeShapes } from '../plan/mode-shapes.js';
import { moreOrLess } from './more-or-less.js';

export interface ComparedModes {
  /** `known`: both are. `waiting`: either is being worked out; ask again after the next news of a change. */
  readonly state: ModeShapes['state'];
  readonly a: ModeShapes;
  readonly b: ModeShapes;
  /** In the order of the one's modes; after them those that only the other has. */
  readonly pairs: readonly ModePair[];
}

/** A mode of the one, of the other, or of both where they move alike. */
export interface ModePair {
  /** Index among the modes of the one, and of the other. */
  readonly a?: number;
  readonly b?: number;
  /** How alike the two move: `98 %` of the movement in common; 100 % is the same. */
  readonly likeness?: string;
  /** Of the frequency, from the one to the other: `+4 Hz`, `+2.1 %`, `higher`. */
  readonly difference?: string;
  readonly percent?: string;
  readonly word?: string;
}

/** Undefined when there is no model, recipe or build of either name. */
export function comparedModes(desk: Desk, a: string, b: string, plate: 'top' | 'back'): ComparedModes | undefined {
  const [one, other] = [modeShapes(desk, a, plate), modeShapes(desk, b, plate)];
  if (!one || !other) return undefined;
  const states = [one.state, other.state];
  const state = states.includes('waiting') ? 'waiting' : states.includes('unknown') ? 'unknown' : 'known';
  return { state, a: one, b: other, pairs: modePairs(one, other, desk.workshop.wording) };
}

/** Two that have less of their movement in common are two different modes. */
const ALIKE = 0.25;

export function modePairs(one: ModeShapes, other: ModeShapes, wording: Wording): readonly ModePair[] {
  const matches = one.modes
    .flatMap((mode, a) => other.modes.map((each, b) => ({ a, b, likeness: likenessOf(one, mode, other, each) })))
    .filter(({ likeness }) => likeness >= ALIKE)
    .sort((p, q) => q.likeness - p.likeness);
  const [ofA, ofB] = [new Map<number, ModePair>(), new Set<number>()];
  for (const { a, b, likeness } of matches) {
    if (ofA.has(a) || ofB.has(b)) continue;
    const differences = differenceOf(one.modes[a]!.hertz, other.modes[b]!.hertz, wording);
    ofA.set(a, { a, b, likeness: `${Math.round(100 * likeness)} %`, ...differences });
    ofB.add(b);
  }
  return [
    ...one.modes.map((_, a) => ofA.get(a) ?? { a }),
    ...other.modes.flatMap((_, b) => (ofB.has(b) ? [] : [{ b }])),
  ];
}

/**
 * Share of the movement two modes have in common, from 0 to 1: the square of their correlation over the plate, whichever way
 * each is drawn (the modal assurance criterion, here over places instead of sensors: R. J. Allemang and D. L. Brown,
 * Proc. 1st IMAC, 1982; from memory). Bodies of different size are laid over each other from edge to edge.
 */
function likenessOf({ grid }: ModeShapes, { movement }: DrawnMode, { grid: to }: ModeShapes, other: DrawnMode): number {
  const rows = steps(grid.rows, to.rows);
  const columns = steps(grid.columns, to.columns);
  let [mixed, own, others] = [0, 0, 0];
  rows.forEach((row, r) => {
    columns.forEach((column, c) => {
      const here = movement[r * grid.columns + c]!;
      const there = other.movement[row * to.columns + column]!;
      mixed += here * there;
      own += here * here;
      others += there * there;
    });
  });
  return own * others === 0 ? 0 : mixed ** 2 / (own * others);
}

/** For each of `from` steps, the nearest of `to`. */
function steps(from: number, to: number): readonly number[] {
  return Array.from({ length: from }, (_, i) => Math.round((i * (to - 1)) / (from - 1)));
}

function differenceOf(a: number, b: number, wording: Wording): Omit<ModePair, 'a' | 'b' | 'likeness'> {
  const difference = b - a;
  if (Math.abs(difference) < 1e-6 * a) return { difference: wording.text('the same') };
  return {
    difference: shownDifference(difference, { dimension: DIMENSION.frequency, unit: 'Hz' }),
    percent: shareOf(difference / a, wording),
    word: moreOrLess('frequency', DIMENSION.frequency, difference, wording),
  };
}
