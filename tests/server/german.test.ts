/** The server for an editor that speaks German. */
import { expect, it } from 'vitest';
import { CodeActionRequest, HoverRequest, type MarkupContent } from 'vscode-languageserver/node';
import { GetLibraryText, LIBRARY_SCHEME } from '../../language/server/protocol.js';
import { at, openEditor } from './client.js';
import { LINE, LINE_URI, SHOP } from './shop.js';

it('finds, mends, hovers and explains in German', async () => {
  const text = LINE.replace('27 g -> 22 g', '26 g -> 22 g');
  const { editor } = await openEditor({ ...SHOP, [LINE_URI]: text }, { locale: 'de-DE' });
  await editor.settled(() => editor.open(LINE_URI, text));
  expect(editor.messages(LINE_URI)).toContain(
    'corrie-2 hat für bridge.mass den Wert 27 g, nicht 26 g. Ging der Schritt von 27 g aus, oder soll corrie zurück auf 26 g?',
  );

  const { connection } = editor;
  const place = at(LINE_URI, text, '26 g');
  const range = { start: place.position, end: place.position };
  const diagnostics = [...(editor.published.get(LINE_URI)?.diagnostics ?? [])];
  const actions = await connection.sendRequest(CodeActionRequest.type, { ...place, range, context: { diagnostics } });
  expect((actions ?? []).map(({ title }) => title)).toContain('Von 27 g ausgehen, wie corrie sagt');

  const hover = await connection.sendRequest(HoverRequest.type, at(LINE_URI, text, 'top.stiffness.along', 16));
  const { value } = hover!.contents as MarkupContent;
  expect(value).toContain('Biegesteifigkeit der rohen Decke längs der Faser, je Breite.');
  expect(value).toContain('| mit | Wert | aus |');

  const page = await connection.sendRequest(GetLibraryText, { uri: `${LIBRARY_SCHEME}:/findings/stale-change.md` });
  expect(page?.text).toContain('**Eine Änderung von einem Wert, den der Vorgänger nicht mehr hat** (Warnung)');
  expect(editor.log).toEqual([]);
  await editor.quit();
});

it('speaks English where there are no words of a language', async () => {
  const { editor } = await openEditor({ [LINE_URI]: 'recipe a from b { }' }, { locale: 'nl' });
  expect(editor.messages(LINE_URI)).toContain('There is no recipe called b.');
  await editor.quit();
});
