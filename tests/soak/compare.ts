/** A server that has been through edits beside a fresh one with the same texts: both must come to say the same. */
import { setTimeout as wait } from 'node:timers/promises';
import { Dice } from './dice.js';
import { differenceOf, observe, type Tokens } from './observe.js';
import { openIn, Player, positionAt } from './player.js';
import { OF_FOLDER, ofFile, ofFileSolved, ofInstrument, ofPlace, type Question } from './questions.js';
import { ServerProcess } from './server-process.js';
import type { InstrumentEntry } from '../../language/server/protocol.js';
import { ListInstruments } from '../../language/server/protocol.js';

/** How long two servers may take to come to rest, ms. */
const PATIENCE = 40_000;
const SOLVER_PATIENCE = 1500;
/** More files than these are looked at by turns. */
const MOST_FILES = 14;

/** In words, what differs; undefined when nothing does. `turn` says which files, places and instruments are looked at. */
export async function compareWithFresh(player: Player, turn: number, tokens: Tokens): Promise<string | undefined> {
  await player.answered();
  if (player.server.hasEnded) return undefined;
  const { folders } = player;
  const opened = [folders.first, ...(player.isSecondOpen ? [folders.second] : [])].map((path) => folders.uri(path));
  const server = await ServerProcess.start(opened);
  const fresh = new Player(server, folders);
  try {
    for (const [path, file] of player.open) openIn(server, folders.uri(path), file);
    const until = Date.now() + PATIENCE;
    const freshTokens: Tokens = new Map();
    while (server.rounds === 0 && Date.now() < until) await wait(20);
    const questions = await questionsFor(player, fresh, turn);
    // The solver is waited for now and then; otherwise what it has not delivered is left out.
    const patience = turn % 5 === 4 ? PATIENCE : Math.min(PATIENCE, SOLVER_PATIENCE);
    const start = Date.now();
    let pause = 20;
    for (;;) {
      const b = await observe(fresh, questions, freshTokens);
      const a = await observe(player, questions, tokens);
      const difference = differenceOf(a, b, Date.now() - start > patience);
      if (difference === undefined) return undefined;
      const isOver = Date.now() > until || player.server.hasEnded;
      if (isOver) return difference;
      await wait(pause);
      pause = Math.min(1000, pause * 2);
    }
  } finally {
    player.errors.push(...fresh.errors.map((error) => `a fresh server: ${error}`));
    player.server.faults.push(...server.faults.map((fault) => `a fresh server: ${fault}`));
    await server.quit();
  }
}

async function questionsFor(player: Player, fresh: Player, turn: number): Promise<readonly Question[]> {
  const dice = new Dice(turn + 1);
  const { folders } = player;
  const isKnown = (path: string) => player.open.has(path) || player.isSecondOpen || !path.startsWith(folders.second);
  const all = player.paths().filter(isKnown);
  const first = dice.below(all.length);
  const paths = [...all.slice(first), ...all.slice(0, first)].slice(0, MOST_FILES);
  const places = [0, 1, 2, 3].flatMap(() => {
    const path = dice.one(all);
    const text = player.open.get(path)?.text ?? folders.read(path);
    return ofPlace(folders.uri(path), positionAt(text, dice.below(text.length + 1)));
  });
  const asked = paths.flatMap((path) => ofFile(folders.uri(path)));
  // One file's plates are some seconds of the solver's time.
  const solved = ofFileSolved(folders.uri(dice.one(all)));
  return [...asked, ...solved, ...OF_FOLDER, ...places, ...(await panels(fresh, dice))];
}

async function panels(fresh: Player, dice: Dice): Promise<readonly Question[]> {
  const entries = ((await fresh.ask({ method: ListInstruments.method, params: undefined })) ?? []) as InstrumentEntry[];
  if (entries.length === 0) return [];
  const one = dice.one(entries);
  const model = entries.find(({ kind }) => kind === 'model')?.name ?? '';
  const all = ofInstrument(one.name, one.parent ?? dice.one(entries).name, model);
  return [dice.one(all), dice.one(all)];
}
