/** `.012...016 in`: three dots before a figure may be a range to 16 or one to .016. */
import { readNumber } from '../../quantities/read.js';
import type { Wording } from '../../wording/wording.js';

export interface DoubtfulRange {
  readonly message: string;
  /** The range written so that it reads one way only, the more likely first. */
  readonly suggestions: readonly string[];
}

/** Undefined where only one reading rises. Units are passed over: both ends are taken to have the same. */
export function doubtfulRange(written: string, { say }: Wording): DoubtfulRange | undefined {
  const found = /^((-?[\d.]+)[^.]*)\.\.\.(\d+)([^.]*)$/.exec(written);
  if (!found) return undefined;
  const [, before = '', low = '', high = '', unit = ''] = found;
  const [from, to] = [readNumber(low), readNumber(`.${high}`)];
  if (!from.ok || !to.ok || to.number <= from.number) return undefined;
  const suggestions = [`${before} .. .${high}${unit}`, `${before}..${high}${unit}`];
  return { message: say`Does this range end at .${high} or at ${high}? Write it with two dots.`, suggestions };
}
