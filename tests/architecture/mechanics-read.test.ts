/** What mechanics gives is read by somebody: a formula that nothing asks for is a promise nobody keeps. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const everyFile = readdirSync('language', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts') && !name.startsWith('grammar/generated'))
  .map((name) => ({ name: name.replaceAll('\\', '/'), text: codeOf(readFileSync(join('language', name), 'utf8')) }));

test('every function, constant and class that mechanics exports is read', () => {
  const unread = everyFile
    .filter(({ name }) => name.startsWith('mechanics/') && !name.endsWith('index.ts'))
    .flatMap(({ name, text }) =>
      [...text.matchAll(/^export (?:async )?(?:function|const|class) (\w+)/gm)]
        .map(([, exported = '']) => exported)
        .filter((exported) => !isRead(exported, name, text)),
    );
  expect(unread).toEqual([]);
});

/** By another file that is no list of exports, or within its own. */
function isRead(exported: string, own: string, text: string): boolean {
  const word = new RegExp(`\\b${exported}\\b`, 'g');
  if ((text.match(word)?.length ?? 0) > 1) return true;
  return everyFile.some(
    (file) => file.name !== own && !file.name.endsWith('index.ts') && file.text.match(word) !== null,
  );
}

/** Without what is said about it: a word in a comment reads nothing. */
function codeOf(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|(?<![:'"])\/\/.*/g, '');
}
