import { describe, expect, it } from 'vitest';
import { SMALL_SHOP } from './small-shop.js';
import { bookmatch, bookmatchIn, filesOf } from './terminal.js';

describe('lineage', () => {
  it('draws who comes from whom, with the changes counted and the builds', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'lineage');
    expect(code).toBe(0);
    expect(out.trimEnd().split('\n')).toEqual([
      'corrie      model',
      '└ corrie-1  base recipe        built: no-1',
      '  corrie-2  1 change counted',
      '  corrie-3  2 changes counted',
    ]);
  });

  it('goes a step to the right only where a line forks', async () => {
    const forks = 'recipe a from corrie-2 { }\nrecipe b from a { }\nrecipe c from corrie-1 { }\n';
    const { out } = await bookmatch({ ...SMALL_SHOP, 'forks.bookmatch': forks }, 'lineage');
    const names = out.trimEnd().split('\n');
    expect(names.map((line) => line.replace(/ {2,}(model|base|no change|1 change|2 changes).*/, ''))).toEqual([
      'corrie',
      '└ corrie-1',
      '  ├ c',
      '  └ corrie-2',
      '    ├ a',
      '    │ b',
      '    └ corrie-3',
    ]);
  });

  it('of one recipe: the way down to it and what descends from it', async () => {
    const disk = {
      ...SMALL_SHOP,
      'aside.bookmatch': 'recipe corrie-9 from corrie-1 { }\nrecipe other for other { }\n',
    };
    const { out } = await bookmatch(disk, 'lineage', 'corrie-2', '--format', 'json');
    const names = [...out.matchAll(/"name": "([^"]+)"/g)].map(([, name]) => name);
    expect(names).toEqual(['corrie', 'corrie-1', 'corrie-2', 'corrie-3']);
    expect(JSON.parse(out)).toMatchObject({
      lineage: [
        { kind: 'model', children: [{ builds: ['no-1'], children: [{ changes: 1, children: [{ changes: 2 }] }] }] },
      ],
    });
  });

  it('leaves out no recipe: those without a parent, and those whose parents go round in a ring', async () => {
    const disk = {
      'r.bookmatch': 'recipe a from b { }\nrecipe b from a { }\nrecipe c from nowhere { }\nrecipe d from c { }\n',
    };
    const { out, code } = await bookmatch(disk, 'lineage');
    for (const name of ['a', 'b', 'c', 'd']) expect(out).toMatch(new RegExp(`^\\W*${name} `, 'm'));
    expect(code).toBe(0);
  });

  it('of an unknown name: exit code 2', async () => {
    const { err, code } = await bookmatch(SMALL_SHOP, 'lineage', 'corrie-8');
    expect(err).toMatch(/Did you mean corrie-1/);
    expect(code).toBe(2);
  });
});

describe('words', () => {
  it('lists what there is, and says where more stands', async () => {
    const { out, code } = await bookmatch({}, 'words');
    expect(code).toBe(0);
    for (const word of ['recipe', 'change', 'bracing', 'thou', 'first-tests', 'red-spruce'])
      expect(out).toContain(word);
  });

  it('tells one by what makers call it, with all that lies inside', async () => {
    expect((await bookmatch({}, 'words', 'dome')).out).toMatch(/^body\.top-radius {2}ft/);
    const { out } = await bookmatch({}, 'words', 'Hals');
    for (const path of ['neck.wood', 'neck.join-fret', 'neck.heel.length', 'neck.mass']) expect(out).toContain(path);
  });

  it('of nothing there is: exit code 2, with what is near', async () => {
    const { err, code } = await bookmatch({}, 'words', 'soundbaord');
    expect(err).toMatch(/There is no word soundbaord\. Did you mean soundboard/);
    expect(code).toBe(2);
  });
});

describe('rules', () => {
  it('lists every code', async () => {
    const { out, code } = await bookmatch({}, 'rules');
    expect(out).toMatch(/^too-many-changes +warning +\S/m);
    expect(out).toMatch(/^unknown-unit +error +\S/m);
    expect(code).toBe(0);
  });

  it('prints the page of one, with examples', async () => {
    const { out, code } = await bookmatch({}, 'rules', 'too-many-changes');
    expect(out).toMatch(/^# too-many-changes$/m);
    expect(out).toContain('```bookmatch');
    expect(code).toBe(0);
  });

  it('an unknown code: exit code 2', async () => {
    const { err, code } = await bookmatch({}, 'rules', 'to-many-changes');
    expect(err).toMatch(/There is no finding with the code to-many-changes\. Did you mean too-many-changes\?/);
    expect(code).toBe(2);
  });
});

describe('the command line as a whole', () => {
  it('nothing asked: says what can be asked, exit code 2', async () => {
    const { out, err, code } = await bookmatch(SMALL_SHOP);
    expect(err).toMatch(/Usage: bookmatch .*check.*show.*compare.*lineage.*rules/s);
    expect(out).toBe('');
    expect(code).toBe(2);
  });

  it('--help and --version are no mistakes', async () => {
    const help = await bookmatch({}, '--help');
    expect([help.code, help.err]).toEqual([0, '']);
    expect(help.out).toContain('Usage: bookmatch');
    const version = await bookmatch({}, '--version');
    expect([version.code, version.err]).toEqual([0, '']);
    expect(version.out).toMatch(/^\d+\.\d+\.\d+\n$/);
    expect((await bookmatch({}, 'check', '--help')).out).toContain('--fail-on');
  });

  it('an unknown command: exit code 2, and what was meant', async () => {
    const { err, code } = await bookmatch(SMALL_SHOP, 'chek');
    expect(err).toMatch(/Unknown command chek/);
    expect(err).toMatch(/check/);
    expect(code).toBe(2);
  });

  it('a fault of its own is told in plain words, with exit code 2', async () => {
    const files = { ...filesOf(SMALL_SHOP), find: () => Promise.reject(new Error('the disk went away')) };
    const { err, code, out } = await bookmatchIn({ files }, SMALL_SHOP, 'check');
    expect(err).toMatch(/^Bookmatch has met a fault of its own .*your files are as they were\.\nPlease report it/);
    expect(err).toContain('the disk went away');
    expect(out).toBe('');
    expect(code).toBe(2);
  });
});
