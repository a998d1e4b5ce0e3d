/**
 * Plan and templates as files, read back by other libraries: dxf-parser, pdfjs-dist and xmldom. What is checked against is
 * what each instrument says it is made to, and for frets the rule of equal temperament, L (1 − 2^(−n/12)).
 */
import { DOMParser } from '@xmldom/xmldom';
import { describe, expect, it } from 'vitest';
import { picturesOf, PLAN_PARTS } from '../../../language/reports/plan/pictures-of.js';
import { LAYERS } from '../../../language/reports/plan/plan.js';
import { dxfOf } from '../../../language/reports/plan/write/dxf.js';
import { pdfOf } from '../../../language/reports/plan/write/pdf.js';
import { CHECK_BAR } from '../../../language/reports/plan/write/tiles.js';
import { pdfWords } from '../../../language/reports/plan/write/pdf-words.js';
import type { Picture } from '../../../language/reports/plan/write/picture.js';
import { svgOf } from '../../../language/reports/plan/write/svg.js';
import { type Paper, PAPERS, tilingOf } from '../../../language/reports/plan/write/tiles.js';
import { ENGLISH } from '../../../language/wording/wording.js';
import { acrossAt, extent, readDxf, type ReadDxf, readPdf } from './read-back.js';
import { type Made, shopOfTen, TEN } from './ten-instruments.js';

const { workshop } = shopOfTen();
const picture = (name: string, part: string): Picture => picturesOf(workshop, name, [part])!.pictures[0]!;
const back = (name: string, part: string): ReadDxf => readDxf(dxfOf(picture(name, part)));
/** mm */
const CLOSE = 0.05;
const near = (found: number, wanted: number, what: string) => {
  expect(Math.abs(found - wanted), `${what}: ${found} for ${wanted}`).toBeLessThanOrEqual(CLOSE);
};
const pdf = (pictures: readonly Picture[], paper: Paper) =>
  pdfOf(pictures, paper, pdfWords('om', 'Wick Lane', ENGLISH), new Date(0));

describe.each(TEN.map((made): readonly [string, Made] => [made.name, made]))('the plan of %s as DXF', (name, made) => {
  const plan = back(name, 'plan');
  const on = (layer: string) => plan.lines.filter((line) => line.layer === layer);

  it('is in millimetres, on layers named by part', () => {
    expect(plan.units).toBe(4);
    for (const layer of ['outline', 'soundhole', 'rosette', 'braces', 'bridge', 'neck', 'frets'])
      expect(plan.layers).toContain(layer);
    for (const { layer } of plan.lines) expect(LAYERS).toContain(layer);
  });

  it('has the body’s lengths', () => {
    const [outline] = on('outline');
    expect(outline!.closed).toBe(true);
    near(extent(outline!.points).height, made.length, 'length');
    made.bouts.forEach(([width, station], i) => {
      const [bass, treble] = acrossAt(outline!.points, station);
      near(-2 * bass, width, `bout ${i}`);
      // A cutaway takes some of the treble side of the upper bout, and nothing below it.
      if (i < 2 || !made.more?.includes('cutaway')) near(2 * treble, width, `bout ${i}`);
      else expect(2 * treble).toBeLessThan(width - 20);
    });
  });

  it('has hole, rosette, bridge and bridge plate where they belong, closed', () => {
    const [hole] = plan.circles.filter(({ layer }) => layer === 'soundhole');
    near(2 * hole!.radius, made.hole, 'hole');
    near(hole!.centre[1], made.holeStation, 'station of the hole');
    const rings = plan.circles.filter(({ layer }) => layer === 'rosette').map(({ radius }) => 2 * radius);
    near(rings[0]!, made.hole + 8, 'rosette inside');
    near(rings[1]!, made.hole + 32, 'rosette outside');
    for (const [layer, [across, along]] of [
      ['bridge', made.bridge],
      ['bridge-plate', made.plate],
    ] as const) {
      const [first] = on(layer);
      expect(first!.closed).toBe(true);
      near(extent(first!.points).width, across, layer);
      near(extent(first!.points).height, along, layer);
    }
  });

  it('has nut, fingerboard and every fret to the last', () => {
    const nut = made.length + made.scale * (1 - 2 ** (-made.joinFret / 12));
    const frets = on('frets');
    expect(frets).toHaveLength(made.frets);
    frets.forEach(({ points }, i) => {
      near(nut - points[0]![1], made.scale * (1 - 2 ** (-(i + 1) / 12)), `fret ${i + 1}`);
    });
    const twelfth = frets[11]!.points;
    near(twelfth[1]![0] - twelfth[0]![0], made.twelfth, 'width at the twelfth fret');
    const bone = on('neck').find(({ points }) => Math.abs(extent(points).height - 6) < 0.01)!;
    near(extent(bone.points).width, made.nut, 'nut');
  });

  it('has the outer strings from nut to compensated saddle, and a hole for each pin', () => {
    const nut = made.length + made.scale * (1 - 2 ** (-made.joinFret / 12));
    const strings = on('strings');
    expect(strings).toHaveLength(made.strings);
    const [first, last] = [strings[0]!.points, strings.at(-1)!.points];
    near(nut - first[1]![1], made.scale + 5, 'bass string');
    near(nut - last[1]![1], made.scale + 2.2, 'treble string');
    near(last[1]![0] - first[1]![0], made.spread, 'spread at the saddle');
    const pins = plan.circles.filter(({ layer }) => layer === 'bridge');
    expect(pins).toHaveLength(made.more?.includes('tie-block') ? 0 : made.strings);
  });
});

