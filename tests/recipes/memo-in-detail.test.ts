/** What memo.test.ts leaves open, found by mutants that lived (tests/mutation): what is let go of when, and what is worked out again. */
import { beforeEach, describe, expect, it } from 'vitest';
import { CycleError, type Input, Memo } from '../../language/recipes/shelf/memo.js';

let memo: Memo;
let number: Input<string, number>;

beforeEach(() => {
  memo = new Memo();
  number = memo.input<string, number>();
});

const sweep = (times: number) => {
  for (let i = 0; i < times; i++) memo.sweep();
};
const computedIn = (work: () => void) => {
  const before = memo.computed;
  work();
  return memo.computed - before;
};
const caught = (work: () => unknown): unknown => {
  try {
    work();
  } catch (error) {
    return error;
  }
  return undefined;
};
/** By key `k`: `choice` says which of two others is read. */
const choosing = (marked?: (key: string) => void) =>
  memo.query(
    'chosen',
    (key: string) => number.get(number.get(`choice-${key}`) === 1 ? 'left' : 'right'),
    marked ? { marked } : {},
  );

describe('inputs', () => {
  it('are kept as long as something was put in', () => {
    number.set('a', 1);
    number.set('b', 2);
    expect(memo.size).toBe(2);
    sweep(200);
    expect(memo.size).toBe(2);
    number.set('a', undefined);
    sweep(64);
    expect(memo.size).toBe(1);
  });

  it('asked for and never set go like any answer; one set meanwhile stays', () => {
    expect(number.get('x')).toBeUndefined();
    expect(number.get('y')).toBeUndefined();
    number.set('y', 7);
    sweep(200);
    expect(memo.size).toBe(1);
    expect(number.get('y')).toBe(7);
  });

  it('are the same where their own measure says so, which is asked of two values only', () => {
    const sized = memo.input<string, { readonly size: number }>((a, b) => a.size === b.size);
    const shown = memo.query('shown', (key: string) => sized.get(key)?.size);
    sized.set('a', undefined);
    expect(memo.size).toBe(0);
    expect(shown.get('a')).toBeUndefined();
    sized.set('a', { size: 1 });
    expect(shown.get('a')).toBe(1);
    expect(computedIn(() => (sized.set('a', { size: 1 }), shown.get('a')))).toBe(0);
    sized.set('a', { size: 2 });
    expect(shown.get('a')).toBe(2);
    sized.set('a', undefined);
    expect(shown.get('a')).toBeUndefined();
    expect(computedIn(() => (sized.set('a', undefined), shown.get('a')))).toBe(0);
  });

  it('set in the middle of a question stay as they were until it has its answer, whatever is asked meanwhile', () => {
    number.set('a', 1);
    const other = memo.query('other', () => 0);
    const seen = memo.query('seen', () => {
      number.set('a', 2);
      other.get('');
      return number.get('a');
    });
    expect(seen.get('')).toBe(1);
    expect(number.get('a')).toBe(2);
  });
});

describe('what is let go of', () => {
  it('an answer 64 edits after it was last asked for, and not before', () => {
    const one = memo.query('one', () => 1);
    one.get('');
    sweep(63);
    expect(memo.size).toBe(1);
    sweep(1);
    expect(memo.size).toBe(0);
  });

  it('nothing while a question is being answered', () => {
    const one = memo.query('one', () => 1);
    one.get('');
    memo
      .query('sweeping', () => {
        sweep(200);
      })
      .get('');
    expect(computedIn(() => one.get(''))).toBe(0);
  });

  it.each([
    ['before', ['twice', 'shown']],
    ['after', ['shown', 'twice']],
  ] as const)('never what another leans on, asked for %s it', (_, order) => {
    number.set('a', 1);
    const twice = memo.query('twice', (key: string) => 2 * number.get(key)!);
    const shown = memo.query('shown', (key: string) => String(twice.get(key)));
    for (const each of order) ({ twice, shown })[each].get('a');
    for (let i = 0; i < 200; i++) {
      memo.sweep();
      shown.get('a');
    }
    number.set('a', 5);
    expect(shown.get('a')).toBe('10');
  });

  it('what was read before and is no more: not told of, and gone in time', () => {
    const marked: string[] = [];
    const chosen = choosing((key) => void marked.push(key));
    number.set('choice-k', 1);
    expect(chosen.get('k')).toBeUndefined();
    number.set('choice-k', 2); // reads another
    chosen.get('k');
    expect(memo.size).toBe(4);
    marked.length = 0;
    number.set('left', 5);
    expect(marked).toEqual([]);
    number.set('left', undefined);
    for (let i = 0; i < 65; i++) {
      chosen.get('k');
      memo.sweep();
    }
    expect(memo.size).toBe(3); // the choice, what it chose, the answer
    number.set('right', 5);
    expect(marked).toEqual(['k']);
  });

  it('at once when it stops being read, however often and by however many it was', () => {
    const part = memo.query('part', (key: string) => number.get(key));
    const chosen = memo.query('chosen', (key: string) => {
      const choice = number.get(`choice-${key}`)!;
      return choice > 0 ? (part.get('left') ?? 0) + choice : 0;
    });
    for (const key of ['a', 'b', 'c']) number.set(`choice-${key}`, 1);
    for (const key of ['a', 'b', 'c']) chosen.get(key);
    number.set('choice-a', 2); // once more by the same
    chosen.get('a');
    number.set('choice-b', 0);
    chosen.get('b');
    number.set('left', 3);
    expect([chosen.get('a'), chosen.get('b'), chosen.get('c')]).toEqual([5, 0, 4]);
    for (const key of ['a', 'c']) number.set(`choice-${key}`, 0);
    for (const key of ['a', 'c']) chosen.get(key);
    number.set('left', undefined);
    for (let i = 0; i < 130; i++) {
      for (const key of ['a', 'b', 'c']) chosen.get(key);
      memo.sweep();
    }
    expect(memo.size).toBe(6); // three choices and three answers
  });
});

