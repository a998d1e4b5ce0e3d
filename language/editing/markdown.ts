/** Markdown for hovers. Whatever a maker wrote is escaped, so that a note can neither format a hover nor link out of it. */

import { inLine } from '../wording/visible.js';

/** A maker's words as plain text on one line. */
export function plain(text: string): string {
  const line = inLine(text.replace(/\s+/g, ' ').trim())
    // Bare addresses become links too, by the colon, the dot after `www` or the sign of an e-mail address.
    .replace(/[\\`*_[\]|~@]|:(?=\/)|(?<=www)\./gi, '\\$&')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;');
  // What would begin a list, a heading or a quotation.
  return line.replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2').replace(/^[-+#>]/, '\\$&');
}

/** Names, paths and recipe text in the type of the language. */
export function code(text: string): string {
  // No backtick ends it, and no bar ends the cell of a table it may stand in.
  const inner = inLine(text.replace(/\s+/g, ' ').trim()).replace(/`/g, '´').replace(/\|/g, '¦');
  return inner === '' ? '' : `\`${inner}\``;
}

/** An example of recipe text, coloured as such where the editor can. */
export function example(text: string): string {
  return ['```bookmatch', text, '```'].join('\n');
}

/** A table; the first column is left aligned, figures stand to the right. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const rule = head.map((_, column) => (column === 0 ? ':--' : '--:'));
  return [head, rule, ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

export function bullets(items: readonly string[]): string {
  return items.map((item) => `- ${item}`).join('\n');
}

/** Paragraphs with a blank line between them; absent ones left out. */
export function paragraphs(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join('\n\n');
}
