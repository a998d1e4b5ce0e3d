/** Modes as they are drawn: the same as the solver's, in the plan's own places. */
import { describe, expect, it } from 'vitest';
import type { Desk } from '../../language/checks/desk.js';
import { modeShapes } from '../../language/reports/plan/mode-shapes.js';
import { areasOf } from '../../language/reports/plan/moving-areas.js';
import { openWorkshop } from '../../language/shop.js';
import { createParser } from '../../language/grammar/parse.js';
import { type Analyst, NO_ANALYST } from '../../language/recipes/evaluation/analyst.js';
import { ImmediateAnalyst } from '../../language/recipes/evaluation/immediate-analyst.js';
import { sideOf } from '../../language/recipes/instrument/sides.js';
import { readFile } from '../../language/recipes/shelf/reader.js';
import { VENNICK } from '../editing/desk-of.js';

const parser = createParser();

const ROSE = `
wood brace-1 is sitka-spruce { use: brace  density: 410 kg/m³  modulus.along: 11 GPa }
wood rose-1 is indian-rosewood { use: back  density: 800 kg/m³ }
recipe v-33 from v-31 {
  because "Enough to be solved."
  bracing.wood: brace-1
  soundhole.station: 350 mm
  bridge.wood: rose-1
  neck.join-fret: 14
}`;

function deskWith(analyst: Analyst, ...texts: readonly string[]): Desk {
  const { shelf, workshop, checks } = openWorkshop({ parser, analyst: () => analyst });
  shelf.put(...texts.map((text, i) => readFile(`file:${i}`, text, parser)));
  return { shelf, workshop, checks, text: () => undefined };
}

describe('the modes of a top', () => {
  const desk = deskWith(new ImmediateAnalyst(), ROSE, VENNICK);
  const shapes = modeShapes(desk, 'v-33', 'top')!;
  const { grid, modes } = shapes;
  const at = (movement: readonly number[], station: number, offset: number) =>
    movement[Math.round((station - grid.x0) / grid.step) * grid.columns + Math.round((offset - grid.y0) / grid.step)]!;

  it('are the first six, written out, one of them the main one', () => {
    expect(shapes).toMatchObject({ state: 'known', missing: [] });
    expect(modes).toHaveLength(6);
    expect(modes.every(({ frequency }) => /^\d+ Hz$/.test(frequency))).toBe(true);
    const main = sideOf(desk.workshop, 'v-33')!.evaluation.number('top.main-resonance')!;
    expect(modes.find((mode) => mode.main)!.frequency).toBe(`${Math.round(main)} Hz`);
    expect(modes.find((mode) => mode.main)!.air).toBe('100 %');
  });

  it('lie on a grid around the body, still at its edge and beyond', () => {
    expect(grid.x0).toBeLessThan(0);
    expect(grid.x0 + (grid.rows - 1) * grid.step).toBeGreaterThan(489);
    for (const { movement } of modes) {
      expect(movement).toHaveLength(grid.rows * grid.columns);
      expect(Math.max(...movement)).toBe(1000);
      expect(at(movement, 300, -180)).toBe(0);
      expect(Math.abs(at(movement, 3, 0))).toBeLessThan(120);
    }
  });

  it('have a first that moves all one way, over the soundhole too, and others that do not', () => {
    const [first, second] = modes;
    expect(first!.areas).toHaveLength(1);
    expect(first!.areas[0]!.way).toBe('up');
    expect(Math.min(...first!.movement)).toBeGreaterThan(-80);
    expect(at(first!.movement, 350, 0)).toBeGreaterThan(100);
    expect(new Set(second!.areas.map(({ way }) => way))).toEqual(new Set(['up', 'down']));
  });

  it('say how the edge is held', () => {
    expect(shapes.edge).toBe('hinged');
    const held = ROSE.replace('soundhole.station', 'top.rim-stiffness: 400 N\n  soundhole.station');
    const firmer = modeShapes(deskWith(new ImmediateAnalyst(), held, VENNICK), 'v-33', 'top')!;
    expect(firmer.edge).toBe('rim');
    expect(parseFloat(firmer.modes[0]!.frequency)).toBeGreaterThan(parseFloat(modes[0]!.frequency));
  });

  it('mark an area where it moves most', () => {
    for (const { movement, areas } of modes) {
      for (const { way, most } of areas) expect(Math.sign(at(movement, ...most))).toBe(way === 'up' ? 1 : -1);
    }
  });
});

describe('modes that are not there', () => {
  it('wait while they are worked out', () => {
    const shapes = modeShapes(deskWith(NO_ANALYST, ROSE, VENNICK), 'v-33', 'top')!;
    expect(shapes).toMatchObject({ state: 'waiting', modes: [] });
  });

  it('name what would have to be known', () => {
    const shapes = modeShapes(deskWith(NO_ANALYST, VENNICK), 'v-31', 'top')!;
    expect(shapes.state).toBe('unknown');
    expect(shapes.missing).toEqual(expect.arrayContaining(['neck.join-fret', 'bridge.wood']));
    expect(shapes.missing.filter((path) => path.startsWith('bridge.wood.'))).toEqual([]);
  });

  it('say why a plate cannot be solved', () => {
    const unsolvable: Analyst = {
      ...NO_ANALYST,
      analysis: () => ({ ok: false, problems: [{ severity: 'error', path: '', message: 'It has no edge.' }] }),
    };
    expect(modeShapes(deskWith(unsolvable, ROSE, VENNICK), 'v-33', 'top')).toMatchObject({
      state: 'unknown',
      trouble: 'It has no edge.',
    });
  });

  it('are not there at all for a name nobody has', () => {
    expect(modeShapes(deskWith(NO_ANALYST, VENNICK), 'v-99', 'top')).toBeUndefined();
  });
});

it('areas are told apart by which way they move, the larger first, ripples left out', () => {
  const grid = { x0: 0, y0: 0, step: 10, rows: 4, columns: 6 };
  const field = Float64Array.from([
    ...[0, 500, 900, -100, -700, -300],
    ...[0, 300, 400, -200, -400, -200],
    ...[0, 0, 20, 0, -300, NaN],
    ...[0, 0, 0, 0, -100, NaN],
  ]);
  expect(areasOf(grid, field)).toEqual([
    { way: 'down', most: [0, 40], middle: [10, 40] },
    { way: 'up', most: [0, 20], middle: [5, 15] },
  ]);
});
