/**
 * A text open in the editor, kept up with the edits it tells. It counts lines as the protocol does (a line ends with LF,
 * CR LF or a lone CR) also where an edit joins a CR with an LF or parts them, which
 * `vscode-languageserver-textdocument` 1.0.15 counts wrongly ever after.
 */
import type { Position, Range, TextDocumentContentChangeEvent } from 'vscode-languageserver';

const LF = 10;
const CR = 13;

export class OpenText {
  /** Offsets of the first character of each line, ascending. */
  private lineStarts: number[];
  private content: string;

  private constructor(
    readonly uri: string,
    readonly languageId: string,
    private currentVersion: number,
    content: string,
  ) {
    this.content = content;
    this.lineStarts = [0, ...startsBetween(content, 0, content.length)];
  }

  static create(uri: string, languageId: string, version: number, text: string): OpenText {
    return new OpenText(uri, languageId, version, text);
  }

  /** A change made to an older text than the one at hand came too late and is left out. */
  static update(text: OpenText, changes: readonly TextDocumentContentChangeEvent[], version: number): OpenText {
    if (version <= text.currentVersion) return text;
    for (const change of changes) {
      if ('range' in change) text.replace(change.range, change.text);
      else text.become(change.text);
    }
    text.currentVersion = version;
    return text;
  }

  get version(): number {
    return this.currentVersion;
  }

  getText(): string {
    return this.content;
  }

  /** A place past the end of its line is the line's end, one past the last line the end of the text. */
  offsetAt({ line, character }: Position): number {
    if (line < 0) return 0;
    const start = this.lineStarts[line];
    if (start === undefined) return this.content.length;
    const next = this.lineStarts[line + 1];
    let end = next ?? this.content.length;
    // The line's end is before what ends it.
    if (next !== undefined) end -= isLineFeedOfTwo(this.content, end - 1) ? 2 : 1;
    return Math.min(start + Math.max(0, character), end);
  }

  private become(text: string): void {
    this.content = text;
    this.lineStarts = [0, ...startsBetween(text, 0, text.length)];
  }

  private replace(range: Range, text: string): void {
    const [one, other] = [this.offsetAt(range.start), this.offsetAt(range.end)];
    const [start, end] = one <= other ? [one, other] : [other, one];
    this.content = this.content.slice(0, start) + text + this.content.slice(end);
    // A break may begin with the character before the edit, and end with the one after it: both are looked at again.
    const first = lineOf(this.lineStarts, Math.max(0, start - 1));
    let rest = first + 1;
    while (rest < this.lineStarts.length && this.lineStarts[rest]! <= end + 1) rest++;
    const from = this.lineStarts[first]!;
    const moved = text.length - (end - start);
    const found = startsBetween(this.content, from, start + text.length + 1);
    const after = this.lineStarts.slice(rest);
    if (moved !== 0) after.forEach((offset, i) => (after[i] = offset + moved));
    this.lineStarts = this.lineStarts.slice(0, first + 1).concat(found, after);
  }
}

/** Starts of lines after `from`, the start of one, up to and including `to`. */
function startsBetween(text: string, from: number, to: number): number[] {
  const starts: number[] = [];
  for (let i = from; i < Math.min(to, text.length); i++) {
    const code = text.charCodeAt(i);
    if (code !== LF && code !== CR) continue;
    const next = code === CR && text.charCodeAt(i + 1) === LF ? i + 2 : i + 1;
    if (next <= to) starts.push(next);
    i = next - 1;
  }
  return starts;
}

function isLineFeedOfTwo(text: string, at: number): boolean {
  return text.charCodeAt(at) === LF && text.charCodeAt(at - 1) === CR;
}

/** The line an offset stands in: the last that does not start after it. */
function lineOf(starts: readonly number[], offset: number): number {
  let [low, high] = [0, starts.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}
