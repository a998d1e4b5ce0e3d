/** The terminal and disk of this process. */
import { DISK } from './folder.js';
import type { Io } from './io.js';

const ERASE_LINE = '\r\u001B[2K';

export function processIo(): Io {
  // A reader that has seen enough (`bookmatch show … | head`) is no trouble.
  process.stdout.on('error', () => process.exit(0));
  return {
    write: (text) => void process.stdout.write(text),
    complain: (text) => void process.stderr.write(text),
    colour: process.stdout.isTTY && !process.env['NO_COLOR'],
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
    cwd: process.cwd(),
    files: DISK,
  };
}
