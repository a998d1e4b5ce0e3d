/**
 * `npm run soak -- [--seconds N] [--seed S] [--shop FOLDER | --recipes N] [--replay FILE]`
 *
 * Plays at being a restless maker to the built server, in a process of its own, and holds it against a fresh one every so
 * often. The actions follow from the seed. The last four lines say how it went; a failure leaves its smallest case under
 * .cache/ and how to play it again.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { madeShop } from '../scale/made-shop.js';
import type { Action } from './action.js';
import { type Files, type Outcome, replay, soak } from './run.js';
import { smallest } from './shrink.js';

const EXAMPLE = 'examples/hollin-reach';
/** Time for finding a smallest case, s. */
const SHRINKING = 120;

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string' },
    shop: { type: 'string' },
    recipes: { type: 'string' },
    replay: { type: 'string' },
  },
});

interface Case {
  readonly seed: number;
  readonly shop: string;
  readonly failure: string;
  readonly actions: readonly Action[];
}

process.exitCode = await (values.replay === undefined ? soaked() : replayed(values.replay));

async function soaked(): Promise<number> {
  const seconds = number('seconds', values.seconds);
  const seed = values.seed === undefined ? 1 + Math.floor(Math.random() * 1e9) : number('seed', values.seed);
  const shop = values.recipes === undefined ? (values.shop ?? EXAMPLE) : `${number('recipes', values.recipes)} recipes`;
  const files = filesOf(shop);
  console.log(`soak: seed ${seed}, ${seconds} s, ${shop}`);
  const outcome = await soak(files, seed, seconds, (words) => {
    console.log(words);
  });
  if (outcome.failure === undefined) {
    summary(outcome, seed, shop, 'nothing went wrong');
    return 0;
  }
  console.log(`\n${outcome.failure}\n`);
  const file = join('.cache', `soak-${seed}.json`);
  const keep = (actions: readonly Action[], failure: string) => {
    mkdirSync('.cache', { recursive: true });
    writeFileSync(file, `${JSON.stringify({ seed, shop, failure, actions } satisfies Case, null, 1)}\n`);
  };
  keep(outcome.played, outcome.failure);
  const sort = sortOf(outcome.failure);
  const budget = Date.now() + 1000 * Math.min(SHRINKING, Math.max(20, seconds));
  const actions = await smallest(
    outcome.played,
    async (some) => {
      const { failure } = await replay(files, some);
      const isSame = failure !== undefined && sortOf(failure) === sort;
      if (isSame) keep(some, failure);
      return isSame;
    },
    budget,
  );
  summary(outcome, seed, shop, `FAILED; ${actions.length} actions show it: npm run soak -- --replay ${file}`);
  return 1;
}

async function replayed(file: string): Promise<number> {
  const { shop, actions } = JSON.parse(readFileSync(file, 'utf8')) as Case;
  const outcome = await replay(filesOf(shop), actions);
  if (outcome.failure !== undefined) console.log(`\n${outcome.failure}\n`);
  console.log(outcome.failure === undefined ? 'nothing went wrong' : 'FAILED');
  return outcome.failure === undefined ? 0 : 1;
}

function summary(outcome: Outcome, seed: number, shop: string, verdict: string): void {
  const { counts, comparisons, errors, faults, differences, memory } = outcome;
  const at = (share: number) => memory[Math.floor(share * (memory.length - 1))];
  const told = [0, 0.25, 0.5, 0.75, 1].map((share) => at(share)).filter((one) => one !== undefined);
  const samples = [...new Set(told)].map(
    ({ after, resident }) => `${resident.toFixed(0)} MB after ${after.toFixed(0)} s`,
  );
  console.log(
    `soak: seed ${seed}, ${shop}: ${counts.actions} actions, ${counts.edits} edits, ${counts.requests} requests, ${comparisons} comparisons with a fresh server`,
  );
  console.log(`error answers ${errors}, faults ${faults}, differences ${differences}`);
  console.log(`resident: ${samples.join(', ') || 'not known here'}`);
  console.log(verdict);
}

/** A smaller case must fail in the same way: by the same request or publication, whichever file it was about. */
function sortOf(failure: string): string {
  return /^\S+/.exec(failure)?.[0] ?? '';
}

function filesOf(shop: string): Files {
  const recipes = /^(\d+) recipes$/.exec(shop);
  if (recipes) {
    const made = madeShop(Math.ceil(Number(recipes[1]) / 12), 12);
    return new Map([...made].map(([uri, text]) => [uri.slice(uri.lastIndexOf('/') + 1), text]));
  }
  const names = readdirSync(shop).filter((name) => name.endsWith('.bookmatch'));
  return new Map(names.map((name) => [name, readFileSync(join(shop, name), 'utf8')]));
}

function number(name: string, written: string): number {
  const value = Number(written);
  if (!Number.isFinite(value) || value < 0) throw new Error(`--${name} takes a number, not ${written}`);
  return value;
}
