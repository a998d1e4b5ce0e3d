/** Started where or how nobody means to: an empty word, a folder that is gone. A sentence and exit code 2, in both languages. */
import { expect, it } from 'vitest';
import { bookmatchIn } from './terminal.js';

const SHOP = { 'a.bookmatch': 'model   m { }\n' };

it.each([
  ['check', ''],
  ['format', ''],
  ['show', ''],
  ['compare', 'm', ''],
  ['check', '--in', ''],
])('an empty word is no folder and no name: %j %j', async (...args) => {
  const { code, out, err } = await bookmatchIn({}, SHOP, ...args);
  expect([code, out, err]).toEqual([2, '', 'One of the words of the command is empty. Leave it out, or fill it in.\n']);
});

it('in a folder that was taken away', async () => {
  const english = await bookmatchIn({ cwd: '' }, SHOP, 'check');
  expect([english.code, english.err]).toEqual([
    2,
    'The folder you are in is no longer there. Go to another and try again.\n',
  ]);
  const german = await bookmatchIn({ cwd: '', locale: 'de_DE.UTF-8' }, SHOP, 'check');
  expect(german.err).toMatch(/^Den Ordner, in dem Sie sind, gibt es nicht mehr\./);
});
