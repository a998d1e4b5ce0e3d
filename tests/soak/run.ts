/** One run: actions played to one server, compared with a fresh one every so often. */
import { type Action, drawAction } from './action.js';
import { compareWithFresh } from './compare.js';
import { Dice } from './dice.js';
import { Folders } from './folders.js';
import type { Tokens } from './observe.js';
import { Player } from './player.js';
import { ServerProcess } from './server-process.js';

export interface Outcome {
  /** In words; undefined when nothing went wrong. */
  readonly failure: string | undefined;
  readonly played: readonly Action[];
  readonly counts: { readonly actions: number; readonly edits: number; readonly requests: number };
  readonly comparisons: number;
  readonly errors: number;
  readonly faults: number;
  readonly differences: number;
  /** Resident memory of the server, MB, after so many seconds. */
  readonly memory: readonly { readonly after: number; readonly resident: number }[];
}

export type Files = ReadonlyMap<string, string>;

export type Told = (words: string) => void;

/** Actions come until the time is up; the first comparison that fails ends it. `told`: how it goes, once a minute. */
export async function soak(files: Files, seed: number, seconds: number, told?: Told): Promise<Outcome> {
  const dice = new Dice(seed);
  const until = Date.now() + 1000 * seconds;
  return run(
    files,
    function* () {
      while (Date.now() < until) {
        for (let left = 8 + dice.below(40); left > 0; left--) yield drawAction(dice);
        yield 'compare';
      }
    },
    told,
  );
}

/** These actions and no others, with a comparison at the end. */
export function replay(files: Files, actions: readonly Action[]): Promise<Outcome> {
  return run(files, function* () {
    yield* actions;
    yield 'compare';
  });
}

async function run(files: Files, script: () => Iterable<Action | 'compare'>, told?: Told): Promise<Outcome> {
  const folders = new Folders(files);
  const server = await ServerProcess.start([folders.uri(folders.first)]);
  const player = new Player(server, folders);
  const start = Date.now();
  const played: Action[] = [];
  const memory: { after: number; resident: number }[] = [];
  const tokens: Tokens = new Map();
  let [comparisons, differences, minute] = [0, 0, 1];
  let failure: string | undefined;
  try {
    for (const step of script()) {
      if (step !== 'compare') {
        played.push(step);
        player.play(step);
        continue;
      }
      const difference = await compareWithFresh(player, comparisons++, tokens);
      if (difference !== undefined) differences++;
      const { resident } = server;
      const after = (Date.now() - start) / 1000;
      if (resident !== undefined) memory.push({ after, resident });
      if (after >= 60 * minute) {
        minute = Math.floor(after / 60) + 1;
        const { edits, requests } = player.counts;
        told?.(
          `after ${after.toFixed(0)} s: ${edits} edits, ${requests} requests, ${comparisons} comparisons, resident ${resident?.toFixed(0) ?? '?'} MB`,
        );
      }
      failure = player.errors[0] ?? server.faults[0] ?? difference;
      if (failure !== undefined) break;
    }
    const { errors, counts } = player;
    return {
      ...{ failure, played, counts: { ...counts }, comparisons, differences, memory },
      ...{ errors: errors.length, faults: server.faults.length },
    };
  } finally {
    await server.quit();
    folders.remove();
  }
}
