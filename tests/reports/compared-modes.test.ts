/** Modes of two instruments beside each other: like with like, whatever their order and the size of the body. */
import { describe, expect, it } from 'vitest';
import { comparedModes, modePairs } from '../../language/reports/comparison/compared-modes.js';
import type { Desk } from '../../language/checks/desk.js';
import type { DrawnMode, ModeShapes } from '../../language/reports/plan/mode-shapes.js';
import { openWorkshop } from '../../language/shop.js';
import { createParser } from '../../language/grammar/parse.js';
import { type Analyst, NO_ANALYST } from '../../language/recipes/evaluation/analyst.js';
import { ImmediateAnalyst } from '../../language/recipes/evaluation/immediate-analyst.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { BRACED } from '../recipes/braced-shop.js';

const parser = createParser();

type Movement = (along: number, across: number) => number;

/** Made-up modes on a body of so many points, from 0 to 1 along it and from −1 to 1 across. */
function made(rows: number, columns: number, modes: readonly (readonly [hertz: number, Movement])[]): ModeShapes {
  return {
    name: 'made',
    plate: 'top',
    state: 'known',
    missing: [],
    edge: 'hinged',
    grid: { x0: 0, y0: 0, step: 6, rows, columns },
    modes: modes.map(([hertz, movement]): DrawnMode => {
      const at = (i: number) => movement(Math.floor(i / columns) / (rows - 1), (2 * (i % columns)) / (columns - 1) - 1);
      const field = Array.from({ length: rows * columns }, (_, i) => Math.round(1000 * at(i)));
      return { frequency: `${hertz} Hz`, hertz, main: false, air: '', movement: field, areas: [] };
    }),
  };
}

const { wording } = openWorkshop({ parser }).workshop;
const pairs = (one: ModeShapes, other: ModeShapes) => modePairs(one, other, wording);

const dome: Movement = (x, y) => Math.sin(Math.PI * x) * Math.cos((Math.PI * y) / 2);
const sideways: Movement = (x, y) => Math.sin(Math.PI * x) * Math.sin(Math.PI * y);
const endways: Movement = (x, y) => Math.sin(2 * Math.PI * x) * Math.cos((Math.PI * y) / 2);

describe('modes are paired', () => {
  it('with the one that moves alike, though the two have traded places, and whichever way each is drawn', () => {
    const one = made(40, 31, [
      [150, dome],
      [340, sideways],
      [352, endways],
    ]);
    const other = made(40, 31, [
      [156, dome],
      [338, endways],
      [344, (x, y) => -sideways(x, y)],
    ]);
    expect(pairs(one, other)).toEqual([
      { a: 0, b: 0, likeness: '100 %', difference: '+6 Hz', percent: '+4 %', word: 'higher' },
      { a: 1, b: 2, likeness: '100 %', difference: '+4 Hz', percent: '+1.2 %', word: 'higher' },
      { a: 2, b: 1, likeness: '100 %', difference: '−14 Hz', percent: '−4 %', word: 'lower' },
    ]);
  });

  it('over bodies of different size, laid from edge to edge', () => {
    const [pair] = pairs(made(40, 31, [[150, dome]]), made(52, 41, [[121, dome]]));
    expect(pair).toMatchObject({ a: 0, b: 0, word: 'lower' });
    expect(parseInt(pair!.likeness!)).toBeGreaterThanOrEqual(99);
  });

  it('with as much in common as there is', () => {
    // Half of the movement of each, by energy, is the other's.
    const mixed: Movement = (x, y) => (sideways(x, y) + endways(x, y)) / 2;
    const [pair] = pairs(made(40, 31, [[150, mixed]]), made(40, 31, [[150, sideways]]));
    expect(parseInt(pair!.likeness!)).toBeCloseTo(50, -1);
    expect(pair).toMatchObject({ difference: 'the same' });
    expect(pair).not.toHaveProperty('word');
  });

  it('with none where none moves alike: both are told by themselves', () => {
    expect(pairs(made(40, 31, [[150, dome]]), made(40, 31, [[150, sideways]]))).toEqual([{ a: 0 }, { b: 0 }]);
  });
});

const LATER = `recipe v-2 from v-1 { because "A stiffer top."  change top.thickness: by 0.2 mm }`;

function deskWith(analyst: Analyst, ...texts: readonly string[]): Desk {
  const { shelf, workshop, checks } = openWorkshop({ parser, analyst: () => analyst });
  shelf.put(...texts.map((text, i) => readFile(`file:${i}`, text, parser)));
  return { shelf, workshop, checks, text: () => undefined };
}

describe('of two recipes', () => {
  it('every mode of the parent has its like in a child with a thicker top, higher by a little', () => {
    const compared = comparedModes(deskWith(new ImmediateAnalyst(), LATER, BRACED), 'v-1', 'v-2', 'top')!;
    expect(compared.state).toBe('known');
    expect(compared.pairs).toHaveLength(6);
    for (const { a, b, likeness, word } of compared.pairs) {
      expect(parseInt(likeness!)).toBeGreaterThan(80);
      expect(word).toBe('higher');
      expect(compared.b.modes[b!]!.hertz).toBeLessThan(1.1 * compared.a.modes[a!]!.hertz);
    }
  });

  it('wait while either is worked out, and what is known already is there', () => {
    const solver = new ImmediateAnalyst();
    let asked = 0;
    const half: Analyst = { ...NO_ANALYST, analysis: (task) => (asked++ === 0 ? solver.analysis(task) : undefined) };
    const compared = comparedModes(deskWith(half, LATER, BRACED), 'v-1', 'v-2', 'top')!;
    expect(compared).toMatchObject({ state: 'waiting', a: { state: 'known' }, b: { state: 'waiting' } });
    expect(compared.pairs).toEqual([{ a: 0 }, { a: 1 }, { a: 2 }, { a: 3 }, { a: 4 }, { a: 5 }]);
  });

  it('are none where a name is nobody’s', () => {
    expect(comparedModes(deskWith(NO_ANALYST, BRACED), 'v-1', 'v-99', 'top')).toBeUndefined();
  });
});
