/** Bare plates against published and converged theory. */
import { describe, expect, test } from 'vitest';
import type { Edge, Point } from '../../../language/mechanics/plate/index.js';
import { blank, CLAMPED, HELD, reference, spruce } from './reference-tops.js';
import { ellipseModes } from './ritz-ellipse.js';
import { frequencies, worstError } from './solved.js';
import { numbers } from './tables.js';
import {
  ellipse,
  frequencyTable as table,
  hingedRectangle,
  parameters,
  square,
  steel,
  theory,
  thin,
} from './thin-plates.js';

test('NAFEMS FV12, free thin square plate: eight frequencies within 0.2 %', () => {
  const f = frequencies(blank(10, 10, 0.05, { kind: 'free' }, steel), { modes: 8, nodes: 1500 });
  expect(worstError(f, theory('NAFEMS FV12 free thin square plate'))).toBeLessThan(0.002);
});

describe('clamped and hinged shapes: fundamental and next two within 0.5 % of converged theory', () => {
  const first = (values: readonly number[]): readonly number[] => values.slice(0, 3);

  test('hinged square', () => {
    expect(worstError(parameters(thin(square, HELD)), first(theory('simply supported square')))).toBeLessThan(0.005);
  });
  test('clamped square (converged Ritz values beside Leissa’s)', () => {
    const converged = [35.9852, 73.3938, 73.3938];
    expect(worstError(parameters(thin(square, CLAMPED)), converged)).toBeLessThan(0.005);
    expect(worstError(converged, first(theory('clamped square')))).toBeLessThan(0.0005);
  });
  test('clamped circle', () => {
    const [f0, f1] = theory('circular plate, clamped');
    expect(worstError(parameters(thin(ellipse(1, 1), CLAMPED)), [f0!, f1!, f1!])).toBeLessThan(0.005);
  });
  test('hinged circle', () => {
    const [f0, f1] = theory('circular plate, simply supported');
    expect(worstError(parameters(thin(ellipse(1, 1), HELD)), [f0!, f1!, f1!])).toBeLessThan(0.005);
  });
  test('clamped 2:1 ellipse', () => {
    const ritz = ellipseModes(0.5, 'clamped', 0.3);
    const published = table.find((row) => row.case === 'elliptical plate, clamped' && row.aspect === '2');
    expect(worstError(ritz, [Number(published!.value_si)])).toBeLessThan(0.0005);
    expect(worstError(parameters(thin(ellipse(1, 0.5), CLAMPED)), first(ritz))).toBeLessThan(0.005);
  });
  test('hinged 2:1 ellipse', () => {
    expect(worstError(ellipseModes(1, 'hinged', 0.3), [theory('circular plate, simply supported')[0]!])).toBeLessThan(
      0.0005,
    );
    expect(worstError(parameters(thin(ellipse(1, 0.5), HELD)), first(ellipseModes(0.5, 'hinged', 0.3)))).toBeLessThan(
      0.005,
    );
  });
});

test('free and clamped rectangles of four shapes within 0.5 % of converged Ritz values', () => {
  for (const row of table.filter(
    ({ case: name, mode }) => (name === 'free rectangle' || name === 'clamped rectangle') && mode === '1',
  )) {
    const rows = table.filter((other) => other.case === row.case && other.aspect === row.aspect);
    const b = 1 / Number(row.aspect);
    const outline: readonly Point[] = [
      [0, 0],
      [1, 0],
      [1, b],
      [0, b],
    ];
    const edge: Edge = row.case === 'free rectangle' ? { kind: 'free' } : CLAMPED;
    expect(worstError(parameters(thin(outline, edge), 1500), numbers(rows, 'value_si').slice(0, 4))).toBeLessThan(
      0.005,
    );
  }
});

test('hinged orthotropic rectangles within 0.2 % of the closed form', () => {
  const stiff = { ...spruce, shearAlong: 1e12, shearAcross: 1e12 };
  for (const [a, b] of [
    [0.4, 0.3],
    [0.3, 0.4],
  ] as const) {
    const f = frequencies(blank(a, b, 0.0028, HELD, stiff), { nodes: 2200 });
    expect(worstError(f, hingedRectangle(a, b))).toBeLessThan(0.002);
  }
});

test('free and hinged spruce blanks within 1 % of CalculiX, shear included', () => {
  for (const name of [
    'b1_free_blank',
    'b2_free_blank',
    'b3_free_blank',
    'c1_hinged_rectangle',
    'c2_hinged_rectangle',
  ]) {
    const { inputs, reference: expected } = reference.cases[name]!;
    const [a, b, h] = [inputs.a_along_grain_m, inputs.b_across_m, inputs.h_m].map(Number);
    const edge: Edge = inputs.edges === 'free' ? { kind: 'free' } : HELD;
    for (const nodes of [560, 1000]) {
      expect(
        worstError(frequencies(blank(a!, b!, h!, edge), { modes: expected.length, nodes }), expected),
      ).toBeLessThan(0.01);
    }
  }
});
