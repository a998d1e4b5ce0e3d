/**
 * Tops against CalculiX (solids and quadratic shells). The reference file gives no shapes: its modes are matched in order, which is
 * sound here because neighbouring reference modes lie further apart than the errors; where they lie closer than 2 % (the
 * unbraced pairs), an exchange would not change what is asserted.
 */
import { describe, expect, test } from 'vitest';
import { allParts, guitarCases, guitarTop, HELD, reference, rotationCases } from './reference-tops.js';
import { solved, worstError } from './solved.js';

const MESHES = [600, 900, 1300];
const degrees = (radians: number): number => (radians * 180) / Math.PI;

describe('modes over three meshes', () => {
  for (const [name, { model, braced }] of Object.entries(guitarCases)) {
    test(`${name}: ${braced ? 'four modes within 2.5 %, six within 4 %' : 'six modes within 1 %'}`, () => {
      const expected = reference.cases[name]!.reference;
      for (const nodes of MESHES) {
        const found = solved(model, { nodes }).modes.map(({ frequency }) => frequency);
        if (!braced) expect(worstError(found, expected)).toBeLessThan(0.01);
        else {
          expect(worstError(found, expected.slice(0, 4))).toBeLessThan(0.025);
          expect(worstError(found, expected)).toBeLessThan(0.04);
        }
      }
    });
  }
});

describe('rotation of the bridge within 6 % over three meshes', () => {
  for (const [name, model, expected] of rotationCases) {
    test(name, () => {
      for (const nodes of MESHES) {
        const { rotation } = solved(model, { nodes, modes: 0 }).statics!;
        expect(Math.abs(degrees(rotation) / expected - 1)).toBeLessThan(0.06);
      }
    });
  }

  // The dip lies between bridge and hole, close to the crossing; on fine meshes it stays 6 to 8 % too deep. The reference tells its
  // lowest node; ours is read between nodes, so that theirs is too: a parabola through it and the two values told beside it.
  test('belly behind within 4 % and dip in front within 8 %', () => {
    const { couple } = reference.cases.f_static_string_load.reference;
    const { max_mm: belly, min_mm: node, min_at: at, centreline_w_mm: line } = couple;
    const dip = lowestOf([
      [200, line['200']!],
      [at[0], node],
      [230, line['230']!],
    ]);
    expect(dip / node).toBeGreaterThan(1);
    expect(dip / node).toBeLessThan(1.003);
    for (const nodes of MESHES) {
      const found = solved(guitarTop(HELD, allParts), { nodes, modes: 0 }).statics!;
      expect(Math.abs((found.belly * 1000) / belly - 1)).toBeLessThan(0.04);
      expect(Math.abs((found.dip * 1000) / dip - 1)).toBeLessThan(0.08);
    }
  });
});

/** Of the parabola through three points. */
function lowestOf([[x0, y0], [x1, y1], [x2, y2]]: readonly [Place, Place, Place]): number {
  const [left, right] = [(y1 - y0) / (x1 - x0), (y2 - y1) / (x2 - x1)];
  const bend = (right - left) / (x2 - x0);
  const slope = left + bend * (x1 - x0);
  return y1 - slope ** 2 / (4 * bend);
}

type Place = readonly [number, number];
