/** While a folder is still being read, nothing is told that would have to be withdrawn. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Publisher } from '../../language/server/publisher.js';
import { Session } from '../../language/server/session.js';

const SHOP = 'file:///shop';
const uri = (name: string) => `${SHOP}/${name}.bookmatch`;
const vennick = ['vennick', 'vennick-recipes', 'woods', 'shop']
  .map((name) => readFileSync(`examples/hollin-reach/${name}.bookmatch`, 'utf8'))
  .join('\n');
const CHILD = 'recipe late from vennick-31 {\n  because "Tried."\n  change bridge.mass: by -1 g\n}\n';

/** A disk as slow as one likes: each file is given when `deliver` is called for it. */
function slowDisk(files: Readonly<Record<string, string>>) {
  const waiting = new Map<string, (() => void)[]>();
  const texts = new Map(Object.entries(files));
  return {
    texts,
    list: () => Promise.resolve([...texts.keys()]),
    read: (asked: string) =>
      new Promise<string | undefined>((give) => {
        // What is read is what is there when the reading begins.
        const text = texts.get(asked);
        waiting.set(asked, [...(waiting.get(asked) ?? []), () => give(text)]);
      }),
    /** The readings of a file under way, ended in an order of one's own. */
    deliver: async (asked: string, order: 'as asked' | 'newest first' = 'as asked') => {
      const gives = waiting.get(asked) ?? [];
      waiting.delete(asked);
      for (const give of order === 'as asked' ? gives : [...gives].reverse()) {
        give();
        await turn();
      }
    },
  };
}

const turn = () => new Promise((go) => void setTimeout(go, 0));

function watched(disk: ReturnType<typeof slowDisk>) {
  const session = new Session(disk);
  const told: { uri: string; codes: readonly unknown[] }[] = [];
  const publisher = new Publisher(session, {
    send: ({ uri: about, diagnostics }) => void told.push({ uri: about, codes: diagnostics.map(({ code }) => code) }),
    versionOf: () => null,
    later: (work) => {
      work();
    },
  });
  const of = (name: string) => told.filter((one) => one.uri === uri(name)).map(({ codes }) => codes);
  return { session, publisher, of };
}

describe('a folder that is still being read', () => {
  it('what leans on its other files waits; what the text itself has wrong does not', async () => {
    const disk = slowDisk({ [uri('vennick')]: vennick });
    const { session, publisher, of } = watched(disk);
    const loading = session.load([SHOP]);
    await turn();
    session.type(uri('a'), `${CHILD}}}\n`);
    publisher.refresh();
    expect(of('a')).toEqual([['stray-brace', 'stray-brace']]);
    session.type(uri('b'), CHILD);
    publisher.refresh();
    expect(of('b')).toEqual([]);
    await disk.deliver(uri('vennick'));
    await loading;
    publisher.refresh();
    const codes = [...of('a'), ...of('b')].flat();
    expect(codes).not.toContain('missing-parent');
    expect(codes).not.toContain('unknown-name');
    expect(of('a').at(-1)).toContain('stray-brace');
  });

  it('what was told before a further folder is opened stays until that is read', async () => {
    const disk = slowDisk({ [uri('vennick')]: vennick });
    const { session, publisher, of } = watched(disk);
    const loading = session.load([SHOP]);
    await turn();
    await disk.deliver(uri('vennick'));
    await loading;
    session.type(uri('a'), CHILD.replace('vennick-31', 'vennick-99'));
    publisher.refresh();
    expect(of('a')).toHaveLength(1);
    expect(of('a')[0]).toContain('missing-parent');
    disk.texts.set('file:///other/b.bookmatch', 'recipe vennick-99 for vennick { }');
    const more = session.load(['file:///other']);
    await turn();
    session.type(uri('a'), `${CHILD.replace('vennick-31', 'vennick-99')}\n`);
    publisher.refresh();
    expect(of('a')).toHaveLength(1);
    await disk.deliver(uri('vennick'));
    await disk.deliver('file:///other/b.bookmatch');
    await more;
    publisher.refresh();
    expect(of('a').at(-1)).not.toContain('missing-parent');
  });
});

describe('readings of one file that overtake each other', () => {
  it.each(['as asked', 'newest first'] as const)('%s: the later begun counts', async (order) => {
    const disk = slowDisk({});
    const { session } = watched(disk);
    await session.load([SHOP]);
    disk.texts.set(uri('a'), 'recipe old for m { }');
    const first = session.changedOnDisk(uri('a'));
    disk.texts.set(uri('a'), 'recipe new for m { }');
    const second = session.changedOnDisk(uri('a'));
    await disk.deliver(uri('a'), order);
    await Promise.all([first, second]);
    expect(session.desk.shelf.names('recipe')).toEqual(['new']);
  });

  it('a file opened again before its closing is over stays as it is in the editor', async () => {
    const disk = slowDisk({});
    const { session } = watched(disk);
    await session.load([SHOP]);
    disk.texts.set(uri('a'), 'recipe stored for m { }');
    session.type(uri('a'), 'recipe typed for m { }');
    const closing = session.close(uri('a'));
    session.type(uri('a'), 'recipe typed for m { }');
    await disk.deliver(uri('a'));
    await closing;
    expect(session.desk.shelf.names('recipe')).toEqual(['typed']);
    const again = session.close(uri('a'));
    await disk.deliver(uri('a'));
    await again;
    expect(session.desk.shelf.names('recipe')).toEqual(['stored']);
  });

  it('a file of no open folder goes when it is closed, and so does one whose folder was closed meanwhile', async () => {
    const disk = slowDisk({
      'file:///far/a.bookmatch': 'recipe far for m { }',
      [uri('.hidden/a')]: 'recipe hid for m { }',
    });
    const { session } = watched(disk);
    const loading = session.load([SHOP]);
    await turn();
    await disk.deliver('file:///far/a.bookmatch');
    await disk.deliver(uri('.hidden/a'));
    await loading;
    for (const one of ['file:///far/a.bookmatch', uri('.hidden/a'), uri('late')]) {
      session.type(one, 'recipe typed for m { }');
      if (one === uri('late')) session.leave([SHOP]);
      await session.close(one);
      expect(session.desk.shelf.names('recipe'), one).toEqual([]);
    }
  });
});
