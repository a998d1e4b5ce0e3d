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

const [EARLY, LATE] = THOROUGH ? [1000, 6000] : [150, 450];

it(`after ${LATE} edits as after ${EARLY}`, async () => {
  const files = madeShop(1, 4);
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
  const measure = () => {
    gc();
    gc();
    return { kept: session.desk.shelf.memo.size, heap: process.memoryUsage().heapUsed };
  };
  let early: ReturnType<typeof measure> | undefined;
  for (let i = 1; i <= LATE; i++) {
    session.type(uri, edits[i % edits.length]!(i));
    publisher.refresh();
    if (i === EARLY) early = measure();
  }
  const late = measure();
  expect(told).toBeGreaterThan(LATE / 4);
  expect(late.kept).toBeLessThan(1.05 * early!.kept);
  // So few edits as in a sample say nothing about the heap.
  if (THOROUGH) expect(late.heap).toBeLessThan(1.1 * early!.heap);
}, 900_000);
