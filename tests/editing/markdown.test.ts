/** What a maker wrote, in a hover: as `marked` reads it, the library with which VS Code shows hovers (GFM). */
import { marked, type Token } from 'marked';
import { expect, it } from 'vitest';
import { code, plain, table } from '../../language/editing/markdown.js';

const HOSTILE = [
  '[here](command:workbench.action.quit)',
  '![](https://example.org/x.png)',
  '<https://example.org> <script>alert(1)</script> <!-- -->',
  'https://example.org www.example.org http://x.y ftp://a.b me@example.org',
  '[ref]: https://example.org',
  '[ref][ref] [^1]',
  '# head',
  '> quoted',
  '- one\n- two\n1. three\n2) four',
  '--- === ***',
  '| a | b |\n| - | - |\n| c | d |',
  '**bold** _slant_ ~~gone~~ `code` ``` ~~~',
  '\\[x](y) \\`x` &lt;b&gt; &#91;x&#93;(y)',
  '$(bug) \u202Egnp.exe\u2066 \u001B[31m \u0000',
  '    indented',
];

it.each(HOSTILE)('%j is words and nothing else', (text) => {
  expect([...kindsIn(plain(text))].filter((kind) => !['paragraph', 'text', 'escape'].includes(kind))).toEqual([]);
  const shown = [...kindsIn(code(text))];
  expect(shown.filter((kind) => !['paragraph', 'codespan'].includes(kind))).toEqual([]);
});

it.each(HOSTILE)('%j stays in its cell of a table', (text) => {
  const [read] = marked.lexer(table(['what', 'how'], [[plain(text), code(text)]]));
  expect(read).toMatchObject({ type: 'table', rows: [[{}, {}]] });
});

it('does not act by its signs', () => {
  for (const text of HOSTILE) expect(plain(text) + code(text)).not.toMatch(/[\p{Cc}\p{Cf}]/u);
});

function kindsIn(markdown: string): ReadonlySet<string> {
  const kinds = new Set<string>();
  void marked.walkTokens(marked.lexer(markdown), (token: Token) => void kinds.add(token.type));
  return kinds;
}
