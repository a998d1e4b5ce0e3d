/**
 * Six braced tops of our own against their solid-element solutions (CalculiX, three meshes each; how they were made is told in
 * `solid/solve.ts`). Modes are matched by shape at about a hundred places. Five densities of our own mesh, so that no lucky one decides.
 * Shapes of close neighbours mix, so that their likeness is asked of the first mode only.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { compareTop } from './solid/compare.js';
import type { SolidFile } from './solid/results.js';

const DENSITIES = [450, 600, 800, 1100, 1500];
const { tops, woods } = JSON.parse(readFileSync(new URL('./solid/tops.json', import.meta.url), 'utf8')) as SolidFile;

test('six tops are here', () => expect(tops.length).toBe(6));

describe.each(tops)('$name', (top) => {
  test.each(DENSITIES)('about %d nodes: four modes within 2.5 %, six within 4 %, rotation within 6 %', (nodes) => {
    const { modes, rotations } = compareTop(top, woods, nodes);
    expect(modes).toHaveLength(6);
    modes.forEach(({ solid, ours }, i) => {
      expect.soft(Math.abs(ours / solid - 1), `mode ${i + 1}`).toBeLessThan(i < 4 ? 0.025 : 0.04);
    });
    expect(modes[0]!.likeness).toBeGreaterThan(0.99);
    expect(rotations.length).toBeGreaterThan(0);
    for (const { load, solid, ours } of rotations) {
      expect.soft(Math.abs(ours / solid - 1), load).toBeLessThan(0.06);
    }
  });
});
