/** Requests behind a keystroke before the findings it leads to: messages come as the protocol's library takes them in. */
import { expect, it } from 'vitest';
import { Turns } from '../../language/server/turns.js';

/** Each message in a turn of its own, some of them long. */
function takeIn(messages: (() => void)[]): void {
  setImmediate(() => {
    messages.shift()?.();
    if (messages.length > 0) takeIn(messages);
  });
}

function busyFor(time: number): void {
  const start = performance.now();
  while (performance.now() - start < time);
}

it('what came with a keystroke is answered before its findings are worked out', async () => {
  const turns = new Turns();
  const order: string[] = [];
  const request = (name: string, time: number) => () => {
    turns.note();
    order.push(name);
    busyFor(time);
  };
  await new Promise<void>((done) => {
    const keystroke = () => {
      busyFor(3);
      turns.whenQuiet(() => {
        order.push('findings');
        done();
      });
    };
    takeIn([keystroke, request('hover', 4), request('tokens', 6), request('hints', 0)]);
  });
  expect(order).toEqual(['hover', 'tokens', 'hints', 'findings']);
});

it('findings come, however many requests there are', async () => {
  const turns = new Turns();
  let isOver = false;
  const asking = setInterval(() => {
    turns.note();
  }, 0);
  const start = performance.now();
  const ask = () => {
    turns.note();
    if (!isOver) setImmediate(ask);
  };
  ask();
  await new Promise<void>((done) => {
    turns.whenQuiet(done);
  });
  isOver = true;
  clearInterval(asking);
  expect(performance.now() - start).toBeGreaterThan(40);
});
