/** Folders opened beside the first one, and closed again. */
import { expect, it } from 'vitest';
import { DidChangeWorkspaceFoldersNotification } from 'vscode-languageserver/node';
import { ListInstruments } from '../../language/server/protocol.js';
import { openEditor } from './client.js';

const FIRST = 'file:///shop/first.bookmatch';
const SECOND = 'file:///shop-2/second.bookmatch';

it('a folder opened later is read too, and forgotten when it is closed', async () => {
  const files = { [FIRST]: 'model tarn { scale: 645 mm }\n' };
  const { editor } = await openEditor(files, { workspace: { workspaceFolders: true } });
  const names = async () => (await editor.connection.sendRequest(ListInstruments)).map(({ name }) => name);
  const tell = (change: 'added' | 'removed') => {
    const event = { added: [], removed: [], [change]: [{ uri: 'file:///shop-2', name: 'shop-2' }] };
    return editor.settled(
      () => void editor.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, { event }),
    );
  };
  expect(await names()).toEqual(['tarn']);

  editor.disk.set(SECOND, 'recipe tarn-1 for tarn { top.thickness: 2.8 }\n');
  await tell('added');
  expect(await names()).toEqual(['tarn', 'tarn-1']);
  expect(editor.codes(SECOND)).toContain('missing-unit');

  await tell('removed');
  expect(await names()).toEqual(['tarn']);
  expect(editor.codes(SECOND)).toEqual([]);
  expect(editor.log).toEqual([]);
  await editor.quit();
});

it('an editor that knows one folder only is served as ever', async () => {
  const { editor } = await openEditor({ [FIRST]: 'model tarn { scale: 645 mm }\n' });
  expect(editor.log).toEqual([]);
  await editor.quit();
});
