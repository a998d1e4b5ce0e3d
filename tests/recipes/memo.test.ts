import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CycleError, Memo } from '../../language/recipes/shelf/memo.js';
import { THOROUGH } from '../thorough.js';

describe('remembered answers', () => {
  it('computes once while nothing it read changes', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    number.set('a', 2);
    const square = memo.query('square', (key: string) => number.get(key)! ** 2);
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
    const isEven = memo.query('isEven', (key: string) => number.get(key)! % 2 === 0);
    const word = memo.query('word', (key: string) => (isEven.get(key) ? 'even' : 'odd'));
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
    const chosen = memo.query('chosen', () => value.get(value.get('choice')!)!);
    expect(chosen.get('')).toBe('L');
    value.set('right', 'changed');
    expect(chosen.get('')).toBe('L');
    expect(memo.computed).toBe(1);
    value.set('choice', 'right');
    expect(chosen.get('')).toBe('changed');
  });

  it('keeps what was thrown, and asks again when what it read has changed', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    const root = memo.query('root', (key: string) => {
      const value = number.get(key);
      if (value === undefined || value < 0) throw new Error(`no root of ${key}`);
      return Math.sqrt(value);
    });
    const told = memo.query('told', (key: string) => {
      try {
        return String(root.get(key));
      } catch (error) {
        return (error as Error).message;
      }
    });
    expect(told.get('a')).toBe('no root of a');
    expect(() => root.get('a')).toThrow('no root of a');
    expect(memo.computed).toBe(2);
    number.set('a', -1);
    expect(told.get('a')).toBe('no root of a');
    expect(memo.computed).toBe(3); // the same fault is no change
    number.set('a', 9);
    expect(told.get('a')).toBe('3');
  });

  it('an input set in the middle of a question takes effect after it', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    number.set('a', 1);
    const meddling = memo.query('meddling', () => {
      const value = number.get('a')!;
      if (value < 3) number.set('a', value + 1);
      return value;
    });
    expect([meddling.get(''), meddling.get(''), meddling.get(''), meddling.get('')]).toEqual([1, 2, 3, 3]);
  });
});

describe('marks', () => {
  it('reach what leans on a changed input and nothing else, each once', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    const marked: string[] = [];
    const square = memo.query('square', (key: string) => (number.get(key) ?? 0) ** 2);
    const shown = memo.query('shown', (key: string) => String(square.get(key)), {
      marked: (key) => void marked.push(key),
    });
    const all = ['a', 'b', 'c'];
    for (const key of all) shown.get(key);
    number.set('b', 4);
    number.set('b', 5);
    expect(marked).toEqual(['b']);
    const before = memo.computed;
    for (const key of all) shown.get(key);
    expect(memo.computed - before).toBe(2);
  });
});

describe('a question that leads back to itself', () => {
  const rings = (next: Readonly<Record<string, string>>) => {
    const memo = new Memo();
    const to = memo.input<string, string>();
    for (const [from, target] of Object.entries(next)) to.set(from, target);
    const depth: { get(key: string): number } = memo.query('depth', (key: string): number => {
      const target = to.get(key);
      return target === undefined ? 0 : depth.get(target) + 1;
    });
    return { to, depth };
  };
  const ringMet = (ask: () => unknown) => {
    try {
      ask();
    } catch (error) {
      if (error instanceof CycleError) return error.ring.map(({ key }) => key);
      throw error;
    }
    return undefined;
  };

  it('fails for all of the ring alike, and names it', () => {
    const { depth } = rings({ a: 'b', b: 'c', c: 'b' });
    for (const key of ['c', 'a', 'b'])
      expect(
        ringMet(() => depth.get(key)),
        key,
      ).toEqual(['b', 'c']);
    expect(() => depth.get('a')).toThrow('depth b → depth c');
    expect(ringMet(() => rings({ m: 'm' }).depth.get('m'))).toEqual(['m']);
  });

  it('has its answer once the ring is cut, wherever that is, and none when it is closed again', () => {
    const { to, depth } = rings({ a: 'b', b: 'c', c: 'a', z: 'a' });
    for (const cut of ['a', 'b', 'c']) {
      for (const key of ['z', 'a', 'b', 'c'])
        expect(
          ringMet(() => depth.get(key)),
          cut,
        ).toEqual(['a', 'b', 'c']);
      const before = to.get(cut);
      to.set(cut, undefined);
      expect(['z', 'a', 'b', 'c'].map((key) => depth.get(key)).sort()).toHaveLength(4);
      expect(depth.get(cut)).toBe(0);
      to.set(cut, before);
    }
  });
});

