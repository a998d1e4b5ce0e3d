/** Recipe files at a commit, through git itself. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Commit, GIT, NO_REPOSITORY, NO_REVISION } from '../../language/disk/git-history.js';

const root = mkdtempSync(join(tmpdir(), 'history-'));
const shop = join(root, 'a shop');
const elsewhere = mkdtempSync(join(tmpdir(), 'no-history-'));

const git = (...args: readonly string[]) =>
  execFileSync('git', ['-c', 'user.name=A Maker', '-c', 'user.email=maker@example.com', ...args], {
    cwd: root,
    stdio: 'ignore',
  });

beforeAll(() => {
  mkdirSync(join(shop, 'süd'), { recursive: true });
  git('init', '-q', '.');
  writeFileSync(join(shop, 'tarn.bookmatch'), 'model tarn { scale: 645 mm }\n');
  writeFileSync(join(shop, 'süd/odd "name".bookmatch'), 'model süd { }\n');
  writeFileSync(join(shop, 'empty.bookmatch'), '');
  writeFileSync(join(shop, 'notes.txt'), 'no recipe');
  writeFileSync(join(root, 'outside.bookmatch'), 'model outside { }\n');
  symlinkSync('/etc/passwd', join(shop, 'link.bookmatch'));
  git('add', '-A');
  git('commit', '-qm', 'one');
  git('tag', 'first');
  writeFileSync(join(shop, 'tarn.bookmatch'), 'model tarn { scale: 650 mm }\n');
  git('commit', '-qam', 'two');
});
afterAll(() => {
  for (const folder of [root, elsewhere]) rmSync(folder, { recursive: true });
});

async function textsAt(revision: string): Promise<ReadonlyMap<string, string>> {
  const commit = (await GIT.commit(shop, revision)) as Commit;
  return (await GIT.texts(shop, commit)) as ReadonlyMap<string, string>;
}

it('reads the recipe files of the folder alone, whatever they are called; no links', async () => {
  const texts = await textsAt('first');
  expect([...texts.keys()].sort()).toEqual(['empty.bookmatch', 'süd/odd "name".bookmatch', 'tarn.bookmatch']);
  expect(texts.get('tarn.bookmatch')).toBe('model tarn { scale: 645 mm }\n');
  expect(texts.get('süd/odd "name".bookmatch')).toBe('model süd { }\n');
  expect(texts.get('empty.bookmatch')).toBe('');
});

it.each(['HEAD~1', 'first', 'HEAD^', 'HEAD@{1}'])('%s is a commit as git knows them', async (revision) => {
  expect((await textsAt(revision)).get('tarn.bookmatch')).toContain('645');
  expect((await textsAt('HEAD')).get('tarn.bookmatch')).toContain('650');
});

it.each(['', 'nonsense', '--output=x', '$(touch x)', 'HEAD; touch x', 'HEAD:outside.bookmatch', '..'])(
  '%j is no commit, and nothing is done',
  async (revision) => {
    expect(await GIT.commit(shop, revision)).toEqual({ trouble: NO_REVISION });
  },
);

it('a folder that is not kept with git', async () => {
  expect(await GIT.commit(elsewhere, 'HEAD')).toEqual({ trouble: NO_REPOSITORY });
});
