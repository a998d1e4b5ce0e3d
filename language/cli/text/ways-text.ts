/** Ways to a wish, for somebody at the bench. */
import { writeQuantity } from '../../quantities/write.js';
import { wayInWords } from '../../reports/ways/way-words.js';
import type { Ways } from '../../recipes/ways/ways.js';
import type { Wording } from '../../wording/wording.js';
import { wrapped } from './columns.js';
import type { Style } from './style.js';

export function waysAsText(name: string, found: Ways, wording: Wording, style: Style): string {
  const { say, text } = wording;
  const { quantity, wish, now } = found;
  const is = writeQuantity(now!, quantity!.dimension, { unit: quantity!.unit });
  const head = style.bold(say`${name}: ${wish.quantity} is ${is}`);
  const indented = (sentence: string, by = 2) =>
    wrapped(sentence, style.columns - by).map((line) => `${' '.repeat(by)}${line}`);
  if (found.isMet) return `${[head, ...indented(text('That is what is wished for.'))].join('\n')}\n`;
  if (found.ways.length === 0) {
    const none = text('No single change within what can be built meets this. Two changes may, or another wish.');
    return `${[head, ...indented(none)].join('\n')}\n`;
  }
  const ways = found.ways.flatMap((way) => {
    const { change, result, also, until } = wayInWords(way, found, wording);
    return ['', ...indented(change).map(style.bold), ...[result, also, until].flatMap((each) => indented(each, 4))];
  });
  return `${[head, ...ways].join('\n')}\n`;
}
