/** The order in which instruments were made: their place in time, and whether something always came with it. */
import type { Held } from '../instrument/instrument.js';
import type { BuildRecord } from './builds.js';
import { correlationOf, isVaried } from './least-squares.js';

const DATES = ['finished', 'strung', 'started', 'delivered'];

/** From −½ for the first to ½ for the last, by date; nothing is made of the order of builds of which not all have one. */
export function placesInTime(builds: readonly Pick<BuildRecord, 'recorded'>[]): readonly number[] {
  const days = builds.map(({ recorded }) => dayOf(recorded));
  if (!days.every((day) => day !== undefined)) return builds.map(() => 0);
  const [first, last] = [Math.min(...days), Math.max(...days)];
  return days.map((day) => (last > first ? (day - first) / (last - first) - 0.5 : 0));
}

/** Days since 1970. */
export function dayOf(recorded: ReadonlyMap<string, Held>): number | undefined {
  for (const path of DATES) {
    const value = recorded.get(path)?.value;
    if (value?.kind === 'date') return Date.parse(value.date) / 86_400_000;
  }
  return undefined;
}

/** So much alike that whatever a hand learns with time cannot be told from it. */
const WITH_TIME = 0.95;

/** Whether a column went with time: the hand, the season and the tools are then candidates too. */
export function wentWithTime(column: readonly number[], times: readonly number[]): boolean {
  return isVaried(column) && isVaried(times) && Math.abs(correlationOf(column, times)) > WITH_TIME;
}
