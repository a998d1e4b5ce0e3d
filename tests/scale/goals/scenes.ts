/** What is timed: each scene plays a maker at one or two servers, turn about, and hands back what it took. */
import { readFileSync, rmSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { SERVER_FLAGS } from '../../../extension/server-flags.js';
import { recipeName } from '../made-shop.js';
import { yamlCheck, yamlServer } from './peers.js';
import { type ShopOnDisk, writeShop, writeYamlShop } from './shop-on-disk.js';
import { positionOf, type Program, TimedServer } from './timed-server.js';

/** The times of ours and, where there is one, of the peer, in the unit of the row. */
export interface Row {
  readonly figure: string;
  readonly goal: string;
  readonly unit: 'ms' | 's' | 'MB';
  readonly ours: readonly number[];
  readonly peer?: readonly number[];
  readonly note?: string;
}

const DEPTH = 12;
const OURS: Program = {
  name: 'bookmatch',
  arguments: [...SERVER_FLAGS, '--expose-gc', 'dist/server.cjs'],
  languageId: 'bookmatch',
};

/** A server that has read its folder and one file that somebody types in. */
interface Desk {
  readonly server: TimedServer;
  readonly shop: ShopOnDisk;
  /** s, from the start of the process to all findings */
  readonly loaded: number;
  /** MB */
  readonly resident: number;
}

async function ours(shop: ShopOnDisk, opened: string): Promise<Desk> {
  const server = await TimedServer.start(OURS, shop.uri);
  const done = server.heard('round');
  server.open(shop.uriOf(opened), shop.texts.get(shop.uriOf(opened))!);
  await done;
  return { server, shop, loaded: await timeToRest(server), resident: server.resident };
}

/** A server that knows open files only: it is shown every one. */
async function peers(shop: ShopOnDisk & { readonly schema: string }): Promise<Desk> {
  const server = await TimedServer.start(yamlServer(shop.schema), shop.uri);
  const told = [...shop.texts].map(async ([uri, text]) => {
    const findings = server.heard('findings', uri);
    server.open(uri, text);
    await findings;
  });
  await Promise.all(told);
  const desk: Desk = { server, shop, loaded: await timeToRest(server), resident: server.resident };
  // One that does not check would be easy to beat.
  const wrong = shop.uriOf('wrong');
  const findings = server.heard('findings', wrong);
  server.open(wrong, `${[...shop.texts.values()][0]!}colr: red\n`);
  if ((await findings) === 0) throw new Error(`${server.program.name} does not check: a slip was not found.`);
  return desk;
}

async function timeToRest(server: TimedServer): Promise<number> {
  const { cpu } = await server.rest();
  return cpu / 1e6;
}

/** A digit typed behind a number, or taken out again; ms until the findings of that file, and until all that follow. */
async function keystroke({ server, shop }: Desk, file: string, behind: string, isOut: boolean) {
  const uri = shop.uriOf(file);
  const at = shop.texts.get(uri)!.indexOf(behind) + behind.length;
  const { cpu: before } = await server.rest();
  const isOurs = server.program === OURS;
  const done = isOurs ? server.heard('round') : server.heard('findings', uri);
  server.type(uri, at, isOut ? 1 : 0, isOut ? '' : '1');
  await done;
  const { written } = await server.rest();
  const own = written.find(({ name, uri: about }) => name.endsWith('publishDiagnostics') && about === uri);
  const all = written.findLast(({ name }) => !/^\d/.test(name));
  if (!own || !all) throw new Error(`${server.program.name} said nothing of ${uri}`);
  return { own: (own.cpu - before) / 1000, all: (all.cpu - before) / 1000 };
}

/** The same with a request sent right behind it; ms until its answer. */
async function behindKeystroke(desk: Desk, file: string, behind: string, isOut: boolean, method: string) {
  const { server, shop } = desk;
  const uri = shop.uriOf(file);
  const text = shop.texts.get(uri)!;
  const at = text.indexOf(behind) + behind.length;
  const { cpu: before } = await server.rest();
  server.type(uri, at, isOut ? 1 : 0, isOut ? '' : '1');
  // On the word before the number: there is something to be said of it in both.
  const position = positionOf(text, text.indexOf(behind) + 2);
  const id = await server.ask(method, { textDocument: { uri }, position });
  const { written } = await server.rest();
  const answered = written.find(({ name }) => name === id);
  if (!answered) throw new Error(`${server.program.name}: answer ${id} was not seen`);
  return (answered.cpu - before) / 1000;
}

/** The root of a chain as it is typed in: a word nobody knows stands behind the number, so that its findings move with it. */
const TYPED = 'thickness: 2.80';
const ASIDE = '   colr: red';

function withAside(shop: ShopOnDisk, file: string, behind: string, aside: string): ShopOnDisk {
  const uri = shop.uriOf(file);
  const text = shop.texts.get(uri)!.replace(behind, (found) => `${found}${aside}`);
  return { ...shop, texts: new Map(shop.texts).set(uri, text) };
}

/** 500 recipes, one file each: start, keystrokes, requests behind a keystroke, resident memory. */
export async function fiveHundred(withPeer: boolean, strokes: number): Promise<readonly Row[]> {
  const file = recipeName(3, 0);
  const shop = withAside(writeShop('500', 42, DEPTH, 'by recipe'), file, 'rig: r2', ASIDE);
  const yaml = withPeer ? writeYamlShop('500-yaml', 42, DEPTH) : undefined;
  const starts: Desk[] = [];
  const peerStarts: Desk[] = [];
  for (let run = 0; run < 3; run++) {
    starts.at(-1)?.server.stop();
    peerStarts.at(-1)?.server.stop();
    starts.push(await ours(shop, file));
    if (yaml) peerStarts.push(await peers(yaml));
  }
  const desk = starts.at(-1)!;
  const peer = peerStarts.at(-1);
  const times = { own: [] as number[], all: [] as number[] };
  const peerTimes = { own: [] as number[], all: [] as number[] };
  for (let stroke = 0; stroke < 40; stroke++) {
    const mine = await keystroke(desk, file, TYPED, stroke % 2 === 1);
    times.own.push(mine.own);
    times.all.push(mine.all);
    if (peer) peerTimes.own.push((await keystroke(peer, file, TYPED, stroke % 2 === 1)).own);
  }
  const requests = [
    ['hover', 'textDocument/hover'],
    ['completion', 'textDocument/completion'],
    ['semantic tokens', 'textDocument/semanticTokens/full'],
  ] as const;
  const asked: Row[] = [];
  for (const [what, method] of requests) {
    const isKnownToPeer = what !== 'semantic tokens';
    const mine: number[] = [];
    const theirs: number[] = [];
    for (let stroke = 0; stroke < 20; stroke++) {
      mine.push(await behindKeystroke(desk, file, TYPED, stroke % 2 === 1, method));
      if (peer && isKnownToPeer) theirs.push(await behindKeystroke(peer, file, TYPED, stroke % 2 === 1, method));
    }
    const note = isKnownToPeer ? undefined : 'the peer has none';
    asked.push(row(`500 recipes: ${what} behind a keystroke`, '≤ 6 ms', 'ms', { ours: mine, peer: theirs, note }));
  }
  for (let stroke = 0; stroke < strokes; stroke++) {
    await typedFast(desk, file, stroke % 2 === 1);
    if (peer) await typedFast(peer, file, stroke % 2 === 1);
  }
  await desk.server.rest();
  const typed = row(`500 recipes: resident after ${strokes} keystrokes more`, '≤ 1.2 ×', 'MB', {
    ours: [desk.server.resident],
    peer: peer ? [peer.server.resident] : [],
  });
  desk.server.stop();
  peer?.server.stop();
  return [
    row('500 recipes: keystroke to own findings', '≤ 1.0 ×', 'ms', { ours: times.own, peer: peerTimes.own }),
    row('500 recipes: start to all findings', '≤ 1.0 ×', 's', {
      ours: starts.map(({ loaded }) => loaded),
      peer: peerStarts.map(({ loaded }) => loaded),
    }),
    row('500 recipes: resident after the start', '≤ 1.2 ×', 'MB', {
      ours: starts.map(({ resident }) => resident),
      peer: peerStarts.map(({ resident }) => resident),
    }),
    typed,
    ...asked,
    row('500 recipes: keystroke to all findings, 11 dependants', '≤ 20 ms', 'ms', { ours: times.all }),
  ];
}

/** A keystroke without waiting for the server to come to rest. */
async function typedFast({ server, shop }: Desk, file: string, isOut: boolean): Promise<void> {
  const uri = shop.uriOf(file);
  const at = shop.texts.get(uri)!.indexOf(TYPED) + TYPED.length;
  const done = server.program === OURS ? server.heard('round') : new Promise((go) => void setTimeout(go, 5));
  server.type(uri, at, isOut ? 1 : 0, isOut ? '' : '1');
  await done;
}

export async function chainOf200(): Promise<readonly Row[]> {
  const file = recipeName(0, 0);
  const desk = await ours(withAside(writeShop('chain', 1, 200, 'by recipe'), file, 'rig: r2', ASIDE), file);
  const { all } = await strokesOf(desk, file, TYPED, 20);
  desk.server.stop();
  return [row('a chain of 200: keystroke to all findings', '≤ 60 ms', 'ms', { ours: all })];
}

export async function eightThousand(): Promise<readonly Row[]> {
  const file = recipeName(300, 0);
  const desk = await ours(withAside(writeShop('8000', 667, DEPTH, 'by recipe'), file, 'rig: r2', ASIDE), file);
  const { own, all } = await strokesOf(desk, file, TYPED, 20);
  const { heap } = await desk.server.told('heap');
  desk.server.stop();
  return [
    row('8,000 recipes: keystroke to own findings', '≤ 15 ms', 'ms', { ours: own }),
    row('8,000 recipes: keystroke to all findings, 11 dependants', '≤ 45 ms', 'ms', { ours: all }),
    row('8,000 recipes: start to all findings', '≤ 8 s', 's', { ours: [desk.loaded] }),
    row('8,000 recipes: heap in use', '≤ 350 MB', 'MB', { ours: [heap / 1e6] }),
  ];
}

/** In a recipe half-way down the file. */
export async function oneFile(): Promise<readonly Row[]> {
  const head = `recipe ${recipeName(83, 0)} for vennick {\n  because "The base of chain 83."\n  top { wood: sitka-31   `;
  const desk = await ours(
    withAside(writeShop('one-file', 167, DEPTH, 'in one file'), 'all', `${head}${TYPED} mm`, ASIDE),
    'all',
  );
  const { own, all } = await strokesOf(desk, 'all', `${head}${TYPED}`, 20);
  desk.server.stop();
  return [
    row('2,000 recipes in one file: keystroke to its findings', '≤ 30 ms', 'ms', { ours: own }),
    row('2,000 recipes in one file: start to all findings', '', 's', {
      ours: [desk.loaded],
      note: `then ${Math.round(Math.max(...all))} ms at most`,
    }),
  ];
}

async function strokesOf(desk: Desk, file: string, behind: string, count: number) {
  const own: number[] = [];
  const all: number[] = [];
  for (let stroke = 0; stroke < count; stroke++) {
    const times = await keystroke(desk, file, behind, stroke % 2 === 1);
    own.push(times.own);
    all.push(times.all);
  }
  return { own, all };
}

export function terminal(withPeer: boolean): readonly Row[] {
  const shops = [
    { recipes: '500', shop: writeShop('500', 42, DEPTH, 'by recipe'), goal: '≤ 1.3 s', chains: 42 },
    { recipes: '2,000', shop: writeShop('2000', 167, DEPTH, 'by recipe'), goal: '≤ 3.5 s', chains: 167 },
  ];
  return shops.map(({ recipes, shop, goal, chains }) => {
    const yaml = withPeer ? writeYamlShop(`${chains}-check`, chains, DEPTH) : undefined;
    const mine: number[] = [];
    const theirs: number[] = [];
    for (let run = 0; run < 3; run++) {
      mine.push(timeOf(['dist/bookmatch.mjs', 'check', shop.folder], [0, 1]));
      if (yaml) theirs.push(timeOf(yamlCheck(yaml.folder), [0]));
    }
    return row(`bookmatch check, ${recipes} recipes`, goal, 's', {
      ours: mine,
      peer: theirs,
      note: 'against js-yaml and ajv',
    });
  });
}

/** s that a program took that ends by itself. */
function timeOf(program: readonly string[], codes: readonly number[]): number {
  const into = join(tmpdir(), 'bookmatch-bench-told.txt');
  rmSync(into, { force: true });
  const { status, stderr } = spawnSync(
    process.execPath,
    ['--require', resolve('tests/scale/goals/tell.cjs'), ...program],
    {
      env: { ...process.env, TELL_INTO: into },
      encoding: 'utf8',
      maxBuffer: 1e9,
    },
  );
  if (status === null || !codes.includes(status))
    throw new Error(`${program.join(' ')} ended with ${status}: ${stderr}`);
  return Number(readFileSync(into, 'utf8')) / 1e6;
}

function row(figure: string, goal: string, unit: Row['unit'], { ours, peer = [], note }: Times): Row {
  return { figure, goal, unit, ours, ...(peer.length > 0 ? { peer } : {}), ...(note === undefined ? {} : { note }) };
}

interface Times {
  readonly ours: readonly number[];
  readonly peer?: readonly number[];
  readonly note?: string | undefined;
}
