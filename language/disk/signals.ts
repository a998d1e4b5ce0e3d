/** Ctrl+C while a file is being written: the file is finished first, then the program ends as it was told to. */

const ENDING_SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/**
 * Does `work`, and only then lets a signal that came meanwhile end the process. At all other times a signal ends it at once,
 * as usual: nothing is half done then.
 */
export async function finishingFirst<T>(work: () => Promise<T>): Promise<T> {
  let told: NodeJS.Signals | undefined;
  const later = (signal: NodeJS.Signals) => {
    told ??= signal;
  };
  for (const signal of ENDING_SIGNALS) process.on(signal, later);
  try {
    return await work();
  } finally {
    for (const signal of ENDING_SIGNALS) process.off(signal, later);
    if (told) process.kill(process.pid, told);
  }
}
