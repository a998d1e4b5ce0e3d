/** What the extension writes, by every call of VS Code that writes. A further one is looked at before it is named here. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const WRITES =
  /\bapplyEdit\b|\bfs\.(?:writeFile|delete|rename|copy|createDirectory)\b|\.createFile\(|\.deleteFile\(|\.renameFile\(|\boverwrite: true|\bsaveAll\b|\.save\(\)/g;

const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  // Recipes, by an edit that can be undone, unless the text has changed since.
  'write-edit.ts': ['applyEdit'],
  // Files that are not there; `overwrite: false` beside it.
  'start-a-shop.ts': ['.createFile(', 'applyEdit'],
  // A page to print, in the editor's own folder.
  'panels/open-printable.ts': ['fs.createDirectory', 'fs.writeFile', 'fs.delete'],
  // A drawing or page, where the person chose in VS Code's dialog.
  'save-where-chosen.ts': ['fs.writeFile'],
};

it('the extension writes by edits, and pages to print', () => {
  const found = Object.fromEntries(
    readdirSync('extension', { recursive: true, encoding: 'utf8' })
      .map((name) => name.replaceAll('\\', '/'))
      .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
      .map((name) => [name, readFileSync(join('extension', name), 'utf8').match(WRITES) ?? []] as const)
      .filter(([, calls]) => calls.length > 0),
  );
  expect(found).toEqual(ALLOWED);
  expect(readFileSync('extension/start-a-shop.ts', 'utf8')).toContain('overwrite: false');
});
