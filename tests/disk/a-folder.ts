/** A folder on the real disk for one test file, and what may stand in it. */
import { mkdirSync, mkdtempSync, readdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll } from 'vitest';

export interface AFolder {
  readonly path: string;
  /** Writes a file, with the folders above it, and answers its full path. */
  put(name: string, content: string | Uint8Array): string;
  /** What stands in it or in a folder of it, hidden files too. */
  names(within?: string): readonly string[];
}

export function aFolder(name: string): AFolder {
  const path = realpathSync(mkdtempSync(join(tmpdir(), `${name}-`)));
  afterAll(() => rmSync(path, { recursive: true, force: true }));
  return {
    path,
    put(file, content) {
      const full = join(path, file);
      mkdirSync(dirname(full), { recursive: true });
      writeFileSync(full, content);
      return full;
    },
    names: (within = '.') => readdirSync(join(path, within)).sort(),
  };
}

/** Root may do what others may not, and mount a small disk. */
export const IS_ROOT = process.getuid?.() === 0;
