/** Files that reach the server through the editor: folders that are on no disk, and editors that do not help. */
import { describe, expect, it } from 'vitest';
import type { Connection } from 'vscode-languageserver';
import { MOST_BYTES } from '../../language/disk/troubles.js';
import { editorFolder, eitherFolder } from '../../language/server/editor-folder.js';
import { ListFiles, ReadFile } from '../../language/server/protocol.js';

/** An editor that has these files, by URI. */
function editorWith(files: Readonly<Record<string, string>>): Pick<Connection, 'sendRequest'> {
  const sendRequest = (type: { readonly method: string }, asked: { folders?: string[]; uri?: string }) => {
    if (type.method === ListFiles.method) {
      return Promise.resolve(Object.keys(files).filter((uri) => asked.folders!.some((each) => uri.startsWith(each))));
    }
    const text = files[asked.uri!];
    return Promise.resolve(type.method === ReadFile.method && text !== undefined ? { text } : null);
  };
  return { sendRequest: sendRequest as unknown as Connection['sendRequest'] };
}

const NOBODY = () => undefined;

const DEAF: Pick<Connection, 'sendRequest'> = { sendRequest: () => Promise.reject(new Error('no such method')) };

describe('files through the editor', () => {
  it('are listed and read by request', async () => {
    const folder = editorFolder(editorWith({ 'shelf:/shop/a.bookmatch': 'shop a {}' }));
    expect(await folder.list(['shelf:/shop'], NOBODY)).toEqual(['shelf:/shop/a.bookmatch']);
    expect(await folder.read('shelf:/shop/a.bookmatch', NOBODY)).toBe('shop a {}');
    expect(await folder.read('shelf:/shop/gone.bookmatch', NOBODY)).toBeUndefined();
  });

  it('that are too large, or cannot be read, are told', async () => {
    const asked: unknown[] = [];
    const editor = {
      sendRequest: (_: unknown, { uri, atMost }: { uri: string; atMost: number }) => {
        asked.push(atMost);
        return Promise.resolve({ unread: uri.endsWith('large') ? 'too-large' : 'unreadable' });
      },
    } as unknown as Pick<Connection, 'sendRequest'>;
    const told: string[] = [];
    const leftOut = (uri: string, trouble: string) => void told.push(`${uri} ${trouble}`);
    for (const uri of ['shelf:/large', 'shelf:/locked'])
      expect(await eitherFolder(editorFolder(DEAF), editorFolder(editor)).read(uri, leftOut)).toBeUndefined();
    expect(asked).toEqual([MOST_BYTES, MOST_BYTES]);
    expect(told).toEqual([
      'shelf:/large it is larger than 8 MB, the most that is read of one file',
      'shelf:/locked it cannot be read',
    ]);
  });

  it('are none where the editor does not know the requests', async () => {
    const folder = editorFolder(DEAF);
    expect(await folder.list(['shelf:/shop'], NOBODY)).toEqual([]);
    expect(await folder.read('shelf:/shop/a.bookmatch', NOBODY)).toBeUndefined();
  });

  it('are not asked of the editor where the disk has them', async () => {
    const disk = editorFolder(editorWith({ 'file:///shop/b.bookmatch': 'shop b {}' }));
    const both = eitherFolder(disk, editorFolder(editorWith({ 'shelf:/shop/a.bookmatch': 'shop a {}' })));
    const all = ['shelf:/shop/a.bookmatch', 'file:///shop/b.bookmatch'];
    expect(new Set(await both.list(['file:///shop', 'shelf:/shop'], NOBODY))).toEqual(new Set(all));
    expect(await Promise.all(all.map((uri) => both.read(uri, NOBODY)))).toEqual(['shop a {}', 'shop b {}']);
    expect(await eitherFolder(disk, editorFolder(DEAF)).list(['file:///shop', 'shelf:/shop'], NOBODY)).toEqual([
      'file:///shop/b.bookmatch',
    ]);
  });
});
