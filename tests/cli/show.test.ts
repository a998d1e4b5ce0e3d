import { describe, expect, it } from 'vitest';
import { SMALL_SHOP } from './small-shop.js';
import { bookmatch, type Outcome } from './terminal.js';

interface JsonValue {
  readonly value: unknown;
  readonly unit?: string;
  readonly si?: unknown;
  readonly from: { readonly recipe: string; readonly file: string; readonly line: number };
  readonly basis: string;
}

interface JsonDerived {
  readonly value: number;
  readonly unit: string;
  readonly si: number;
  readonly uncertainty: number;
  readonly basis: readonly string[];
  readonly formula: string;
  readonly source: string;
  readonly missing?: readonly string[];
}

interface JsonShown {
  readonly recipe?: string;
  readonly wood?: string;
  readonly values: Readonly<Record<string, JsonValue>>;
  readonly derived: Readonly<Record<string, JsonDerived>>;
  readonly findings: readonly { readonly code: string }[];
}

/** Resonances take a moment to work out, so each name is asked for once. */
const asked = new Map<string, Promise<Outcome>>();

function jsonText(name: string): Promise<Outcome> {
  const answer = asked.get(name) ?? bookmatch(SMALL_SHOP, 'show', name, '--format', 'json');
  asked.set(name, answer);
  return answer;
}

async function json(name: string): Promise<JsonShown> {
  const { out, code } = await jsonText(name);
  expect(code).toBe(0);
  return JSON.parse(out) as JsonShown;
}

describe('show, as JSON', () => {
  it('a recipe: each value with unit, SI, and who said it where', async () => {
    const { recipe, values, findings } = await json('corrie-3');
    expect(recipe).toBe('corrie-3');
    expect(values['bridge.mass']).toEqual({
      value: 22,
      unit: 'g',
      si: 0.022,
      from: { recipe: 'corrie-3', file: 'recipes/corrie-line.bookmatch', line: 14 },
      basis: 'recipe',
    });
    expect(values['scale']!.from).toEqual({ recipe: 'corrie', file: 'corrie.bookmatch', line: 4 });
    expect(values['top.wood']!.value).toBe('spruce-2');
    expect(values['top.thickness']!.basis).toBe('solved');
    expect(findings.map(({ code }) => code)).toContain('too-many-changes');
  });

  it('a recipe: each computed number with uncertainty, basis, formula and source', async () => {
    const mass = (await json('corrie-1')).derived['top.mass']!;
    expect(mass.unit).toBe('g');
    expect(mass.value / 1000).toBeCloseTo(mass.si, 12);
    // 421 kg/m³ × 2.8 mm × the plate's own area.
    const area = (await json('corrie-1')).derived['top.area']!.si;
    expect(mass.si).toBeCloseTo(421 * 0.0028 * area, 6);
    expect(mass.uncertainty).toBeGreaterThan(0);
    expect(mass.basis).toEqual(['measured', 'recipe']);
    expect(mass.formula).not.toBe('');
    expect(mass.source).not.toBe('');
  });

  it('what cannot be computed names what is missing, and nothing else', async () => {
    expect((await json('corrie-1')).derived['strings.total-tension']).toEqual({ missing: ['strings'] });
  });

  it('a wood set: measured against handbook', async () => {
    const { wood, values, derived } = await json('spruce-1');
    expect(wood).toBe('spruce-1');
    expect(values['density']).toMatchObject({ value: 421, unit: 'kg/m³', si: 421, basis: 'measured' });
    expect(derived['modulus.twist']!.basis).toContain('handbook');
  });

  it('never writes a number that is none', async () => {
    for (const name of ['corrie', 'corrie-1', 'corrie-2', 'no-1', 'spruce-2', 'sitka-spruce']) {
      const { out } = await jsonText(name);
      expect(out, name).not.toMatch(/NaN|Infinity/);
      const { derived } = JSON.parse(out) as JsonShown;
      for (const [path, each] of Object.entries(derived)) {
        if (!each.missing) expect(Number.isFinite(each.value), `${name} ${path}`).toBe(true);
      }
    }
  });
});