describe('forgetting', () => {
  it('lets go of what nobody leans on and nobody asked for lately, and of what only that leant on', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    const twice = memo.query('twice', (key: string) => 2 * (number.get(key) ?? 0));
    const shown = memo.query('shown', (key: string) => String(twice.get(key)));
    shown.get('stays');
    const before = memo.size;
    for (let i = 0; i < 1000; i++) {
      shown.get(`name-${i}`);
      shown.get('stays');
      memo.sweep();
    }
    expect(memo.size).toBeLessThan(before + 3 * 70);
    const computed = memo.computed;
    shown.get('stays');
    expect(memo.computed).toBe(computed);
    number.set('stays', 4);
    expect(shown.get('stays')).toBe('8');
  });

  it('keeps what something kept leans on, however old', () => {
    const memo = new Memo();
    const number = memo.input<string, number>();
    const thing = { name: 'thing' };
    const twice = memo.query('twice', (key: string) => 2 * (number.get(key) ?? 0));
    const ofThing = memo.query('ofThing', (key: typeof thing) => twice.get(key.name), { isBoundToKey: true });
    ofThing.get(thing);
    for (let i = 0; i < 200; i++) memo.sweep();
    const computed = memo.computed;
    ofThing.get(thing);
    twice.get('thing');
    expect(memo.computed).toBe(computed);
    memo.forget([thing]);
    for (let i = 0; i < 200; i++) memo.sweep();
    expect(memo.size).toBe(0);
    ofThing.get(thing); // asked late: answered, and not kept
    for (let i = 0; i < 200; i++) memo.sweep();
    expect(memo.size).toBe(0);
  });
});

/** A made-up program: every query reads some inputs and queries, which ones depending on what it has read so far. */
interface Program {
  readonly steps: readonly { readonly from: 'input' | 'query'; readonly at: number; readonly ifOdd: boolean }[];
  /** Answers for itself when something it asks for fails. */
  readonly isBarrier: boolean;
}

const INPUTS = 4;
const QUERIES = 6;

function running(programs: readonly Program[], inputs: readonly number[]) {
  const memo = new Memo();
  const number = memo.input<number, number>();
  inputs.forEach((value, i) => number.set(i, value));
  const query: { get(key: number): number } = memo.query('query', (key: number): number => {
    const { steps, isBarrier } = programs[key]!;
    let sum = key;
    for (const { from, at, ifOdd } of steps) {
      if (ifOdd && sum % 2 === 0) continue;
      if (from === 'input') sum += number.get(at) ?? 0;
      else if (!isBarrier) sum += query.get(at);
      else {
        try {
          sum += query.get(at);
        } catch {
          sum += 100;
        }
      }
    }
    return sum % 8;
  });
  const answer = (key: number): string => {
    try {
      return String(query.get(key));
    } catch (error) {
      return (error as Error).name;
    }
  };
  return { memo, number, answer };
}

const step = fc.record({
  from: fc.constantFrom('input' as const, 'query' as const),
  at: fc.nat({ max: INPUTS - 1 }),
  ifOdd: fc.boolean(),
});
const program = fc.record({ steps: fc.array(step, { maxLength: 4 }), isBarrier: fc.boolean() });
const programs = fc.array(program, { minLength: QUERIES, maxLength: QUERIES });
const keys = Array.from({ length: QUERIES }, (_, key) => key);

describe('whatever is asked, in whatever order, after whatever edits', () => {
  it('the answers are those of a fresh start', () => {
    const edit = fc.record({
      at: fc.nat({ max: INPUTS - 1 }),
      value: fc.option(fc.nat({ max: 7 }), { nil: undefined }),
      ask: fc.array(fc.nat({ max: QUERIES - 1 }), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(programs, fc.array(edit, { minLength: 1, maxLength: 12 }), (made, edits) => {
        // Without rings here: a query asks only those before it.
        const acyclic = made.map((one, key) => ({
          ...one,
          steps: one.steps.filter(({ from, at }) => from === 'input' || at < key),
        }));
        const values: (number | undefined)[] = [1, 2, 3, 4];
        const { memo, number, answer } = running(acyclic, [1, 2, 3, 4]);
        for (const { at, value, ask } of edits) {
          number.set(at, value);
          values[at] = value;
          const fresh = running(acyclic, []);
          values.forEach((each, i) => fresh.number.set(i, each));
          for (const key of ask) expect(answer(key)).toBe(fresh.answer(key));
          for (let i = 0; i < at * 40; i++) memo.sweep();
        }
      }),
      { numRuns: THOROUGH ? 1500 : 300 },
    );
  });

  it('with rings too, as long as nobody in a ring answers for itself', () => {
    const edit = fc.record({ at: fc.nat({ max: INPUTS - 1 }), value: fc.nat({ max: 7 }) });
    fc.assert(
      fc.property(programs, fc.array(edit, { minLength: 1, maxLength: 8 }), fc.nat(), (made, edits, turn) => {
        const plain = made.map((one) => ({ ...one, isBarrier: false }));
        const values = [1, 2, 3, 4];
        const { number, answer } = running(plain, values);
        edits.forEach(({ at, value }, i) => {
          number.set(at, value);
          values[at] = value;
          const fresh = running(plain, values);
          const order = keys.map((key) => (key + turn + i) % QUERIES);
          expect(order.map(answer)).toEqual([...order].reverse().map(fresh.answer).reverse());
        });
      }),
      { numRuns: THOROUGH ? 1500 : 300 },
    );
  });
});
