/** Refactorings of a marked text: `$0` is the cursor, two of them the ends of what is selected. */
import type { Desk } from '../../../language/checks/desk.js';
import { type Offer, refactoringsAt } from '../../../language/editing/refactoring/refactorings.js';
import { createParser } from '../../../language/grammar/parse.js';
import type { Position, Span } from '../../../language/facts/facts.js';
import { deskOf } from '../desk-of.js';

const parser = createParser();

export interface MarkedDesk {
  readonly desk: Desk;
  readonly texts: readonly string[];
  readonly offers: readonly Offer[];
}

/** The marked text is the first file; the others are what it leans on. */
export function offersIn(marked: string, ...others: readonly string[]): MarkedDesk {
  const pieces = marked.split('$0');
  if (pieces.length !== 2 && pieces.length !== 3) throw new Error('the text marks no place');
  const start = endOf(pieces[0]!);
  const end = pieces.length === 3 ? endOf(pieces[0]! + pieces[1]!) : start;
  return offersFor([pieces.join(''), ...others], { start, end });
}

export function offersFor(texts: readonly string[], range: Span, uri = 'file:0'): MarkedDesk {
  const desk = deskOf(...texts);
  return { desk, texts, offers: refactoringsAt(desk, parser, uri, range) };
}

/** Every text after the refactoring with this title, or the reason why there is none. */
export function after(given: MarkedDesk, title: string): readonly string[] | string {
  const offer = given.offers.find((each) => each.title.startsWith(title));
  if (!offer) throw new Error(`offered are ${given.offers.map((each) => each.title).join('; ')}`);
  return 'reason' in offer ? offer.reason : applied(given, offer);
}

export function applied({ desk, texts }: MarkedDesk, offer: Offer): readonly string[] {
  if ('reason' in offer) throw new Error(offer.reason);
  return texts.map((text, i) => {
    const edits = offer.edits.flatMap(({ place, text: by }) => {
      if (!('definition' in place)) return [];
      const now = desk.shelf.placement(place.definition)!;
      if (now.uri !== `file:${i}`) return [];
      const offset = ({ line, character }: Position) => offsetIn(text, { line: line + now.line, character });
      return [{ from: offset(place.span.start), to: offset(place.span.end), by }];
    });
    edits.sort((a, b) => a.from - b.from || a.to - b.to);
    for (const [k, { from }] of edits.entries()) if (k > 0 && from < edits[k - 1]!.to) throw new Error('edits overlap');
    return edits.reduceRight((now, { from, to, by }) => now.slice(0, from) + by + now.slice(to), text);
  });
}

function endOf(text: string): Position {
  const lines = text.split('\n');
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}

function offsetIn(text: string, { line, character }: Position): number {
  const lines = text.split('\n');
  return lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, 0) + character;
}
