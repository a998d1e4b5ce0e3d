/** The text in the bytes of a file, whichever way an older program saved it. */

export interface FileText {
  readonly text: string;
  /** Saved another way than as UTF-8: written back as UTF-8 it would no longer open where it was made. */
  readonly foreign?: true;
  /** It began with a byte-order mark, which is no part of the text and belongs before it again. */
  readonly mark?: true;
}

export const BYTE_ORDER_MARK = '\uFEFF';

/**
 * UTF-8, as recipes are saved; UTF-16 where the file begins with its mark (Unicode 16.0, 23.8); otherwise Windows-1252,
 * which older editors of western languages saved in and in which no byte is an error. Never throws.
 */
export function textOf(bytes: Uint8Array): FileText {
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe) return { text: new TextDecoder('utf-16le').decode(bytes), foreign: true };
  if (first === 0xfe && second === 0xff) return { text: new TextDecoder('utf-16be').decode(bytes), foreign: true };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    const isMarked = first === 0xef && second === 0xbb && third === 0xbf;
    return isMarked ? { text, mark: true } : { text };
  } catch {
    // Not UTF-8: every byte means some letter in the older encoding.
    return { text: new TextDecoder('windows-1252').decode(bytes), foreign: true };
  }
}
