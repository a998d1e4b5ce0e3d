/**
 * The border of the command line: whatever leaves it has gone through the function of its format here. What a recipe, a file
 * name or an argument says can then neither move the cursor nor forge a line, a workflow command, a link or a field.
 */
import { inLine, visible } from '../wording/visible.js';

declare const escaped: unique symbol;
/** Made only here and by the sheets' own page; `Io.write` takes nothing else. */
export type Escaped = string & { readonly [escaped]: true };

/**
 * Text for people. Colours are told from what a file says by `ink`, drawn anew for each run: only an escape sign with the
 * ink behind it becomes a real one. No line can be taken for a command of a service that runs checks and reads along:
 * `::error …` at the head of a line, `##[error]` and `##name[…]` anywhere.
 */
export function forTerminal(text: string, ink: string): Escaped {
  const [first = '', ...painted] = text.split(ESCAPE + ink);
  const plain = (piece: string) => visible(piece).replace(/##(?=[\w.]*\[)/g, '# #');
  const pieces = painted.map((piece) => {
    const [code = ''] = /^\[\d+m/.exec(piece) ?? [];
    return (code === '' ? '' : ESCAPE + code) + plain(piece.slice(code.length));
  });
  const whole = [plain(first), ...pieces].join('');
  return whole.replace(LINE_COMMAND, '$1\u2237') as Escaped;
}

const ESCAPE = '\u001B';
/** Space and colours before it do not keep a runner from taking it. */
const LINE_COMMAND = /^((?:\s|\p{Cc}\[\d+m)*)::/gmu;

/** Plain data. What acts in a terminal is written by its number, which a reader of JSON undoes (RFC 8259, section 7). */
export function forJson(value: object): Escaped {
  const text = JSON.stringify(value, undefined, 2);
  return `${text.replace(/(?!\n)[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, byNumber).replace(/##(?=[\w.]*\[)/g, '\\u0023#')}\n` as Escaped;
}

/**
 * A table for a spreadsheet (RFC 4180). A text that a spreadsheet would take for a formula is kept a text by an apostrophe
 * before it; numbers stay numbers.
 */
export function forCsv(rows: readonly (readonly (string | number)[])[]): Escaped {
  const field = (value: string | number) => {
    if (typeof value === 'number') return String(value);
    const text = inLine(value);
    const safe = /^[=+\-@\t]/.test(text) ? `'${text}` : text;
    return /[",;\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
  };
  return `${rows.map((row) => row.map(field).join(',')).join('\r\n')}\r\n` as Escaped;
}

function byNumber(sign: string): string {
  return Array.from({ length: sign.length }, (_, i) => `\\u${sign.charCodeAt(i).toString(16).padStart(4, '0')}`).join(
    '',
  );
}

/** A workflow command of GitHub, as its runner reads them: the message and the properties escape different signs. */
export function forGitHub(
  command: string,
  properties: Readonly<Record<string, string | number>>,
  message: string,
): Escaped {
  const all = Object.entries(properties).map(([key, value]) => `${key}=${ofProperty(String(value))}`);
  return `::${command} ${all.join(',')}::${ofMessage(message)}\n` as Escaped;
}

export function together(pieces: readonly Escaped[]): Escaped {
  return pieces.join('') as Escaped;
}

/** A page or drawing has escaped every text in itself: `language/sheets/html.ts`, `language/reports/plan/write/`. */
export function finished(document: string): Escaped {
  return document as Escaped;
}

function ofMessage(text: string): string {
  return visible(text).replaceAll('%', '%25').replaceAll('\n', '%0A');
}

function ofProperty(text: string): string {
  return inLine(text).replaceAll('%', '%25').replaceAll(':', '%3A').replaceAll(',', '%2C');
}

/**
 * A message within SARIF (2.1.0, sections 3.11.5 and 3.11.6): a brace begins a placeholder unless it is doubled, and
 * `[text](place)` is a link, which a space between them undoes for every reader.
 */
export function inSarif(text: string): string {
  return visible(text).replace(/[{}]/g, '$&$&').replaceAll('](', '] (');
}