describe('templates as DXF', () => {
  it.each(TEN.map(({ name }) => name))('of %s have closed curves on named layers', (name) => {
    for (const part of PLAN_PARTS.filter((each) => each !== 'plan' && each !== 'back-bracing')) {
      const { lines, circles, arcs, layers } = back(name, part);
      expect(lines.length + circles.length + arcs.length, part).toBeGreaterThan(0);
      expect(
        layers.some((layer) => (LAYERS as readonly string[]).includes(layer)),
        part,
      ).toBe(true);
      const cut = lines.filter(({ layer }) => layer === 'outline' || layer === 'braces');
      if (part !== 'dishes') for (const line of cut) expect(line.closed, `${name} ${part}`).toBe(true);
    }
  });

  it('have each brace as long and as high as it is carved, standing on its face', () => {
    const braces = back('om', 'braces').lines.filter(({ layer }) => layer === 'braces');
    const [first] = braces;
    // √(316² + 280²), from the two ends in the recipe.
    near(extent(first!.points).width, Math.hypot(385 - 69, 160 + 120), 'length of the X');
    near(extent(first!.points).height, 15.9, 'height of the X');
    const { left, bottom } = extent(first!.points);
    const scallop = acrossAt(
      first!.points.map(([x, y]) => [y - bottom, x - left]),
      90,
    );
    near(scallop[1], 8, 'height left in the scallop');
  });

  it('have the side as long as half the outline, as deep as told at its ends', () => {
    const [side] = back('om', 'side').lines.filter(({ layer }) => layer === 'outline');
    const half = back('om', 'half-outline').lines[0]!.points;
    const walked = half.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - half[i]![0], y - half[i]![1]), 0);
    near(extent(side!.points).width, walked, 'length of the side');
    const depthAt = (at: number) => {
      const [low, high] = acrossAt(
        side!.points.map(([x, y]) => [y, x]),
        at,
      );
      return high - low;
    };
    near(depthAt(0.01), 105, 'depth at the tail');
    near(depthAt(walked - 0.01), 86, 'depth at the neck');
  });

  it('have the arcs of the dishes as true arcs', () => {
    const radii = back('om', 'dishes').arcs.map((arc) => (arc as unknown as { radius: number }).radius);
    expect(radii).toEqual([8500, 4600]);
  });
});

