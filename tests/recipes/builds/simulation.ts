/** How often what is told of made-up shops is right. */
import type { Told } from '../../../language/recipes/builds/effect-model.js';
import { type ThreeColumns, threeColumns } from '../../../language/recipes/builds/three-columns.js';
import { type Kind, madeShop } from './made-shops.js';

export interface Tally {
  effects: number;
  /** Truth within the interval. */
  builds: number;
  both: number;
  /** Where the two sides were not told to disagree. */
  agreeing: number;
  bothAgreeing: number;
  /** Sum of the ratios of the two widths. */
  ratios: number[];
  /** Computed wrong by more than its interval and by more than 2.8 standard errors of builds and mechanics; told so. */
  wrong: number;
  wrongTold: number;
  /** Told to disagree although the computed effect is right. */
  falseAlarms: number;
  standOut: number;
  shopsWithAlarm: number;
}

export function tallyOf(kind: Kind, shops: number, first = 1): Tally {
  const tally: Tally = {
    ...{ effects: 0, builds: 0, both: 0, agreeing: 0, bothAgreeing: 0, ratios: [], wrong: 0, wrongTold: 0 },
    ...{ falseAlarms: 0, standOut: 0, shopsWithAlarm: 0 },
  };
  for (let seed = first; seed < first + shops; seed += 1) {
    const { problem, truth } = madeShop(kind, seed);
    const [{ builds, together, disagrees: aside, standsOut: out }] = threeColumns([problem]) as [ThreeColumns];
    truth.forEach((effect, j) => {
      const [a, b] = [builds!.effects[j], together!.effects[j]];
      if (!a || !b) return;
      tally.effects += 1;
      if (holds(a, effect)) tally.builds += 1;
      if (holds(b, effect)) tally.both += 1;
      if (!aside[j]) {
        tally.agreeing += 1;
        if (holds(b, effect)) tally.bothAgreeing += 1;
        tally.ratios.push(b.half / a.half);
      }
      if (out[j]) tally.standOut += 1;
      const { computed } = problem.factors[j]!;
      if (!computed) return;
      const { amount, error } = computed;
      const isWrong = Math.abs(effect - amount) > 1.96 * error;
      if (isWrong && Math.abs(effect - amount) > 2.8 * Math.hypot(error, a.error)) {
        tally.wrong += 1;
        if (aside[j]) tally.wrongTold += 1;
      }
      if (!isWrong && aside[j]) tally.falseAlarms += 1;
    });
    if (out.some(Boolean)) tally.shopsWithAlarm += 1;
  }
  return tally;
}

function holds({ amount, half }: Told, truth: number): boolean {
  return Math.abs(amount - truth) <= half;
}

export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
