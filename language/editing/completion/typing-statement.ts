/** At which point of which statement somebody is typing, told from the words of the line before the cursor. */
import { DEFINITION_KINDS, type DefinitionKind } from '../../facts/facts.js';

export type At =
  /** Outside any definition, at the beginning of one. */
  | { readonly kind: 'file' }
  /** Behind `is`, `for`, `from`, `of` in a head. */
  | { readonly kind: 'target'; readonly of: DefinitionKind; readonly relation: string }
  /** Behind the name in a head. */
  | { readonly kind: 'relation'; readonly of: DefinitionKind }
  /** At the beginning of a statement; `afterValue`: behind a value on the same line. */
  | { readonly kind: 'statement'; readonly afterValue: boolean }
  /** Behind `change`, `add`, `drop`, `hold`, `expect`, `with`, `accept`. */
  | { readonly kind: 'after'; readonly keyword: string }
  /** Where the statement goes on with one of these words. */
  | { readonly kind: 'joint'; readonly words: readonly Joint[] }
  /** Behind `hold q [at v] by`. */
  | { readonly kind: 'hold-by'; readonly quantity: string }
  /** Where a value is due. */
  | {
      readonly kind: 'value';
      readonly path: string;
      readonly side: Side;
      /** What is written of it already: the beginning of a list, a point, a limit. */
      readonly begun: string;
    }
  /** Behind a number: its unit. `step`: the number is what a change goes up or down by. */
  | { readonly kind: 'unit'; readonly path: string; readonly step: boolean }
  /** In a comment or a text, or where nothing is known: nothing to offer. */
  | { readonly kind: 'prose' };

/** Which value: of a property, left or right of the arrow of a change, of an expectation, of a hold. */
export type Side = 'plain' | 'old' | 'new' | 'expected' | 'held';

export type Joint = 'by' | 'at' | 'at most' | 'because';

/** In the head of a definition; undefined where this is no head. */
export function atInHead(before: string): At | undefined {
  const head = HEAD.exec(before);
  if (!head || before.includes('{')) return undefined;
  const of = head[1] as DefinitionKind;
  return head[2] ? { kind: 'target', of, relation: head[2] } : { kind: 'relation', of };
}

/** In a body, with the half-typed word cut off. */
export function atInBody(before: string, word: string): At {
  const { rest, afterValue } = currentStatement(before);
  const typed = rest.slice(0, rest.length - word.length);
  return /^\s*$/.test(typed) ? { kind: 'statement', afterValue } : inStatement(typed);
}

const NUMBER = String.raw`[-−–+]?(?:\d+[ -]\d+/\d+|\d+/\d+|\d*\.?\d+)`;
const QUANTITY = String.raw`${NUMBER}(?:["'″′]|\s*[^\s\d"{}:,]+)`;
const PATH = String.raw`[\p{L}\p{N}_.*-]+`;
const HEAD = new RegExp(String.raw`^\s*(${DEFINITION_KINDS.join('|')})\s+\S+\s+(?:(is|for|from|of)\s+)?\S*$`, 'u');

/** One finished `path: value`, so that what follows on the same line starts a statement of its own. */
const FINISHED = new RegExp(
  String.raw`^\s*${PATH}\s*:\s*(?:"[^"]*"|\([^)]*\)|${QUANTITY}(?:\s+x\s+${QUANTITY})*|\d{4}-\d\d-\d\d|\p{L}[\p{L}\p{N}_.-]*)\s+(?=\S*\s*$|[\p{L}_.*-]+\s*:)`,
  'u',
);

/** What has been typed of the statement at the end of a line. */
function currentStatement(before: string): { rest: string; afterValue: boolean } {
  let rest = before.slice(Math.max(before.lastIndexOf('{'), before.lastIndexOf('}')) + 1);
  let afterValue = false;
  for (let next = FINISHED.exec(rest); next; next = FINISHED.exec(rest)) {
    rest = rest.slice(next[0].length);
    afterValue = true;
  }
  return { rest, afterValue };
}

const HELD_BY = new RegExp(String.raw`^\s*hold\s+(${PATH})(?:\s+at\s+.+?)?\s+by\s+(?:${PATH}\s*,\s*)*$`, 'u');
const HELD_AT = new RegExp(String.raw`^\s*hold\s+(${PATH})\s+at\s+(?:(${NUMBER})\s*|(${QUANTITY})\s+)?$`, 'u');
const AFTER = /^\s*(change|add|drop|hold|expect|with|accept|allow)\s+$/u;
const VALUE = new RegExp(String.raw`^\s*(?:(change|expect)\s+)?(${PATH})\s*:\s*(.*)$`, 'u');
const AT_NUMBER = new RegExp(String.raw`(?:^|[\s(,x±.])${NUMBER}\s*$`, 'u');

/** Words that a statement goes on with once so much of it stands there. */
const JOINTS: readonly (readonly [RegExp, readonly Joint[]])[] = [
  [/^\s*vary\s+$/, ['at most']],
  [/^\s*allow\s+\d+\s+$/, ['because']],
  [/^\s*accept\s+[\w-]+\s+$/, ['because']],
  [new RegExp(String.raw`^\s*hold\s+${PATH}\s+$`, 'u'), ['by', 'at']],
];

function inStatement(typed: string): At {
  const by = HELD_BY.exec(typed);
  if (by) return { kind: 'hold-by', quantity: by[1]! };
  const at = HELD_AT.exec(typed);
  if (at) return inHeldValue(at[1]!, at[2], at[3]);
  const keyword = AFTER.exec(typed);
  if (keyword) return { kind: 'after', keyword: keyword[1]! };
  for (const [pattern, words] of JOINTS) if (pattern.test(typed)) return { kind: 'joint', words };
  const value = VALUE.exec(typed);
  if (!value) return { kind: 'prose' };
  const [, how, path, so] = value as unknown as [string, string | undefined, string, string];
  const arrow = /^(.*)(?:->|→)(.*)$/.exec(so);
  const begun = arrow ? arrow[2]! : so;
  const step = how === 'change' && /^by\s/.test(so);
  if (AT_NUMBER.test(begun)) return { kind: 'unit', path, step };
  const side = how === 'expect' ? 'expected' : how !== 'change' ? 'plain' : arrow ? 'new' : 'old';
  return { kind: 'value', path, side, begun: begun.trim() };
}

function inHeldValue(path: string, number: string | undefined, quantity: string | undefined): At {
  if (quantity !== undefined) return { kind: 'joint', words: ['by'] };
  return number === undefined ? { kind: 'value', path, side: 'held', begun: '' } : { kind: 'unit', path, step: false };
}
