/** What edits did, told from two states of one folder. */
import { describe, expect, it } from 'vitest';
import { type History, NO_GIT, NO_REVISION } from '../../language/disk/git-history.js';
import { SMALL_SHOP } from './small-shop.js';
import { bookmatchIn, type Disk } from './terminal.js';

const LINE = 'recipes/corrie-line.bookmatch';

/** A folder that was `before` at each of the commits there are. */
function historyOf(commits: Readonly<Record<string, Readonly<Record<string, string>>>>): History {
  return {
    commit: (_, revision) => Promise.resolve(revision in commits ? { id: revision } : { trouble: NO_REVISION }),
    texts: (_, { id }) => Promise.resolve(new Map(Object.entries(commits[id] ?? {}))),
  };
}

const BEFORE = SMALL_SHOP as Readonly<Record<string, string>>;
const thinner = (text: string) => text.replace('thickness: 2.8 mm', 'thickness: 2.5 mm');
const AFTER = {
  ...Object.fromEntries(Object.entries(BEFORE).map(([path, text]) => [path, thinner(text)])),
  'new.bookmatch': 'recipe corrie-9 from corrie-1 { because "Another." }\n',
};
const HISTORY = { history: historyOf({ HEAD: BEFORE, v1: BEFORE, v2: AFTER }) };

const told = (disk: Disk, ...args: readonly string[]) => bookmatchIn(HISTORY, disk, ...args);

it('the fixture holds what is edited', () => {
  expect(BEFORE[LINE]).toContain('recipe corrie-2');
  expect(Object.values(BEFORE).some((text) => text !== thinner(text))).toBe(true);
});

describe('changes', () => {
  it('since the last commit: what differs, what that does, who inherits it, what is new', async () => {
    const { out, code } = await told(AFTER, 'changes');
    expect(code).toBe(0);
    expect(out).toMatch(/^From HEAD to the files as they are$/m);
    expect(out).toMatch(/^recipe corrie-1\b/m);
    expect(out).toMatch(/^ {2}top\.thickness +2\.8 mm → 2\.5 mm$/m);
    // m ∝ h: 2.5/2.8 − 1 = −10.7 %.
    expect(out).toMatch(/^ {4}top\.mass +[\d.]+ g +[\d.]+ g +−[\d.]+ g +−11 % +[·─┼●◂]{13}$/m);
    expect(out).toMatch(/^recipe corrie-9, new$/m);
  });

  it('between two commits, whatever stands in the files', async () => {
    const { out } = await told(BEFORE, 'changes', 'v1..v2');
    expect(out).toMatch(/^From v1 to v2$/m);
    expect(out).toMatch(/top\.thickness +2\.8 mm → 2\.5 mm/);
    const { out: none } = await told(AFTER, 'changes', 'v2');
    expect(none).toContain('No instrument, wood or anything else has changed.');
  });

  it('of a wood: who uses it, and what that does to the first of them', async () => {
    const denser = Object.fromEntries(
      Object.entries(BEFORE).map(([path, text]) => [path, text.replace('density: 421', 'density: 480')]),
    );
    expect(denser).not.toEqual(BEFORE);
    const { out } = await told(denser, 'changes');
    expect(out).toMatch(/^wood spruce-1\n {2}density +421 kg\/m³ → 480 kg\/m³\n {2}used by corrie-1/m);
    expect(out).toMatch(/^ {4}top\.mass .*\+14 %/m);
  });

  it('as Markdown, with whatever a maker wrote kept from acting in it', async () => {
    const bad = '<img src=x> [here](javascript:x) | ::error::x';
    const disk = { ...AFTER, 'bad.bookmatch': `wood w-1 is sitka-spruce { supplier: "${bad}" }\n` };
    const history = historyOf({ HEAD: { ...BEFORE, 'bad.bookmatch': 'wood w-1 is sitka-spruce { supplier: "A" }\n' } });
    const { out } = await bookmatchIn({ history }, disk, 'changes', '--format', 'markdown');
    expect(out).toMatch(/^## From HEAD to the files as they are$/m);
    expect(out).toMatch(/^\| top\.thickness \| 2\.8 mm \| 2\.5 mm \|$/m);
    expect(out).toContain('supplier');
    expect(out).not.toMatch(/<img|(?<!\\)\]\(javascript|(?<!\\)\| ::/m);
  });

  it('as plain data', async () => {
    const { out } = await told(AFTER, 'changes', '--format', 'json');
    const { from, instruments } = JSON.parse(out) as {
      from: string;
      instruments: readonly { name: string; what: string; values: readonly object[]; alike: readonly string[] }[];
    };
    expect(from).toBe('HEAD');
    expect(instruments.find(({ name }) => name === 'corrie-9')).toMatchObject({ what: 'added' });
    expect(instruments.find(({ name }) => name === 'corrie-1')?.values).toEqual([
      { path: 'top.thickness', before: '2.8 mm', after: '2.5 mm' },
    ]);
  });

  it.each([
    ['HEAD~9', /HEAD~9 cannot be read: git knows no such commit\./],
    ['v1...v2', /Two commits are written REV\.\.REV/],
  ])('%s: a sentence and exit code 2', async (range, said) => {
    const { err, out, code } = await told(AFTER, 'changes', range);
    expect(err).toMatch(said);
    expect([out, code]).toEqual(['', 2]);
  });

  it('without git, or in a folder that is not kept with it, says so', async () => {
    const none: History = {
      commit: () => Promise.resolve({ trouble: NO_GIT }),
      texts: () => Promise.resolve({ trouble: NO_GIT }),
    };
    expect((await bookmatchIn({ history: none }, AFTER, 'changes')).err).toContain('git is not installed here');
    expect((await bookmatchIn({}, AFTER, 'changes')).err).toContain('the folder is not kept with git');
  });
});

describe('compare with what was', () => {
  it('an instrument beside itself at a commit, each with the woods of its time', async () => {
    const { out, code } = await told(AFTER, 'compare', 'corrie-1@v1', 'corrie-1');
    expect(code).toBe(0);
    expect(out).toContain('corrie-1@v1 beside corrie-1');
    expect(out).toContain('The same one at two times.');
    expect(out).toMatch(/^ {2}top\.thickness +2\.8 mm +2\.5 mm$/m);
    expect(out).toMatch(/all of it by top\.thickness/);
  });

  it('a name that was not there yet', async () => {
    const { err, code } = await told(AFTER, 'compare', 'corrie-9@v1', 'corrie-9');
    expect(err).toContain('There is nothing called corrie-9 here.');
    expect(code).toBe(2);
  });
});
