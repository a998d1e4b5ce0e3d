/** What a command may touch of the world outside: handed in, so that a test can stand in for a terminal and a disk. */
import type { Translations, Wording } from '../wording/wording.js';
import type { Escaped } from './border.js';
import type { History } from '../disk/git-history.js';
import type { Files } from './disk.js';

export interface Io {
  /** Results for another program, to standard output. */
  readonly write: (text: Escaped) => void;
  /** Results for people, to standard output; escaped on the way out. */
  readonly print: (text: string) => void;
  /** Complaints, to standard error; escaped on the way out. */
  readonly complain: (text: string) => void;
  /** What tells our own colours from what a file says; see `forTerminal`. */
  readonly ink: string;
  /** Whether people read standard output as it comes, in colour. */
  readonly colour: boolean;
  /** Characters in a line of the terminal. */
  readonly columns: number;
  /** Does work that may take a while, and says so to somebody who waits at a terminal. */
  readonly busy: <T>(what: string, work: () => T) => T;
  /** Empty when that folder is no longer there. */
  readonly cwd: string;
  readonly files: Files;
  /** What was there before, where a folder is kept with git. */
  readonly history: History;
  readonly wording: Wording;
}

/** The same before it is known which language to speak. */
export interface Surroundings extends Omit<Io, 'wording' | 'print' | 'ink'> {
  /** Why the results did not all arrive where they were to go, as one plain clause. */
  readonly unwritten?: () => string | undefined;
  /** As the terminal has it: `de_DE.UTF-8`. */
  readonly locale?: string;
  /** The table of a language other than English. */
  readonly translations: (language: string) => Promise<Translations>;
}

/** The maker asked for something that cannot be done; `message` says what to do instead. Ends in exit code 2. */
export class WrongUse extends Error {}

/** A signal ends the program as the system has it, without a word: Ctrl+C with 130. A file being written is finished first. */
export const EXIT = { fine: 0, findings: 1, wrongUse: 2 } as const;
