/**
 * What somebody wrote, so that nothing in it acts: signs a terminal, a browser or a reader's eye would obey are shown as
 * signs. Letters of every script, and the joiners they need, stay as they are.
 */

/** Lines and tabs stay; of the rest, every control sign is seen. As many characters as before. */
export function visible(text: string): string {
  return text.replace(ACTING, (sign) => (sign === '\n' || sign === '\t' ? sign : picture(sign)));
}

/** The same for what must stay on one line: names, file names, what was typed after the command. */
export function inLine(text: string): string {
  return text.replace(ACTING, picture);
}

/**
 * Controls (C0, DEL, C1), line and paragraph separators, and formatting signs (Unicode 16.0, general categories Cc, Zl, Zp and
 * Cf: direction overrides, invisible signs, tags), but for the two joiners that Persian, the Indic scripts and emoji need.
 */
const ACTING = /(?![\u200C\u200D])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;

/** C0 and DEL have pictures of their own (Unicode 16.0, block Control Pictures); the others share one. */
function picture(sign: string): string {
  const code = sign.codePointAt(0)!;
  if (code < 0x20) return String.fromCodePoint(0x2400 + code);
  return code === 0x7f ? '\u2421' : '\uFFFD';
}
