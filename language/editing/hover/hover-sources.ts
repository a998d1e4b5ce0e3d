/** Sources at the foot of a hover: numbered, so that the sentence above stays short. */
import { cited } from '../../wording/cited.js';
import type { Wording } from '../../wording/wording.js';
import { plain } from '../markdown.js';

/** `[1, 2]`, to be looked up at the foot. */
export function sourceNumbers(source: string): string {
  return `\\[${piecesOf(source)
    .map((_, i) => i + 1)
    .join(', ')}\\]`;
}

/** Each source with its number. The first that has an address is the one link of the hover. */
export function sourcesLine(source: string, wording: Wording): string {
  const pieces = piecesOf(source);
  const linked = pieces.findIndex((piece) => addressOf(piece) !== undefined);
  const told = pieces.map((piece, i) => {
    const words = plain(cited(piece, wording));
    const address = i === linked ? addressOf(piece) : undefined;
    return `\\[${i + 1}\\] ${address === undefined ? words : words.replace(address, `[${address}](https://${address})`)}`;
  });
  return told.join(' · ');
}

function piecesOf(source: string): readonly string[] {
  return [...new Set(source.split('; '))];
}

/** `example.com` at the head of a source. */
function addressOf(source: string): string | undefined {
  return /^[\w-]+(?:\.[\w-]+)*\.[a-z]{2,}(?= \(|,|$)/i.exec(source)?.[0];
}
