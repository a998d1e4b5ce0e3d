/** The plan of an instrument. */
import { describe, expect, it } from 'vitest';
import { type DrawnPart, type PlanPoint, drawingOf } from '../../language/reports/plan/drawing.js';
import { deskOf, VENNICK } from '../editing/desk-of.js';

const text = `
recipe v-32 from v-31 {
  change bracing.x-bass.height: 15.9 mm -> 14.9 mm
}`;
const desk = deskOf(text, VENNICK);
const drawing = drawingOf(desk, 'v-32')!;
const part = (path: string): DrawnPart => drawing.parts.find((each) => each.path === path)!;

const spread = (points: readonly PlanPoint[], axis: 0 | 1) => {
  const all = points.map((point) => point[axis]);
  return [Math.min(...all), Math.max(...all)] as const;
};

describe('the plan', () => {
  it('has the outline in millimetres, as long and as wide as the body', () => {
    expect([drawing.length, drawing.width]).toEqual([489, 381]);
    expect(drawing.size).toEqual({ length: '489 mm', width: '381 mm' });
    expect(spread(drawing.outline, 0)).toEqual([0, 489]);
    const [bass, treble] = spread(drawing.outline, 1);
    // The bouts are met to a tenth of a millimetre by the points drawn.
    expect(bass).toBeCloseTo(-190.5, 0.5);
    expect(treble).toBeCloseTo(190.5, 0.5);
  });

  it('writes sizes in inches first where the shop does', () => {
    const inches = VENNICK.replace('shop test {', 'shop test { units: inch ');
    const own = drawingOf(deskOf(text, inches), 'v-32')!;
    expect(own.size).toEqual({ length: '19.25 in (489 mm)', width: '15 in (381 mm)' });
    // Drawn to the same scale.
    expect(own.outline).toEqual(drawing.outline);
    const figures = own.parts.find(({ path }) => path === 'bracing.x-bass')!.figures;
    expect(figures).toContainEqual({ path: 'width', value: '0.311 in (7.9 mm)' });
    expect(figures.find(({ path }) => path === 'length')!.value).toMatch(/^1\d\.\d+ in \(\d{3}\.\d mm\)$/);
  });

  it('has the soundhole where the recipe puts it', () => {
    const shape = part('soundhole').shape!;
    expect(spread(shape, 0)).toEqual([335 - 50.5, 335 + 50.5]);
    expect(spread(shape, 1)).toEqual([-50.5, 50.5]);
  });

  it('has braces as wide as they are glued, from end to end', () => {
    const { shape, heights } = part('bracing.x-bass');
    const [a, b, c, d] = shape! as [PlanPoint, PlanPoint, PlanPoint, PlanPoint];
    const length = Math.hypot(405 - 78, 92 + 150);
    expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(length, 1);
    expect(Math.hypot(d[0] - a[0], d[1] - a[1])).toBeCloseTo(7.9, 1);
    expect([(a[0] + d[0]) / 2, (a[1] + d[1]) / 2]).toEqual([78, -150]);
    expect([(b[0] + c[0]) / 2, (b[1] + c[1]) / 2]).toEqual([405, 92]);
    expect(heights!.at(-1)!.at).toBeCloseTo(length, 1);
    expect(new Set(heights!.map(({ height }) => height))).toEqual(new Set([14.9]));
  });

  it('follows the carving of a brace', () => {
    const carved = deskOf(
      'recipe v-32 from v-31 { bracing.x-bass { end-height: 3 mm  taper.length: 60 mm } }',
      VENNICK,
    );
    const heights = drawingOf(carved, 'v-32')!.parts.find(({ path }) => path === 'bracing.x-bass')!.heights!;
    expect(heights[0]!.height).toBe(3);
    expect(heights[Math.floor(heights.length / 2)]!.height).toBe(15.9);
    expect(heights.at(-1)!.height).toBe(3);
  });

  it('puts the bridge where scale and neck joint put its saddle', () => {
    const joined = deskOf('recipe v-32 from v-31 { neck.join-fret: 14 }', VENNICK);
    const bridge = drawingOf(joined, 'v-32')!.parts.find(({ path }) => path === 'bridge')!;
    const [back, front] = spread(bridge.shape!, 0);
    // Nut to fret 14 is 645·(1 − 2^(−14/12)); the rest of the scale reaches from the neck end of the body to the saddle.
    const saddle = 489 - 645 * 2 ** (-14 / 12);
    expect(front).toBeCloseTo(saddle + 10, 1);
    expect(front - back).toBeCloseTo(34, 5);
    expect(spread(bridge.shape!, 1)).toEqual([-76, 76]);
  });

  it('leaves out a bridge whose place is not known, and names what would tell it', () => {
    expect(drawing.parts.map(({ path }) => path)).not.toContain('bridge');
    expect(drawing.missing).toEqual([{ part: 'bridge', paths: ['neck.join-fret'] }]);
  });

  it('tells each part’s numbers with their units', () => {
    expect(part('bracing.x-bass').figures).toContainEqual({ path: 'height', value: '14.9 mm' });
    expect(part('bracing.x-bass').figures).toContainEqual({ path: 'from', value: '(78 mm, -150 mm)' });
    expect(part('top').figures).toContainEqual({ path: 'thickness', value: '2.8 mm' });
  });

  it('adds what a brace comes to, as far as it is known', () => {
    expect(part('bracing.x-bass').figures).toContainEqual({ path: 'length', value: '406.8 mm' });
    expect(part('bracing.x-bass').figures.find(({ path }) => path === 'mass')?.value).toMatch(/^\d+(\.\d+)? g$/);
    // The model has no wood yet.
    const { figures } = drawingOf(desk, 'vennick')!.parts.find(({ path }) => path === 'bracing.x-bass')!;
    expect(figures.map(({ path }) => path)).not.toContain('mass');
  });

  it('tells how thick a plate is, and where it is thinned', () => {
    expect(part('top').thickness).toEqual({ centre: '2.8 mm', points: [] });
    const thinned = (more: string) =>
      drawingOf(deskOf(`recipe v-32 from v-31 { top.edge-thickness: 2.4 mm ${more} }`, VENNICK), 'v-32')!.parts[0]!;
    expect(thinned('').thickness!.edge).toEqual({ value: '2.4 mm', band: 60, width: '60 mm', isUsualBand: true });
    expect(thinned('top.edge-width: 45 mm').thickness!.edge).toEqual({
      value: '2.4 mm',
      band: 45,
      width: '45 mm',
      isUsualBand: false,
    });
    expect(thinned('top.map { tail { at: (60 mm, 0 mm)  thickness: 2.5 mm } }').thickness!.points).toEqual([
      { name: 'tail', at: [60, 0], value: '2.5 mm' },
    ]);
  });

  it('leads to the recipe’s own line where it has one, otherwise to where the part was told first', () => {
    expect(part('bracing.x-bass').source).toMatchObject({ uri: 'file:0', range: { start: { line: 2, character: 2 } } });
    const { uri, range } = part('bracing.x-treble').source!;
    const lines = VENNICK.split('\n');
    expect(uri).toBe('file:1');
    expect(lines[range.start.line]!.slice(range.start.character)).toMatch(/^from: \(78 mm, 150 mm\)/);
  });

  it('draws what it can and names what is missing', () => {
    const bare = drawingOf(
      deskOf('model m {\n  body.length: 490 mm\n  bracing { x { from: (78 mm, -150 mm)  width: 8 mm } }\n}'),
      'm',
    )!;
    expect(bare.outline).toEqual([]);
    expect(bare.parts).toEqual([]);
    expect(bare.missing).toContainEqual({ part: 'body', paths: ['body.lower-bout.width'] });
    expect(bare.missing.map(({ part: name }) => name)).toEqual(['body', 'bracing.x']);
  });

  it('says why a body cannot be drawn whose sizes contradict each other', () => {
    const odd = deskOf('recipe v-32 from v-31 { change body.waist.width: 241 mm -> 400 mm }', VENNICK);
    const { missing, parts } = drawingOf(odd, 'v-32')!;
    expect(missing[0]).toMatchObject({
      part: 'body',
      paths: [],
      trouble: expect.stringContaining('narrower') as string,
    });
    expect(parts.map(({ path }) => path)).toContain('bracing.x-bass');
  });

  it('draws a model and a build too, and nobody of an unknown name', () => {
    const more = deskOf('build no-1 of v-31 { top.thickness: 2.7 mm }', VENNICK);
    expect(drawingOf(more, 'vennick')!.parts.map(({ kind }) => kind)).toContain('brace');
    const built = drawingOf(more, 'no-1')!.parts.find(({ path }) => path === 'top')!;
    expect(built.figures).toContainEqual({ path: 'thickness', value: '2.7 mm' });
    expect(built.source).toMatchObject({ uri: 'file:0' });
    expect(drawingOf(more, 'nobody')).toBeUndefined();
  });
});