describe('show, as text', () => {
  it('a recipe: its line, its values with where they come from, what it computes to, what is missing', async () => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'show', 'corrie-2', '--all');
    expect(code).toBe(0);
    expect(out).toMatch(/^recipe corrie-2 from corrie-1 {2}recipes\/corrie-line\.bookmatch:6$/m);
    expect(out).toContain('corrie-1 → corrie-2');
    expect(out).toMatch(/^ {2}top\.wood +spruce-2 +changed here, line 8$/m);
    expect(out).toMatch(/^ {2}top\.thickness +2\.66 mm +solved by a hold in corrie-2, line 9$/m);
    expect(out).toMatch(/^ {2}scale +645 mm +corrie, corrie\.bookmatch:4$/m);
    expect(out).toMatch(/^ {2}top\.mass +[\d.]+ ± [\d.]+ g +from measured wood, what is written$/m);
    expect(out).toMatch(/^ {2}.*strings\.total-tension\b.*: needs strings$/m);
    expect(out).toContain('the shop is taken to be at 45 %RH');
  });

  it('a recipe in short: what it says itself, what is heard or weighed, no formula, and how to see the rest', async () => {
    const { out } = await bookmatch(SMALL_SHOP, 'show', 'corrie-2');
    expect(out).toMatch(/^ {2}top\.wood +spruce-2 +changed here, line 8$/m);
    expect(out).toMatch(/^ {2}top\.mass +[\d.]+ ± [\d.]+ g$/m);
    expect(out).not.toMatch(/^ {2}scale /m);
    expect(out).not.toContain('ρ·A·h');
    expect(out).toMatch(/\d+ more values come from its line\. Everything, .*bookmatch show corrie-2\s--all/s);
    const { out: all } = await bookmatch(SMALL_SHOP, 'show', 'corrie-2', '--all');
    expect(out.split('\n').length).toBeLessThan(all.split('\n').length / 2);
  });

  it('one part of it, in full, and a part that is not there with those that are', async () => {
    const { out } = await bookmatch(SMALL_SHOP, 'show', 'corrie-2', 'top');
    expect(out).toMatch(/^ {2}top\.mass +[\d.]+ ± [\d.]+ g +from measured wood/m);
    expect(out).toContain('m = ρ·A·h');
    expect(out).not.toMatch(/^ {2}(scale|bridge|body)\b/m);
    const { err, code } = await bookmatch(SMALL_SHOP, 'show', 'corrie-2', 'topp');
    expect(err).toMatch(/corrie-2 has nothing under topp\. It has .*\btop\b/);
    expect(code).toBe(2);
  });

  it('a build: what was measured beside what is computed', async () => {
    const { out } = await bookmatch(SMALL_SHOP, 'show', 'no-1');
    expect(out).toMatch(/^ {2}top\.thickness +2\.81 mm +measured, line 20$/m);
    expect(out).toMatch(/^ {2}top\.mass +160 g +computed [\d.]+ g$/m);
    expect(out).toMatch(/Measured: day-1\n +stage strung, humidity 45 %RH\n +resonance\.air +97 Hz/);
  });

  it('a species: each number with its source', async () => {
    const { out } = await bookmatch(SMALL_SHOP, 'show', 'sitka-spruce');
    expect(out).toMatch(/^species sitka-spruce {2}species library:\d+$/m);
    expect(out).toMatch(/bending-modulus +10\.8 GPa ± 2\.4 GPa .*Wood Handbook/);
  });

  it('a string set: each string counted from the highest', async () => {
    const set = 'strings light { gauges: .012 in, .016 in, .024 in, .032 in, .042 in, .053 in }';
    const { out } = await bookmatch({ 's.bookmatch': set }, 'show', 'light');
    expect(out).toMatch(/^ {2}1\.unit-weight +[\d.]+.* g\/m/m);
    expect(out).toMatch(/^ {2}6\.pitch +82\.4.* Hz/m);
  });

  it.each(['model corrie', 'shop wick'])('also %s', async (heading) => {
    const { out, code } = await bookmatch(SMALL_SHOP, 'show', heading.split(' ')[1]!);
    expect(out).toContain(heading);
    expect(code).toBe(0);
  });
});

describe('show, used wrongly', () => {
  it.each([
    ['a name that is nearly right', ['corie-2'], /There is nothing called corie-2 here\. Did you mean corrie-2\?/],
    ['a name like no other', ['zzz'], /The recipes here are: corrie-1, corrie-2, corrie-3\./],
    ['no name', [], /Missing required argument name\./],
    ['a folder that is not there', ['corrie-1', '--in', 'nowhere'], /There is no folder nowhere\./],
    ['a format of check', ['corrie-1', '--format', 'sarif'], /Allowed choices are text, json/],
  ])('%s: exit code 2', async (_, args, message) => {
    const { code, out, err } = await bookmatch(SMALL_SHOP, 'show', ...args);
    expect(err).toMatch(message);
    expect(out).toBe('');
    expect(code).toBe(2);
  });

  it('recipes whose parents go round in a ring are shown as far as they go', async () => {
    const ring = { 'r.bookmatch': 'recipe a from b { top.thickness: 2.8 mm }\nrecipe b from a { }\n' };
    const { out, code } = await bookmatch(ring, 'show', 'a');
    expect(out).toMatch(/top\.thickness +2\.8 mm/);
    expect(out).toContain('parent-ring');
    expect(code).toBe(0);
  });
});
