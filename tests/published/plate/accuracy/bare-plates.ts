/** Sections on plates without braces: theory, loads, the ribbed panel, measured and computed plates of spruce. */
import { labelledModes } from '../../../../language/mechanics/plate/index.js';
import { number, readTable } from '../../table.js';
import { freePlate, labelOf, MODES, woodOf } from '../free-plates.js';
import { firstPeaks, halfPlateModel, halfPlates } from '../half-plates.js';
import { coefficient, edgeOf } from '../loaded-plates.js';
import { blank, CLAMPED, HELD, spruce } from '../reference-tops.js';
import { COMPUTED, panel } from '../ribbed-panel.js';
import { ellipseModes } from '../ritz-ellipse.js';
import { frequencies, solved } from '../solved.js';
import { ellipse, hingedRectangle, parameters, square, steel, theory, thin } from '../thin-plates.js';
import { difference, greatest, list, table } from './markdown.js';

export function theorySection(): string {
  const three = (values: readonly number[]): readonly number[] => values.slice(0, 3);
  const [c0, c1] = theory('circular plate, clamped');
  const [h0, h1] = theory('circular plate, simply supported');
  const stiff = { ...spruce, shearAlong: 1e12, shearAcross: 1e12 };
  const cases: readonly (readonly [string, string, readonly number[], readonly number[], number])[] = [
    [
      'free thin square, Hz',
      'NAFEMS FV12, converged',
      theory('NAFEMS FV12 free thin square plate'),
      frequencies(blank(10, 10, 0.05, { kind: 'free' }, steel), { modes: 8, nodes: 1500 }),
      3,
    ],
    ['hinged square', 'closed form', three(theory('simply supported square')), parameters(thin(square, HELD)), 3],
    ['clamped square', 'converged Ritz', [35.9852, 73.3938, 73.3938], parameters(thin(square, CLAMPED)), 3],
    ['clamped circle', 'Bessel functions', [c0!, c1!, c1!], parameters(thin(ellipse(1, 1), CLAMPED)), 3],
    ['hinged circle', 'Bessel functions', [h0!, h1!, h1!], parameters(thin(ellipse(1, 1), HELD)), 3],
    [
      'clamped ellipse 2 : 1',
      'Ritz of our own, checked by Leissa',
      three(ellipseModes(0.5, 'clamped', 0.3)),
      parameters(thin(ellipse(1, 0.5), CLAMPED)),
      3,
    ],
    [
      'hinged ellipse 2 : 1',
      'Ritz of our own, checked on the circle',
      three(ellipseModes(0.5, 'hinged', 0.3)),
      parameters(thin(ellipse(1, 0.5), HELD)),
      3,
    ],
    ...(
      [
        [0.4, 0.3],
        [0.3, 0.4],
      ] as const
    ).map(
      ([a, b]) =>
        [
          `hinged spruce ${a * 1000} × ${b * 1000} × 2.8 mm, Hz`,
          'closed form',
          hingedRectangle(a, b),
          frequencies(blank(a, b, 0.0028, HELD, stiff), { nodes: 2200 }),
          1,
        ] as const,
    ),
  ];
  return table(
    ['plate', 'source', 'its values', 'ours', 'greatest difference, %'],
    cases.map(([name, source, expected, found, digits]) => [
      name,
      source,
      list(expected, digits),
      list(found.slice(0, expected.length), digits),
      greatest(found, expected),
    ]),
  );
}

export function loadSection(): string {
  const rows = readTable('top-plate-static.csv').filter(
    (row) => row.case === 'rectangular plate centre deflection' || row.case!.includes('circular'),
  );
  return table(
    ['plate', 'edge', 'load', 'source', 'ours', 'difference, %'],
    rows.map((row) => {
      const round = row.case!.includes('circular');
      const long = Number(row.b_over_a);
      const outline = round
        ? ellipse(1, 1)
        : ([
            [0, 0],
            [1, 0],
            [1, long],
            [0, long],
          ] as const);
      const found = coefficient(outline, edgeOf(row.boundary), round ? [0, 0] : [0.5, long / 2], row.load!);
      const expected = Number(row.value_si);
      return [
        round ? 'circle' : `rectangle 1 : ${long}`,
        edgeOf(row.boundary).kind,
        row.load!,
        expected.toPrecision(4),
        found.toPrecision(4),
        difference(found, expected, 2),
      ];
    }),
  );
}

export function panelSection(): string {
  const found = [560, 1000, 2000].map((nodes) => panel(nodes).modes.map(({ frequency }) => frequency));
  return table(
    ['mode', 'published theory, Hz', 'about 560 nodes, %', 'about 1000, %', 'about 2000, %'],
    COMPUTED.map((expected, i) => [i + 1, expected, ...found.map((f) => difference(f[i]!, expected))]),
  );
}

export function sprucePlateSection(): string {
  const differences = MODES.map((): number[] => []);
  for (const row of readTable('top-spruce-plates-fe.csv')) {
    const plate = freePlate(number(row, 'L_m'), number(row, 'W_m'), number(row, 'T_m'), woodOf(row));
    const solution = solved(plate, { modes: 12, nodes: 560 });
    labelledModes(solution, MODES.map(labelOf)).forEach((mode, i) =>
      differences[i]!.push(solution.modes[mode]!.frequency / number(row, `f${MODES[i]!}_Hz`)),
    );
  }
  return table(
    ['mode', 'mean difference, %', 'least, %', 'greatest, %'],
    MODES.map((mode, i) => {
      const own = differences[i]!;
      const mean = own.reduce((sum, ratio) => sum + ratio / own.length, 0);
      return [mode, ...[mean, Math.min(...own), Math.max(...own)].map((ratio) => difference(ratio, 1))];
    }),
  );
}

export function halfPlateSection(): string {
  return table(
    ['plate', 'mode', 'heard, Hz', 'ours, Hz', 'difference, %'],
    halfPlates.flatMap((plate) => {
      const solution = solved(halfPlateModel(plate), { modes: 12, nodes: 1000 });
      const found = labelledModes(solution, MODES.map(labelOf));
      return firstPeaks(plate).map(([mode, heard]) => {
        const ours = solution.modes[found[MODES.findIndex((each) => each === mode)]!]!.frequency;
        return [plate.plate, mode, heard, ours.toFixed(1), difference(ours, heard)];
      });
    }),
  );
}
