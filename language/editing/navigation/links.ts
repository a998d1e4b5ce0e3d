/** Links in the text: web addresses and DOIs of sources, notes and remarks. */
import type { Span } from '../../facts/facts.js';
import type { Desk } from '../../checks/desk.js';

export interface Link {
  readonly range: Span;
  readonly target: string;
}

export function linksIn(desk: Desk, uri: string): readonly Link[] {
  const text = desk.text(uri);
  if (text === undefined) return [];
  return text.split(/\r\n|\n|\r/).flatMap((content, line) =>
    [...content.matchAll(ADDRESS)].map((match) => {
      const written = trimmed(match[0]);
      const start = { line, character: match.index };
      return {
        range: { start, end: { line, character: match.index + written.length } },
        target: /^https?:/i.test(written) ? written : `https://doi.org/${written.replace(/^doi:\s*/i, '')}`,
      };
    }),
  );
}

/** Web addresses as written, and `doi:10.…` (Digital Object Identifier Handbook, 2.2). */
const ADDRESS = /\bhttps?:\/\/[^\s"<>“”]+|\bdoi:\s*10\.\d{4,9}\/[^\s"<>“”]+/giu;

/** Without the full stop, comma or bracket of the sentence around it. */
function trimmed(address: string): string {
  let end = address.length;
  while (end > 0) {
    const last = address[end - 1]!;
    const unpaired = last === ')' && !address.slice(0, end).includes('(');
    if (!/[.,;:!?'’]/.test(last) && !unpaired) break;
    end--;
  }
  return address.slice(0, end);
}