describe('a tiled PDF', () => {
  it.each(['a4', 'letter'] as const)('on %s has a check bar of 100.0 mm and a name on every sheet', async (paper) => {
    const outline = picture('om', 'outline');
    const pages = await readPdf(await pdf([outline], paper));
    expect(pages.length).toBeGreaterThan(3);
    const names = pages.map(({ text }) => /Sheet ([A-Z]\d)/.exec(text)?.[1]);
    expect(new Set(names).size).toBe(pages.length);
    for (const page of pages) {
      const sides = [page.width, page.height].sort((a, b) => a - b);
      const { width, height } = PAPERS[paper];
      expect(sides[0]).toBeCloseTo(Math.min(width, height), 1);
      expect(sides[1]).toBeCloseTo(Math.max(width, height), 1);
      const bar = page.lines.filter(
        (line) =>
          line.length === 2 &&
          Math.abs(line[0]![1] - line[1]![1]) < 0.01 &&
          extent(line).width > 60 &&
          line[0]![1] < 25,
      );
      expect(bar.map((line) => extent(line).width.toFixed(1))).toEqual([CHECK_BAR.toFixed(1)]);
      // Four corners, two strokes each.
      expect(
        page.lines.filter(
          (line) => line.length === 2 && Math.abs(Math.hypot(extent(line).width, extent(line).height) - 6) < 0.01,
        ),
      ).toHaveLength(8);
    }
  });

  it.each(TEN.map((made): readonly [string, Made] => [made.name, made]))(
    'of %s is true to size',
    async (name, made) => {
      const [page] = await readPdf(await pdf([picture(name, 'outline'), picture(name, 'bridge')], 'a4'));
      const largest = [...page!.lines].sort((a, b) => b.length - a.length)[0]!;
      near(extent(largest).height, made.length, 'length');
      const pages = await readPdf(await pdf([picture(name, 'bridge')], 'letter'));
      const sizes = pages[0]!.lines.map((line) => extent(line));
      expect(
        sizes.some(
          ({ width, height }) =>
            Math.abs(width - made.bridge[0]) <= CLOSE && Math.abs(height - made.bridge[1]) <= CLOSE,
        ),
      ).toBe(true);
    },
  );

  it('shows every place of the picture on some sheet, and neighbours alike where they meet', () => {
    const box = { left: -190, right: 250, bottom: -20, top: 870 };
    const { tiles, frame, rows, columns } = tilingOf(box, 'a4');
    const [wide, high] = [frame.right - frame.left, frame.top - frame.bottom];
    expect(tiles).toHaveLength(rows * columns);
    for (let x = box.left; x <= box.right; x += 7) {
      for (let y = box.bottom; y <= box.top; y += 7) {
        expect(tiles.some(({ corner: [cx, cy] }) => x >= cx && x <= cx + wide && y >= cy && y <= cy + high)).toBe(true);
      }
    }
    const [first, second] = tiles;
    expect(second!.corner[0] - first!.corner[0]).toBeCloseTo(wide - 10, 9);
  });
});

describe('an SVG', () => {
  it.each(TEN.map((made): readonly [string, Made] => [made.name, made]))(
    'of %s is well formed, in millimetres, one unit each',
    (name, made) => {
      const faults: string[] = [];
      const parser = new DOMParser({ onError: (_, message) => faults.push(message) });
      const root = parser.parseFromString(svgOf(picture(name, 'outline')), 'image/svg+xml').documentElement!;
      expect(faults).toEqual([]);
      expect(root.namespaceURI).toBe('http://www.w3.org/2000/svg');
      const [, , width, height] = root.getAttribute('viewBox')!.split(' ');
      expect(root.getAttribute('width')).toBe(`${width}mm`);
      expect(root.getAttribute('height')).toBe(`${height}mm`);
      const path = Array.from(root.getElementsByTagName('path')).find((each) => each.getAttribute('d')!.endsWith('Z'))!;
      const numbers = path
        .getAttribute('d')!
        .match(/-?\d+(?:\.\d+)?/g)!
        .map(Number);
      const points = numbers.flatMap((x, i) => (i % 2 === 0 ? [[x, numbers[i + 1]!] as const] : []));
      near(extent(points).height, made.length, 'length');
      expect(Array.from(root.getElementsByTagName('g')).map((group) => group.getAttribute('id'))).toContain('outline');
    },
  );

  it('keeps what a maker wrote a text', () => {
    const hostile: Picture = {
      name: 'x',
      title: '</title><script>alert(1)</script>',
      shapes: picture('om', 'bridge').shapes,
      labels: [{ layer: 'names', at: [0, 0], text: '<b>&"\'', height: 3, anchor: 'start' }],
    };
    const text = svgOf(hostile);
    expect(text).not.toMatch(/<script|<b>/);
    const faults: string[] = [];
    new DOMParser({ onError: (_, message) => faults.push(message) }).parseFromString(text, 'image/svg+xml');
    expect(faults).toEqual([]);
  });
});
