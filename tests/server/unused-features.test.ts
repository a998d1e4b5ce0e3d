/** The bundled client lacks features that the server does not offer; should it offer one, the client needs it back. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { openEditor } from './client.js';

/** By module of the client: where a server declares it, below `capabilities`. */
const DECLARED: Readonly<Record<string, string>> = {
  notebook: 'notebookDocumentSync',
  diagnostic: 'diagnosticProvider',
  fileOperations: 'workspace.fileOperations',
  colorProvider: 'colorProvider',
  inlineValue: 'inlineValueProvider',
  inlineCompletion: 'inlineCompletionProvider',
  linkedEditingRange: 'linkedEditingRangeProvider',
  textDocumentContent: 'workspace.textDocumentContent',
};

it('what the client is built without, the server does not declare', async () => {
  const config = readFileSync('esbuild.config.mjs', 'utf8');
  const without = /const WITHOUT =\s*\/\^\\\.\\\/\(([\w|]+)\)\$\//.exec(config)?.[1]?.split('|') ?? [];
  expect([...without].sort()).toEqual(Object.keys(DECLARED).sort());
  const { editor, initialized } = await openEditor({});
  for (const path of Object.values(DECLARED)) {
    const declared = path
      .split('.')
      .reduce<unknown>(
        (within, key) => (within as Record<string, unknown> | undefined)?.[key],
        initialized.capabilities,
      );
    expect([path, declared]).toEqual([path, undefined]);
  }
  await editor.quit();
});
