/** The terminal and disk of this process. */
import { join } from 'node:path';
import { isatty } from 'node:tty';
import { GIT } from '../disk/git-history.js';
import { DISK } from './disk.js';
import type { Surroundings } from './io.js';
import { standardOutput } from './standard-output.js';
import { translationsIn } from '../wording/translation-files.js';

const ERASE_LINE = '\r\u001B[2K';

/** Empty when the folder has been taken away under us: Node throws then. */
function whereWeAre(): string {
  try {
    return process.cwd();
  } catch {
    return '';
  }
}

export function processIo(): Surroundings {
  const output = standardOutput();
  // Nobody hears complaints any more: no reason to stop.
  process.stderr.on('error', () => undefined);
  return {
    write: output.write,
    unwritten: output.trouble,
    complain: (text) => void process.stderr.write(text),
    colour: isatty(1) && !process.env['NO_COLOR'],
    columns: process.stdout.columns || 100,
    busy: (what, work) => {
      if (!process.stderr.isTTY) return work();
      process.stderr.write(`${what} …`);
      try {
        return work();
      } finally {
        process.stderr.write(ERASE_LINE);
      }
    },
    cwd: whereWeAre(),
    files: DISK,
    history: GIT,
    locale: process.env['LC_ALL'] || process.env['LC_MESSAGES'] || process.env['LANG'],
    translations: translationsIn(join(import.meta.dirname, 'wording')),
  };
}
