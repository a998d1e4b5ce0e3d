/** A terminal and a disk made of strings: `await bookmatch(files, 'check')` answers with exit code and output. */
import { type History, NO_REPOSITORY } from '../../language/disk/git-history.js';
import type { Files } from '../../language/cli/disk.js';
import type { Surroundings } from '../../language/cli/io.js';
import { run } from '../../language/cli/run.js';
import { translationsOf } from '../wording/translations.js';

/** Texts by path; a `Trouble` for one that cannot be read. */
export type Disk = Readonly<Record<string, string | Trouble>>;

export class Trouble {
  constructor(readonly why: string) {}
}

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export const HERE = '/bench';

/** A folder that is not kept with git. */
const NO_HISTORY: History = {
  commit: () => Promise.resolve({ trouble: NO_REPOSITORY }),
  texts: () => Promise.resolve({ trouble: NO_REPOSITORY }),
};

export async function bookmatch(disk: Disk, ...args: readonly string[]): Promise<Outcome> {
  return bookmatchIn({}, disk, ...args);
}

export async function bookmatchIn(
  more: Partial<Surroundings>,
  disk: Disk,
  ...args: readonly string[]
): Promise<Outcome> {
  let [out, err] = ['', ''];
  const surroundings: Surroundings = {
    write: (text) => void (out += text),
    complain: (text) => void (err += text),
    colour: false,
    columns: 100,
    busy: (_, work) => work(),
    cwd: HERE,
    files: filesOf(disk),
    history: NO_HISTORY,
    translations: (language) => Promise.resolve(translationsOf(language)),
    ...more,
  };
  const code = await run(args, surroundings);
  return { code, out, err };
}

/** Paths are written from `HERE`. What is written goes into `written`. */
export function filesOf(disk: Disk, written?: Map<string, string>): Files {
  const full = new Map(Object.entries(disk).map(([path, text]) => [`${HERE}/${path}`, text]));
  const isFolder = (path: string) => path === HERE || [...full.keys()].some((file) => file.startsWith(`${path}/`));
  return {
    kindOf: (path) => Promise.resolve(full.has(path) ? 'file' : isFolder(path) ? 'folder' : 'nothing'),
    find: (folder) => {
      const within = [...full.keys()].filter((path) => path.startsWith(`${folder}/`) && path.endsWith('.bookmatch'));
      return Promise.resolve({ files: within.sort(), leftOut: [] });
    },
    read: (path) => {
      const text = full.get(path);
      if (text === undefined) return Promise.resolve({ trouble: 'it is no longer there' });
      return Promise.resolve(text instanceof Trouble ? { trouble: text.why } : { text, bytes: Buffer.from(text) });
    },
    replace: (path, _, text) => {
      full.set(path, text);
      written?.set(path.slice(HERE.length + 1), text);
      return Promise.resolve(undefined);
    },
    create: (path, bytes) => {
      if (full.has(path)) return Promise.resolve('there is a file of this name already');
      full.set(path, Buffer.from(bytes).toString('latin1'));
      written?.set(path.slice(HERE.length + 1), Buffer.from(bytes).toString('latin1'));
      return Promise.resolve(undefined);
    },
    watch: () => Promise.resolve(),
  };
}
