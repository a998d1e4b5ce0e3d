/**
 * What somebody does with an editor and a disk, as plain data: it can be written down, played again, and played with
 * some of it left out. Files and places are numbers, counted round among those there are when its turn comes.
 */
import type { Dice } from './dice.js';
import { bit } from './typing.js';

export type Action =
  /** Opens a file with the text on the disk, or with none if it is not there. */
  | { readonly do: 'open'; readonly file: number }
  | { readonly do: 'close'; readonly file: number }
  /** Replaces `cut` characters at each place by a text, all told in one message. */
  | { readonly do: 'edit'; readonly file: number; readonly changes: readonly Change[]; readonly skips?: number }
  /** The same one letter at a time, each told by itself. */
  | { readonly do: 'type'; readonly file: number; readonly at: number; readonly text: string }
  /** Tells a whole new text, made from the present one. */
  | { readonly do: 'rewrite'; readonly file: number; readonly seed: number }
  /** Changes one number, as makers do most. */
  | { readonly do: 'number'; readonly file: number; readonly seed: number }
  /** Goes back to the text as it was that many edits ago. */
  | { readonly do: 'undo'; readonly file: number; readonly steps: number }
  /** Tells an edit with a version that is past: it must be left out. */
  | { readonly do: 'late'; readonly file: number; readonly text: string }
  /** Saves an open file. */
  | { readonly do: 'save'; readonly file: number }
  /** Another program writes, makes, removes or renames a file. */
  | { readonly do: 'write'; readonly file: number; readonly seed: number; readonly as: 'text' | 'latin-1' | 'mark' }
  | { readonly do: 'create'; readonly name: number; readonly from: number }
  | { readonly do: 'delete'; readonly file: number }
  | { readonly do: 'rename'; readonly file: number; readonly name: number }
  /** Opens the second folder, or closes it. */
  | { readonly do: 'folder'; readonly isOpen: boolean }
  /** Asks something and does not wait for it; withdraws it at once, or not. */
  | {
      readonly do: 'ask';
      readonly file: number;
      readonly what: number;
      readonly at: number;
      readonly isWithdrawn: boolean;
    };

export interface Change {
  readonly at: number;
  readonly cut: number;
  readonly text: string;
}

const MOST = 1_000_000;

/** How often each is drawn. */
const WEIGHTS: readonly (readonly [Action['do'], number])[] = [
  ...([
    ['open', 4],
    ['close', 2],
    ['edit', 26],
    ['type', 6],
    ['rewrite', 5],
    ['number', 14],
    ['undo', 12],
  ] as const),
  ...([
    ['late', 2],
    ['save', 2],
    ['write', 4],
    ['create', 2],
    ['delete', 1],
    ['rename', 1],
    ['folder', 1],
  ] as const),
  ...([['ask', 18]] as const),
];

const DRAWN = WEIGHTS.flatMap(([what, weight]) => Array.from({ length: weight }, () => what));

export function drawAction(dice: Dice): Action {
  const any = () => dice.below(MOST);
  const file = any();
  const what = dice.one(DRAWN);
  switch (what) {
    case 'open':
    case 'close':
    case 'save':
    case 'delete':
      return { do: what, file };
    case 'edit': {
      const count = dice.below(8) === 0 ? 2 + dice.below(3) : 1;
      const change = () => ({
        at: any(),
        cut: dice.below(3) === 0 ? dice.below(12) : 0,
        text: dice.below(4) === 0 ? '' : bit(dice),
      });
      const changes = Array.from({ length: count }, change).map((one) =>
        one.text === '' && one.cut === 0 ? { ...one, cut: 1 } : one,
      );
      return { do: what, file, changes, ...(dice.below(6) === 0 ? { skips: dice.below(5) } : {}) };
    }
    case 'type':
      return { do: what, file, at: any(), text: bit(dice) + bit(dice) };
    case 'rewrite':
    case 'number':
      return { do: what, file, seed: any() };
    case 'undo':
      return { do: what, file, steps: 1 + dice.below(4) };
    case 'late':
      return { do: what, file, text: bit(dice) };
    case 'write':
      return { do: what, file, seed: any(), as: dice.one(['text', 'text', 'text', 'mark', 'latin-1'] as const) };
    case 'create':
      return { do: what, name: dice.below(6), from: any() };
    case 'rename':
      return { do: what, file, name: dice.below(6) };
    case 'folder':
      return { do: what, isOpen: dice.below(2) === 0 };
    case 'ask':
      return { do: what, file, what: any(), at: any(), isWithdrawn: dice.below(3) === 0 };
  }
}
