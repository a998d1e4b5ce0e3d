/** One kind of reading along the series: what was read and what is computed, build by build, each change marked where it came in. */
import { dayOf } from '../../recipes/builds/series.js';
import type { Design, DesignVariable } from '../../recipes/builds/design-matrix.js';
import type { FittedResponse } from '../../recipes/builds/response-effects.js';
import type { Response } from '../../recipes/builds/responses.js';
import { unitFor } from '../shop-values.js';
import type { VariableWords } from './variable-words.js';

export interface RunChart {
  /** In the order made, in the unit of the response. */
  readonly points: readonly RunPoint[];
  /** Nineteen times in twenty a reading of an instrument built alike is within ± this share. */
  readonly scatter?: number;
  readonly calibration?: Calibration;
}

export interface RunPoint {
  readonly build: string;
  /** `day-30` */
  readonly occasion: string;
  readonly read: number;
  readonly computed?: number;
  /** Changes that came in or went out with this build. */
  readonly changes: readonly string[];
  /** Asked about and kept out. */
  readonly odd: boolean;
}

/** Read over computed, of all builds. */
export interface Calibration {
  /** 1.03: what is read is three per cent above what is computed. */
  readonly factor: number;
  /** Standard deviation of read over computed about the factor, as a share. */
  readonly scatter: number;
  readonly builds: number;
  /** Foretelling each build by the others' factor is nearer than the plain computed value. */
  readonly helps: boolean;
}

export function chartOf(
  { path, values, odd, occasions }: Response,
  outcome: FittedResponse | undefined,
  { builds, variables, reference }: Design,
  words: VariableWords,
): RunChart {
  const factor = unitFor(path, 'build')?.factor ?? 1;
  const order = builds
    .map(({ recorded }, row) => ({ row, day: dayOf(recorded) ?? row }))
    .sort((a, b) => a.day - b.day || a.row - b.row)
    .map(({ row }) => row);
  const before = (row: number) => order[order.indexOf(row) - 1] ?? reference;
  const all = [...values.map((value, i) => ({ value, i })), ...odd.map((value) => ({ value, i: -1 }))];
  const points = all
    .sort((a, b) => order.indexOf(a.value.row) - order.indexOf(b.value.row) || a.value.occasion - b.value.occasion)
    .map(({ value, i }): RunPoint => {
      const computed = outcome?.predicted[i];
      const { row } = value;
      return {
        build: builds[row]!.label,
        occasion: occasions[value.occasion]!.name,
        read: value.si / factor,
        ...(computed === undefined ? {} : { computed: computed / factor }),
        changes: variables.flatMap((variable) =>
          isChange(variable, before(row), row) ? [words.changeAt(variable, row)] : [],
        ),
        odd: i < 0,
      };
    });
  const calibration = calibrationOf(points);
  return {
    points,
    ...(outcome ? { scatter: 1.96 * outcome.scatter.share } : {}),
    ...(calibration ? { calibration } : {}),
  };
}

/** A plate planed a little otherwise is none. */
function isChange({ declared, column, step }: DesignVariable, from: number, to: number): boolean {
  return declared && Math.abs(column[to]! - column[from]!) > Math.abs(step) / 4;
}

/** Undefined with fewer than three builds. */
export function calibrationOf(
  points: readonly Pick<RunPoint, 'build' | 'read' | 'computed' | 'odd'>[],
): Calibration | undefined {
  const byBuild = new Map<string, number[]>();
  for (const { build, read, computed, odd } of points) {
    if (computed === undefined || odd) continue;
    byBuild.set(build, [...(byBuild.get(build) ?? []), Math.log(read / computed)]);
  }
  const logs = [...byBuild.values()].map(mean);
  if (logs.length < 3) return undefined;
  const middle = mean(logs);
  const scatter = Math.sqrt(logs.reduce((sum, log) => sum + (log - middle) ** 2, 0) / (logs.length - 1));
  const others = (i: number) => mean(logs.filter((_, j) => j !== i));
  const [with_, without] = [logs.map((log, i) => (log - others(i)) ** 2), logs.map((log) => log ** 2)];
  return { factor: Math.exp(middle), scatter, builds: logs.length, helps: mean(with_) < mean(without) };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
