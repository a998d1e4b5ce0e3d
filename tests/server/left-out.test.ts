/** What is named like a recipe file and is not read: the editor says so where the file is, until it can be. */
import { spawnSync } from 'node:child_process';
import { rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';
import { diskFolder } from '../../language/server/disk-folder.js';
import { Session } from '../../language/server/session.js';
import { Wording } from '../../language/wording/wording.js';
import { aFolder } from '../disk/a-folder.js';
import { translationsOf } from '../wording/translations.js';

const shop = aFolder('left-out');
const uriOf = (name: string) => pathToFileURL(join(shop.path, name)).href;

function told(session: Session): Readonly<Record<string, string>> {
  const all = session.staleFiles().map((uri) => [uri, session.diagnostics(uri)] as const);
  return Object.fromEntries(
    all
      .filter(([, diagnostics]) => diagnostics.length > 0)
      .map(([uri, [first]]) => [
        decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1)),
        typeof first!.message === 'string' ? first!.message : first!.message.value,
      ]),
  );
}

shop.put('good.bookmatch', 'shop bench { }\n');
truncateSync(shop.put('large one.bookmatch', ''), 8_000_001);
spawnSync('mkfifo', [join(shop.path, 'pipe.bookmatch')]);
symlinkSync('nowhere', join(shop.path, 'link.bookmatch'));

it('each with its reason', async () => {
  const session = new Session(diskFolder);
  await session.load([pathToFileURL(shop.path).href]);
  expect(told(session)).toEqual({
    'large one.bookmatch':
      'large one.bookmatch was left out: it is larger than 8 MB, the most that is read of one file.',
    'pipe.bookmatch': 'pipe.bookmatch was left out: it is no ordinary file.',
    'link.bookmatch': 'link.bookmatch was left out: it is a link to nothing.',
  });
  expect(session.diagnostics(uriOf('link.bookmatch'))).toMatchObject([
    { severity: 2, code: 'left-out', range: { end: { line: 0 } } },
  ]);
  expect(session.uris()).toContain(uriOf('good.bookmatch'));

  // Mended, or gone.
  writeFileSync(join(shop.path, 'large one.bookmatch'), 'rig bench-1 { }\n');
  rmSync(join(shop.path, 'link.bookmatch'));
  for (const name of ['large one.bookmatch', 'link.bookmatch']) await session.changedOnDisk(uriOf(name));
  expect(session.staleFiles()).toEqual(expect.arrayContaining(['large one.bookmatch', 'link.bookmatch'].map(uriOf)));
  expect(told(session)).toEqual({});
  expect(session.diagnostics(uriOf('pipe.bookmatch'))).toHaveLength(1);

  session.leave([pathToFileURL(shop.path).href]);
  expect(session.staleFiles()).toContain(uriOf('pipe.bookmatch'));
  expect(session.diagnostics(uriOf('pipe.bookmatch'))).toEqual([]);
});

it('in German too', async () => {
  const session = new Session(diskFolder);
  session.speak(new Wording(translationsOf('de'), 'de'));
  await session.load([pathToFileURL(shop.path).href]);
  expect(told(session)).toEqual({
    'pipe.bookmatch': 'pipe.bookmatch wurde ausgelassen: sie ist keine gewöhnliche Datei.',
  });
});
