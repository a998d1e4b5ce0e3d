/** Typing for a day takes no more memory than typing for an hour: every keystroke makes new names, paths and texts. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, it } from 'vitest';
import { Publisher } from '../../language/server/publisher.js';
import { Session } from '../../language/server/session.js';
import { madeShop, uriOf } from '../scale/made-shop.js';
import { THOROUGH } from '../thorough.js';

setFlagsFromString('--expose-gc');
const gc = runInNewContext('gc') as () => void;

/** Of a whole instrument each edit is checked anew, which takes some 20 ms; of a small one, 2 ms, and so it can be typed in for a day. */
const WHOLE = { name: 'a whole instrument', files: madeShop(1, 4), edits: THOROUGH ? [1000, 3000] : [150, 450] };
const SMALL = { name: 'a small one', files: smallShop(), edits: [1000, 30_000] };

it.each(THOROUGH ? [WHOLE, SMALL] : [WHOLE])(
  'typing in $name takes no more memory later on: $edits edits',
  { timeout: 900_000 },
  async ({ files, edits: [early, late] }) => {
    const uri = uriOf('chain-0');
    const text = files.get(uri)!;
    const session = new Session({
      list: () => Promise.resolve([...files.keys()]),
      read: (asked) => Promise.resolve(files.get(asked)),
    });
    await session.load(['file:///made-shop']);
    let told = 0;
    const publisher = new Publisher(session, {
      send: () => told++,
      versionOf: () => null,
      later: (work) => {
        work();
      },
    });
    /** Every kind of thing that an edit can make anew: a value, a name, a target, a path, a text. */
    const edits: readonly ((i: number) => string)[] = [
      (i) => text.replace('thickness: 2.80 mm', `thickness: 2.${60 + (i % 40)} mm`),
      (i) => text.replace('recipe c0-1 ', `recipe x${i} `),
      (i) => text.replace('from c0-0', `from d${i}`),
      (i) => text.replace('bracing.x-bass.height', `bracing.x-${i}.height`),
      (i) => text.replace('"Lighter bridge."', `"Lighter bridge ${i}."`),
    ];
    for (const edit of edits) expect(edit(1)).not.toBe(text);
    const measure = () => {
      gc();
      gc();
      return { kept: session.desk.shelf.memo.size, heap: process.memoryUsage().heapUsed };
    };
    let before: ReturnType<typeof measure> | undefined;
    for (let i = 1; i <= late!; i++) {
      session.type(uri, edits[i % edits.length]!(i));
      publisher.refresh();
      // Each keystroke is a message of its own: what a message looked at weakly is held until its turn ends.
      await new Promise((resolve) => setImmediate(resolve));
      if (i === early) before = measure();
    }
    const after = measure();
    expect(told).toBeGreaterThan(late! / 4);
    expect(after.kept).toBeLessThan(1.05 * before!.kept);
    // So few edits as in a sample say nothing about the heap.
    if (THOROUGH) expect(after.heap).toBeLessThan(1.1 * before!.heap);
  },
);

/** A model of which little is known, and two recipes. */
function smallShop(): ReadonlyMap<string, string> {
  return new Map([
    [
      uriOf('chain-0'),
      `model m { scale: 645 mm  bracing { x-bass { height: 15 mm  width: 8 mm } } }
recipe c0-0 for m { because "First."  top.thickness: 2.80 mm }
recipe c0-1 from c0-0 { because "Lighter bridge."  change bracing.x-bass.height: by -1 mm }
`,
    ],
  ]);
}
