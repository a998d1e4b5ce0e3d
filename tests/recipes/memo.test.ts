import { describe, expect, it } from 'vitest';
import { Memo } from '../../language/recipes/memo.js';

describe('remembered answers', () => {
  it('computes once while nothing it read changes', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    number.set('a', 2);
    const square = memo.query((key: string) => number.get(key)! ** 2);
    expect(square.get('a')).toBe(4);
    number.set('b', 9);
    expect(square.get('a')).toBe(4);
    expect(memo.computed).toBe(1);
    number.set('a', 3);
    expect(square.get('a')).toBe(9);
    expect(memo.computed).toBe(2);
  });

  it('stops the wave where an answer comes out the same', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    number.set('a', 2);
    const isEven = memo.query((key: string) => number.get(key)! % 2 === 0);
    const word = memo.query((key: string) => (isEven.get(key) ? 'even' : 'odd'));
    expect(word.get('a')).toBe('even');
    number.set('a', 4);
    expect(word.get('a')).toBe('even');
    expect(memo.computed).toBe(3); // isEven twice, word once
  });

  it('follows what was read last time, not what is written in the code', () => {
    const memo = new Memo();
    const value = memo.input<string, string>();
    value.set('choice', 'left');
    value.set('left', 'L');
    value.set('right', 'R');
    const chosen = memo.query(() => value.get(value.get('choice')!)!);
    expect(chosen.get('')).toBe('L');
    value.set('right', 'changed');
    expect(chosen.get('')).toBe('L');
    expect(memo.computed).toBe(1);
    value.set('choice', 'right');
    expect(chosen.get('')).toBe('changed');
  });

  it('answers a question that needs itself through onCycle, and again after the ring is cut', () => {
    const memo = new Memo();
    const next = memo.input<string, string>();
    next.set('a', 'b');
    next.set('b', 'a');
    const depth: { get(key: string): number } = memo.query(
      (key: string): number => {
        const to = next.get(key);
        return to === undefined ? 0 : depth.get(to) + 1;
      },
      { onCycle: () => Number.NaN },
    );
    expect(depth.get('a')).toBeNaN();
    next.set('b', undefined);
    expect(depth.get('a')).toBe(1);
    expect(depth.get('b')).toBe(0);
  });
});
