/** One line of the table: what was timed, how long it may take, and the times of each run in ms. */
export interface Row {
  readonly what: string;
  readonly aim: string;
  /** Of several runs the quietest is shown: a busy machine only ever adds. */
  readonly runs: readonly (readonly number[])[];
}

/** Median and 95th percentile of the run with the lowest 95th percentile, ms. */
export function quietest({ runs }: Row): { readonly median: number; readonly p95: number } {
  const told = runs.map((times) => ({ median: shareOf(times, 0.5), p95: shareOf(times, 0.95) }));
  return told.sort((a, b) => a.p95 - b.p95)[0] ?? { median: NaN, p95: NaN };
}

function shareOf(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/**
 * ms on the clock that is read: the one on the wall, or with BENCH_CLOCK=cpu the time this process was given, which on a
 * busy machine says more. (It counts the helpers of the garbage collector too, so it is a little long.)
 */
export function now(): number {
  if (process.env['BENCH_CLOCK'] !== 'cpu') return performance.now();
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
