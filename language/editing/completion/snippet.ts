/** Snippets as editors know them: text with blanks to fill in, `${1:2.85} mm`, and `$0` where the cursor ends up. */

/** `$`, `}` and `\` mean something inside a snippet. */
export function snippetText(text: string): string {
  return text.replace(/[$}\\]/g, '\\$&');
}

export interface FilledIn {
  readonly text: string;
  /** From where to where in the text the blanks are. */
  readonly blanks: readonly (readonly [number, number])[];
}

/** The text with every blank filled in as suggested: for an editor that knows no snippets. */
export function filledIn(snippet: string): FilledIn {
  let text = '';
  const blanks: (readonly [number, number])[] = [];
  for (const [, escaped, blank, other] of snippet.matchAll(PIECE)) {
    if (blank === undefined) text += escaped ?? other ?? '';
    else {
      const filling = blank.replace(/\\(.)/g, '$1');
      blanks.push([text.length, text.length + filling.length]);
      text += filling;
    }
  }
  return { text, blanks };
}

/** A sign with a backslash before it, a blank with a suggestion, a blank without, anything else. */
const PIECE = /\\([$}\\])|\$\{\d+:((?:\\.|[^}\\])*)\}|\$\d+|([^])/g;
