/** `bookmatch check`: every finding of folders or files. */
import { resolve } from 'node:path';
import { atLeast, type Severity } from '../checks/finding.js';
import { inLine } from '../wording/visible.js';
import type { Wording } from '../wording/wording.js';
import type { Escaped } from './border.js';
import { findingsForGitHub } from './text/github.js';
import { isTold, type Talk } from '../checks/talk.js';
import { whyUnread } from '../disk/troubles.js';
import { EXIT, type Io, WrongUse } from './io.js';
import { findingsAsJson } from './json/findings-json.js';
import { Opener } from './open-shop.js';
import { findingsAsSarif } from './json/sarif.js';
import { scopesOf } from './scopes.js';
import { findingsAsText } from './text/findings-text.js';
import { styleFor } from './text/style.js';
import { type CheckReport, findingsOfFiles } from './told-findings.js';

export const CHECK_FORMATS = ['text', 'json', 'sarif', 'github'] as const;

export interface CheckOptions {
  readonly format: (typeof CHECK_FORMATS)[number];
  readonly failOn: Severity;
  readonly watch?: boolean;
  readonly in?: string;
  /** For people, the usual when not said; a program is told everything. */
  readonly talk?: Talk;
}

export async function check(paths: readonly string[], options: CheckOptions, io: Io): Promise<number> {
  const opener = new Opener(io);
  if (!options.watch) return checkOnce(paths, options, opener, io);
  let last: number | undefined;
  let looked = () => {};
  let queue = new Promise<void>((go) => (looked = go));
  const again = async () => {
    if (options.format === 'text') io.print(`\n${'─'.repeat(Math.min(io.columns, 60))}\n`);
    try {
      last = await checkOnce(paths, options, opener, io);
    } catch (error) {
      // A folder that is being moved about is not the end of a watch.
      io.complain(`${inLine(error instanceof Error ? error.message : String(error))}\n`);
    }
  };
  const folders = await foldersToWatch(paths, options, io);
  const { say, text } = io.wording;
  const stop = new AbortController();
  // Watched from before the first look, so that what is saved meanwhile is looked at again.
  const watching = io.files.watch(
    folders,
    () => {
      queue = queue.then(again);
    },
    stop.signal,
  );
  watching.catch(() => undefined);
  try {
    last = await checkOnce(paths, options, opener, io);
  } finally {
    if (last === undefined) stop.abort();
    looked();
  }
  try {
    await watching;
  } catch (error) {
    throw new WrongUse(say`The folder cannot be watched: ${text(whyUnread(error))}.`);
  }
  await queue;
  return last;
}

async function checkOnce(paths: readonly string[], options: CheckOptions, opener: Opener, io: Io): Promise<number> {
  const scopes = await scopesOf(paths, options.in, opener, io);
  const findings = scopes.flatMap(({ shop, uris }) => findingsOfFiles(shop, uris));
  const files = scopes.reduce((sum, { uris }) => sum + uris.length, 0);
  const report = { findings, files };
  if (options.format === 'text') io.print(findingsAsText(report, styleFor(io), options.talk ?? 'usual'));
  else io.write(RENDERERS[options.format](narrowed(report, options.talk ?? 'everything'), io.wording));
  if (scopes.some(({ shop }) => shop.unread > 0)) return EXIT.wrongUse;
  return findings.some(({ severity }) => atLeast(severity, options.failOn)) ? EXIT.findings : EXIT.fine;
}

const RENDERERS: Readonly<
  Record<Exclude<CheckOptions['format'], 'text'>, (report: CheckReport, wording: Wording) => Escaped>
> = {
  json: findingsAsJson,
  sarif: findingsAsSarif,
  github: findingsForGitHub,
};

async function foldersToWatch(paths: readonly string[], options: CheckOptions, io: Io): Promise<readonly string[]> {
  const folders = new Set<string>();
  for (const path of [...paths, ...(options.in === undefined ? [] : [options.in])]) {
    const full = resolve(io.cwd, path);
    folders.add((await io.files.kindOf(full)) === 'folder' ? full : io.cwd);
  }
  return folders.size > 0 ? [...folders] : [io.cwd];
}

function narrowed({ findings, files }: CheckReport, talk: Talk): CheckReport {
  return { findings: findings.filter(({ severity }) => isTold(severity, talk)), files };
}
