/** The outline rule against a reference outline computed elsewhere (twelve stations, polyline, area). */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { bodyArea, bodyWithCutaway } from '../../language/mechanics/body/cutaway-outline.js';
import { outlinePolyline, outlineThrough } from '../../language/mechanics/body/half-widths.js';

interface Reference {
  length_mm: number;
  stations_mm: number[];
  half_widths_mm: number[];
  end_radius_tail_mm: number;
  end_radius_neck_mm: number;
  area_full_m2: number;
  check_half_widths_mm: Record<string, number>;
  dense_polyline_mm: [number, number][];
}
const reference = JSON.parse(readFileSync(new URL('./data/guitar-outline.json', import.meta.url), 'utf8')) as Reference;
const metres = (list: number[]): number[] => list.map((value) => value / 1000);
const outline = outlineThrough(
  reference.length_mm / 1000,
  metres(reference.stations_mm),
  metres(reference.half_widths_mm),
  reference.end_radius_tail_mm / 1000,
  reference.end_radius_neck_mm / 1000,
);

describe('reference guitar outline, 490 mm', () => {
  test.each(Object.entries(reference.check_half_widths_mm))('half width at %s mm: %f mm', (station, half) => {
    expect(Math.abs(1000 * outline.halfWidth(Number(station) / 1000) - half)).toBeLessThanOrEqual(0.0006);
  });

  test('area 0.1362653 m²', () =>
    expect(Math.abs(bodyArea(bodyWithCutaway(outline)) - reference.area_full_m2)).toBeLessThan(6e-8));

  test('all 101 points of the polyline, printed to 0.001 mm', () => {
    const points = outlinePolyline(outline, 100);
    reference.dense_polyline_mm.forEach(([x, y], i) => {
      expect(Math.abs(1000 * points[i]!.x - x)).toBeLessThanOrEqual(0.00051);
      expect(Math.abs(1000 * points[i]!.y - y)).toBeLessThanOrEqual(0.00051);
    });
    expect(reference.dense_polyline_mm.length).toBe(points.length);
  });
});
