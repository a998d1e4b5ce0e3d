/**
 * Recipe files as they stood at a commit, read through git. Git is started as a program of its own, its arguments one by one
 * and never through a shell; it only reads, runs no hook and no filter, and asks nobody anything.
 */
import { spawn } from 'node:child_process';
import { textOf } from '../recipes/shelf/file-text.js';
import { english } from '../wording/wording.js';
import { ENDING } from './recipe-files.js';
import { MOST_BYTES, type Trouble } from './troubles.js';

export interface Commit {
  /** Its full name, in hexadecimal digits. */
  readonly id: string;
}

export interface History {
  /** The commit a person means by `HEAD~3`, a tag or the first digits of its name. */
  readonly commit: (folder: string, revision: string) => Promise<Commit | Trouble>;
  /** Texts by path, seen from the folder. */
  readonly texts: (folder: string, commit: Commit) => Promise<ReadonlyMap<string, string> | Trouble>;
}

export const NO_GIT = english('git is not installed here, or not found');
export const NO_REPOSITORY = english('the folder is not kept with git');
export const NO_REVISION = english('git knows no such commit');
const FAILED = english('git could not read it');

export const GIT: History = {
  async commit(folder, revision) {
    const there = await git(folder, ['rev-parse', '--is-inside-work-tree']);
    if ('trouble' in there) return there;
    if (there.code !== 0) return { trouble: NO_REPOSITORY };
    // `--end-of-options`: a word that begins with a dash is a name all the same.
    const found = await git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
    if ('trouble' in found) return found;
    const id = found.out.toString('utf8').trim();
    return found.code === 0 && /^[0-9a-f]{40,64}$/.test(id) ? { id } : { trouble: NO_REVISION };
  },

  async texts(folder, { id }) {
    const listed = await git(folder, ['ls-tree', '-r', '-z', '--long', id, '--', '.']);
    if ('trouble' in listed) return listed;
    if (listed.code !== 0) return { trouble: FAILED };
    const files = listed.out.toString('utf8').split('\0').flatMap(fileIn);
    if (files.length === 0) return new Map();
    const read = await git(folder, ['cat-file', '--batch'], files.map(({ object }) => `${object}\n`).join(''));
    if ('trouble' in read) return read;
    if (read.code !== 0) return { trouble: FAILED };
    const texts = contentsOf(read.out).map((bytes) => textOf(bytes).text);
    return new Map(files.flatMap(({ path }, i) => (texts[i] === undefined ? [] : [[path, texts[i]] as const])));
  },
};

/** `100644 blob 1f2e…   1234\tvennick.bookmatch`; links, folders of other repositories and giants are left out. */
function fileIn(line: string): readonly { readonly object: string; readonly path: string }[] {
  const [, object = '', size = '', path = ''] = /^100\d{3} blob ([0-9a-f]+) +(\d+)\t(.*)$/s.exec(line) ?? [];
  return path.endsWith(ENDING) && Number(size) <= MOST_BYTES ? [{ object, path }] : [];
}

/** What `cat-file --batch` answers: a line `object type size`, so many bytes, and a line feed, again and again. */
function contentsOf(out: Buffer): readonly Buffer[] {
  const all: Buffer[] = [];
  for (let at = 0; at < out.length;) {
    const end = out.indexOf(0x0a, at);
    const size = Number(out.subarray(at, end).toString('utf8').split(' ')[2]);
    if (end < 0 || !Number.isInteger(size)) break;
    all.push(out.subarray(end + 1, end + 1 + size));
    at = end + 1 + size + 1;
  }
  return all;
}

interface Answer {
  readonly code: number;
  readonly out: Buffer;
}

function git(folder: string, args: readonly string[], input = ''): Promise<Answer | Trouble> {
  return new Promise((resolve) => {
    const child = spawn('git', ['--no-pager', '-c', 'core.fsmonitor=false', '-C', folder, ...args], {
      shell: false,
      windowsHide: true,
      env: { ...process.env, GIT_TERMINAL_PROMPT: '0', GIT_OPTIONAL_LOCKS: '0', GIT_NO_LAZY_FETCH: '1', LC_ALL: 'C' },
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    const pieces: Buffer[] = [];
    child.on('error', () => {
      resolve({ trouble: NO_GIT });
    });
    child.stdout.on('data', (piece: Buffer) => pieces.push(piece));
    child.on('close', (code) => {
      resolve({ code: code ?? 1, out: Buffer.concat(pieces) });
    });
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
  });
}
