/** How each statement is written, for the message about one that does not read. */
import { type Token, isText, isWord, kindOf } from './token.js';
import { english } from '../wording/wording.js';

export interface Example {
  takes(next: Token | undefined): boolean;
  readonly message: string;
  /** The message fits whatever else is wrong with the statement. */
  readonly whole?: boolean;
}

/** The words a statement begins with, and how it goes on. */
export const EXAMPLES: ReadonlyMap<string, Example> = new Map(
  Object.entries<Example>({
    per: { takes: isText, message: english('After `per` the source is expected, in double quotes.') },
    because: { takes: isText, message: english('After `because` a text in double quotes is expected.') },
    note: { takes: isText, message: english('After `note` a text in double quotes is expected.') },
    together: {
      takes: isText,
      message: english('After `together` say why in double quotes, then the changes in { }.'),
      whole: true,
    },
    rework: {
      takes: isText,
      message: english('After `rework` say what was done in double quotes, then the changes in { }.'),
      whole: true,
    },
    add: { takes: isWord, message: english('After `add` the part to add is expected: `add bracing.finger-3 { … }`.') },
    drop: {
      takes: isWord,
      message: english('After `drop` the part to leave out is expected: `drop bracing.finger-3`.'),
    },
    hold: {
      takes: isWord,
      message: english('A hold is written `hold top.stiffness.along by top.thickness`.'),
      whole: true,
    },
    expect: {
      takes: isWord,
      message: english('An expectation is written `expect top.mass: below 190 g`.'),
      whole: true,
    },
    with: {
      takes: (next) => isWord(next) || kindOf(next) === 'NUMBER',
      message: english('After `with` the name of a set of appointments is expected.'),
    },
    allow: {
      takes: (next) => kindOf(next) === 'NUMBER',
      message: english('An allowance is written `allow 2 because "…"`.'),
    },
    accept: { takes: isWord, message: english('An acceptance is written `accept stale-change because "…"`.') },
    request: {
      takes: (next) => kindOf(next) === 'DATE',
      message: english('A request is written `request 2026-03-14 { change nut.width: 44.5 mm -> 46 mm }`.'),
    },
    reading: {
      takes: (next) => isWord(next) || isText(next) || kindOf(next) === 'NUMBER' || kindOf(next) === 'DATE',
      message: english('A reading is written `reading day-1 { stage: strung   resonance.top: 183 Hz }`.'),
    },
    mode: {
      takes: (next) => kindOf(next) === '(',
      message: english('A mode is named by its nodal lines, those along the grain first: `mode (2,1): 178 Hz`.'),
      whole: true,
    },
    vary: {
      takes: (next) => next?.image === 'at',
      message: english('The limit is written `vary at most 1`.'),
      whole: true,
    },
  }),
);