describe('what is asked aside', () => {
  it('is answered, is not leant on, and goes like what somebody outside asked for', () => {
    number.set('a', 1);
    const part = memo.query('part', (key: string) => number.get(key));
    const whole = memo.query('whole', () => {
      number.get('b');
      return memo.aside(() => part.get('a'));
    });
    expect(whole.get('')).toBe(1);
    number.set('a', 2);
    expect(computedIn(() => expect(whole.get('')).toBe(1))).toBe(0);
    number.set('b', 1);
    expect(whole.get('')).toBe(2);
    for (let i = 0; i < 65; i++) {
      memo.sweep();
      whole.get('');
    }
    expect(memo.size).toBe(3); // two inputs and the answer that is asked for
  });
});

describe('what is bound to a key', () => {
  const thing = { name: 'thing' };

  it('is worked out each time once that is gone, and remembered when it is back', () => {
    let times = 0;
    const ofThing = memo.query('ofThing', (key: typeof thing) => ++times + key.name.length, { isBoundToKey: true });
    const unbound = memo.query('unbound', (key: typeof thing) => ++times + key.name.length);
    memo.forget([thing]);
    ofThing.get(thing);
    ofThing.get(thing);
    expect([times, memo.size]).toEqual([2, 0]);
    unbound.get(thing);
    unbound.get(thing);
    expect([times, memo.size]).toEqual([3, 1]);
    memo.recall(thing);
    ofThing.get(thing);
    ofThing.get(thing);
    expect([times, memo.size]).toEqual([4, 2]);
  });

  it('goes with keys of every kind', () => {
    const bound = memo.query('bound', (key: unknown) => String(key), { isBoundToKey: true });
    for (const key of ['text', null, undefined, 3]) bound.get(key);
    sweep(200);
    expect(memo.size).toBe(4);
    memo.forget(['text', null, undefined, 3]);
    expect(memo.size).toBe(0);
  });

  it('is asked for again by whoever leant on it', () => {
    const marked: string[] = [];
    let word = 'old';
    const ofThing = memo.query('ofThing', () => word, { isBoundToKey: true });
    const shown = memo.query('shown', (key: string) => ofThing.get(thing) + key.slice(1), {
      marked: (key) => void marked.push(key),
    });
    expect(shown.get('a')).toBe('old');
    word = 'new';
    memo.forget([thing]);
    expect(marked).toEqual(['a']);
    expect(shown.get('a')).toBe('new');
  });

  it('takes with it what only it leant on, and leaves what somebody asked for in the last 64 edits', () => {
    const part = memo.query('part', (key: string) => key.length);
    const bound = memo.query('bound', ({ name }: typeof thing) => part.get(name), { isBoundToKey: true });
    sweep(100);
    bound.get(thing);
    memo.forget([thing]);
    expect(memo.size).toBe(0);
    for (const [edits, left] of [
      [0, 1],
      [63, 1],
      [64, 0],
    ] as const) {
      const another = { name: `${edits}` };
      bound.get(another);
      part.get(another.name);
      sweep(edits);
      memo.forget([another]);
      expect(memo.size, `${edits} edits`).toBe(left);
      sweep(200);
    }
  });
});

