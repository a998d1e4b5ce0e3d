import { describe, expect, it } from 'vitest';
import { SMALL_SHOP } from './small-shop.js';
import { bookmatch, type Outcome } from './terminal.js';

interface JsonComparison {
  readonly ancestor?: string;
  readonly changes: readonly {
    readonly label: string;
    readonly paths: readonly { path: string; a: unknown; b: unknown }[];
  }[];
  readonly derived: Readonly<
    Record<
      string,
      {
        readonly a: number | null;
        readonly b: number | null;
        readonly difference?: number;
        readonly percent: number;
        readonly contributions: readonly { readonly label: string; readonly amount: number }[];
        readonly remainder: number;
        readonly distinguishable: boolean;
        readonly missing?: readonly string[];
      }
    >
  >;
}

/** Resonances take a moment to work out, so each pair is asked for once. */
const asked = new Map<string, Promise<Outcome>>();

async function json(a: string, b: string): Promise<JsonComparison> {
  const answer = asked.get(`${a} ${b}`) ?? bookmatch(SMALL_SHOP, 'compare', a, b, '--format', 'json');
  asked.set(`${a} ${b}`, answer);
  const { out, code } = await answer;
  expect(code).toBe(0);
  return JSON.parse(out) as JsonComparison;
}

describe('compare, as JSON', () => {
  it('two changes along one line', async () => {
    const { ancestor, changes } = await json('corrie-2', 'corrie-3');
    expect(ancestor).toBe('corrie-2');
    expect(changes.map(({ label }) => label)).toEqual(['soundhole.diameter', 'bridge.mass']);
    expect(changes[1]!.paths[0]).toMatchObject({
      path: 'bridge.mass',
      a: { value: 27, unit: 'g', si: 0.027 },
      b: { value: 22, unit: 'g', si: 0.022 },
    });
  });

  it('the difference, per cent, and each change’s part in it, which make up the whole', async () => {
    const { derived } = await json('corrie-1', 'corrie-3');
    const mass = derived['top.mass']!;
    expect(mass.difference).toBeCloseTo(mass.b! - mass.a!, 9);
    expect(mass.percent).toBeCloseTo((100 * mass.difference!) / mass.a!, 9);
    const sum = mass.contributions.reduce((total, { amount }) => total + amount, 0);
    expect(sum + mass.remainder).toBeCloseTo(mass.difference!, 9);
    expect(mass.contributions.map(({ label }) => label).sort()).toEqual([
      'soundhole.diameter',
      'top.thickness',
      'top.wood',
    ]);
    expect(mass.distinguishable).toBe(true);
    expect(derived['top.stiffness.along']!.difference).toBeCloseTo(0, 6);
    expect(derived['top.stiffness.along']!.distinguishable).toBe(false);
  });

  it('the other way round, every difference turns its sign', async () => {
    const [there, back] = [await json('corrie-1', 'corrie-3'), await json('corrie-3', 'corrie-1')];
    for (const [path, { difference }] of Object.entries(there.derived)) {
      if (difference !== undefined) expect(back.derived[path]!.difference, path).toBeCloseTo(-difference, 9);
    }
  });

  it('what is missing is named', async () => {
    const { derived } = await json('corrie-1', 'corrie-2');
    expect(derived['strings.total-tension']).toEqual({ a: null, b: null, missing: ['strings'] });
  });
});

describe('compare, as text', () => {
  it('shows what differs by part, what that does, and whether it can be told apart', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'compare', 'corrie-1', 'corrie-2');
    expect(code).toBe(0);
    expect(out).toContain('corrie-2 comes from corrie-1.');
    expect(out).toMatch(/^ {2}top\.wood +spruce-1 +spruce-2$/m);
    expect(out).toMatch(/^ {2}top\.thickness +2\.8 mm +2\.66 mm +solved by a hold$/m);
    expect(out).toMatch(/^ {2}top\.mass +154 g +139 g +−14\.3 g +−9\.3 % +◂···──┼──····$/m);
    expect(out).toMatch(/^ {6}top\.thickness −[\d.]+ g · top\.wood −[\d.]+ g$/m);
    expect(out).toMatch(/^ {2}──┼── what comes about anyway; a dot beyond it can be told apart$/m);
    // What is too small takes one line, however much of it there is.
    expect(out.match(/too small to tell/gi)).toHaveLength(1);
    expect(out).not.toMatch(/^ {2}body\.volume/m);
    const { out: all } = await bookmatch(SMALL_SHOP, 'compare', 'corrie-1', 'corrie-2', '--all');
    expect(all).toMatch(/^ {2}body\.volume .*····[─┼●]{5}····$/m);
    expect(all).not.toMatch(/too small to tell/i);
    expect(out).toMatch(/The same in both: \d+ computed values\./);
  });

  it('a recipe beside what was made of it', async () => {
    const { out } = await bookmatch(SMALL_SHOP, 'compare', 'corrie-1', 'no-1');
    expect(out).toMatch(/^ {2}top\.thickness +2\.8 mm +2\.81 mm$/m);
    expect(out).toMatch(/Too small to tell: /);
  });

  it('a thing beside itself', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'compare', 'corrie-1', 'corrie-1');
    expect(out).toContain('have the same values throughout');
    expect(code).toBe(0);
  });

  it('a recipe beside its model says what only one of them has', async () => {
    const { out } = await bookmatch(SMALL_SHOP, 'compare', 'corrie', 'corrie-1');
    expect(out).toMatch(/^ {2}top\.wood +– +spruce-1$/m);
    expect(out).toMatch(/top\.mass is known for one only: the other needs .*top\.thickness/);
  });
});

describe('compare, used wrongly', () => {
  it.each([
    ['an unknown name', ['corrie-1', 'corrie-22'], /There is nothing called corrie-22 here\. Did you mean corrie-2/],
    ['a wood', ['corrie-1', 'spruce-1'], /spruce-1 is of kind wood, not recipe, build or model/],
    ['one name', ['corrie-1'], /Missing required argument b\./],
    ['three names', ['corrie-1', 'corrie-2', 'corrie-3'], /Too many arguments/],
  ])('%s: exit code 2', async (_, args, message) => {
    const { code, err, out } = await bookmatch(SMALL_SHOP, 'compare', ...args);
    expect(err).toMatch(message);
    expect(out).toBe('');
    expect(code).toBe(2);
  });
});
