/** Empty quotes after `because` or `together`, as a snippet in which the reason is typed. */
import type { SnippetTextEdit, TextEdit } from 'vscode-languageserver-types';

/**
 * The edit as a snippet, where its text asks for a reason. `line`: the text of the line it begins on. A snippet's lines are
 * indented by the editor like the line it begins on, so that much is left out of them; where that cannot be done the edit
 * stays a plain one.
 */
export function withReasonToType(edit: TextEdit, line: string): TextEdit | SnippetTextEdit {
  const asks = ASKS.exec(edit.newText);
  if (!asks) return edit;
  const indent = /^[ \t]*/.exec(line.slice(0, edit.range.start.character))![0];
  const [first = '', ...rest] = edit.newText.split('\n');
  if (rest.some((each) => each !== '' && !each.startsWith(indent))) return edit;
  const text = [first, ...rest.map((each) => each.slice(indent.length))].join('\n');
  const at = ASKS.exec(text)!;
  const hole = at.index + at[0].length - 1;
  const value = `${escaped(text.slice(0, hole))}\${1}${escaped(text.slice(hole))}`;
  return { range: edit.range, snippet: { kind: 'snippet', value } };
}

const ASKS = /\b(?:because|together) ""/;

function escaped(text: string): string {
  return text.replace(/[\\$}]/g, '\\$&');
}