describe('what is worked out again', () => {
  it('nothing that comes after what has changed, and may not be asked for any more', () => {
    number.set('flag', 1);
    number.set('large', 1);
    const flag = memo.query('flag', () => number.get('flag'));
    const large = memo.query('large', () => number.get('large'));
    const chosen = memo.query('chosen', () => (flag.get('') === 1 ? large.get('') : 0));
    chosen.get('');
    number.set('flag', 2);
    number.set('large', 2);
    expect(computedIn(() => chosen.get(''))).toBe(2); // flag, chosen
  });

  it('what was thrown before and is an answer of nothing now', () => {
    number.set('a', 1);
    const empty = memo.query('empty', () => {
      if (number.get('a') === 1) throw new Error('not yet');
    });
    expect(caught(() => empty.get(''))).toBeInstanceOf(Error);
    number.set('a', 2);
    expect(caught(() => empty.get(''))).toBeUndefined();
  });

  it('by a measure that is asked of two answers only', () => {
    number.set('a', 1);
    const list = memo.query('list', () => [number.get('a')! % 2], { equal: (a, b) => a[0] === b[0] });
    const shown = memo.query('shown', () => list.get('').join());
    expect(shown.get('')).toBe('1');
    number.set('a', 3);
    expect(computedIn(() => shown.get(''))).toBe(1);
    number.set('a', 4);
    expect(shown.get('')).toBe('0');
  });

  it('whoever leans on a fault, if it is another', () => {
    const faults: unknown[] = [
      new Error('one'),
      new Error('one'),
      new Error('two'),
      null,
      null,
      'two',
      'two',
      undefined,
    ];
    number.set('at', 0);
    const failing = memo.query('failing', () => {
      throw faults[number.get('at')!];
    });
    const told = memo.query('told', () => [caught(() => failing.get(''))]);
    const shown = (error: unknown) => (error instanceof Error ? `Error ${error.message}` : String(error));
    const again: number[] = [];
    faults.forEach((fault, at) => {
      number.set('at', at);
      again.push(computedIn(() => expect(shown(told.get('')[0])).toBe(shown(fault))));
    });
    // The fault each time, and who leans on it where it is another.
    expect(again).toEqual([2, 1, 2, 2, 1, 2, 1, 2]);
    number.set('at', 2);
    expect(shown(told.get('')[0])).toBe('Error two');
    number.set('at', 3);
    expect(shown(told.get('')[0])).toBe('null');
  });
});

describe('rings', () => {
  it('whoever asks for itself hears of it there and then, and one that would catch it fails like the others', () => {
    let reached = false;
    const own: { get(key: string): number } = memo.query('own', (key: string): number => {
      const sum = own.get(key) + 1;
      reached = true;
      return sum;
    });
    expect(caught(() => own.get('a'))).toBeInstanceOf(CycleError);
    expect(reached).toBe(false);
    const catching: { get(key: string): number } = memo.query('catching', (key: string): number => {
      caught(() => catching.get(key === 'a' ? 'b' : 'a'));
      return 1;
    });
    for (const key of ['a', 'b', 'a'])
      expect(
        caught(() => catching.get(key)),
        key,
      ).toBeInstanceOf(CycleError);
  });

  it('is worked out once', () => {
    const next: { get(key: string): number } = memo.query('next', (key: string): number =>
      next.get(key === 'a' ? 'b' : 'a'),
    );
    caught(() => next.get('a'));
    expect(computedIn(() => ['b', 'a', 'b'].map((key) => caught(() => next.get(key))))).toBe(0);
  });

  it('is met too where one member only has to be looked over', () => {
    // b has always read a; a begins to read b.
    let reached = false;
    number.set('closed', 0);
    const a: { get(key: string): number } = memo.query('a', (): number => {
      if (number.get('closed') !== 1) return 1;
      const sum = b.get('');
      reached = true;
      return sum;
    });
    const b: { get(key: string): number } = memo.query('b', (): number => a.get('') + 1);
    expect(b.get('')).toBe(2);
    number.set('closed', 1);
    let error: unknown;
    expect(computedIn(() => (error = caught(() => a.get(''))))).toBe(1);
    expect(error).toBeInstanceOf(CycleError);
    expect(reached).toBe(false);
    expect(caught(() => b.get(''))).toBeInstanceOf(CycleError);
    number.set('closed', 0);
    expect([a.get(''), b.get('')]).toEqual([1, 2]);
  });
});
