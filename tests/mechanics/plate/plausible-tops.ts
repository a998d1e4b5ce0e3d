/** Random tops as a maker might draw them: their outlines, X, tone bars, fans, ladders, ends at all distances from the outline. */
import type { Brace, Point, TopModel } from '../../../language/mechanics/plate/index.js';
import { spruce } from '../../published/plate/reference-tops.js';

/** The same seed gives the same top. */
export function plausibleTop(seed: number): TopModel {
  const next = randomFrom(seed);
  const between = (low: number, high: number): number => low + (high - low) * next();
  const length = between(0.42, 0.53);
  const [lower, waist, upper] = [between(0.16, 0.21), between(0.1, 0.13), between(0.12, 0.15)];
  const outline = outlineOf(length, lower, waist, upper);
  const halfAt = (x: number): number => halfWidth(outline, x);
  const hole = { centre: [length * between(0.66, 0.7), 0] as const, diameter: between(0.08, 0.102) };
  const saddle = length * between(0.3, 0.34);
  const brace = (name: string, axis: readonly Point[]): Brace => ({
    name,
    axis,
    wood: spruce,
    profile: 'rectangular',
    width: between(0.004, 0.01),
    height: between(0.004, 0.016),
  });
  /** Short of the outline by nothing, a little, or a good deal. */
  const short = (): number =>
    [between(-0.004, 0), between(0.0005, 0.006), between(0.006, 0.03)][Math.floor(3 * next())]!;
  const across = (name: string, x: number, slant: number): Brace =>
    brace(name, [
      [x - slant, -(halfAt(x - slant) - short())],
      [x + slant, halfAt(x + slant) - short()],
    ]);
  const upperBar = across('upper bar', hole.centre[0] + hole.diameter / 2 + between(0.006, 0.03), 0);
  const style = Math.floor(3 * next());
  const braces: Brace[] = [upperBar];
  if (style === 0) {
    const crossing = hole.centre[0] - hole.diameter / 2 - between(0.004, 0.04);
    const slope = Math.tan(between(0.72, 0.95));
    for (const side of [1, -1]) {
      const reach = (direction: number): Point => {
        let t = 0.01;
        const at = (d: number): Point => [crossing + direction * d, side * slope * d * direction];
        while (t < 0.4 && Math.abs(at(t)[1]) < halfAt(at(t)[0]) && at(t)[0] > 0.004 && at(t)[0] < length - 0.004)
          t += 0.0005;
        return at(t - short() / Math.hypot(1, slope));
      };
      braces.push(brace(`X ${side}`, [reach(-1), reach(1)]));
    }
    const bars = 1 + Math.floor(2 * next());
    for (let k = 0; k < bars; k++) {
      const x = saddle - between(0.03, 0.05) - 0.03 * k;
      braces.push(
        brace(`tone bar ${k}`, [
          [x + between(0.01, 0.04), -between(0.06, 0.12)],
          [x - between(0.01, 0.04), between(0.06, 0.13)],
        ]),
      );
    }
  } else if (style === 1) {
    const count = 5 + 2 * Math.floor(2 * next());
    const bar = hole.centre[0] - hole.diameter / 2 - between(0.004, 0.02);
    braces.push(across('lower bar', bar, 0));
    const gap = between(0.02, 0.03);
    for (let k = 0; k < count; k++) {
      const y = (k - (count - 1) / 2) * gap;
      const at = (x: number): Point => [x, y * (1 + (saddle - x) / 0.33)];
      braces.push(brace(`strut ${k}`, [at(between(0.035, 0.06)), at(bar - between(0.003, 0.02))]));
    }
  } else {
    for (const share of [0.13, 0.22, 0.45, 0.53]) {
      braces.push(across(`ladder ${share}`, share * length + between(-0.01, 0.01), between(-0.02, 0.02)));
    }
  }
  const half = between(0.07, 0.095);
  const block = (x0: number, x1: number, y: number): readonly Point[] => [
    [x0, -y],
    [x1, -y],
    [x1, y],
    [x0, y],
  ];
  return {
    outline,
    holes: [hole],
    plate: { wood: spruce, thickness: between(0.0022, 0.0032), grain: 0 },
    braces,
    patches: [
      {
        name: 'bridge plate',
        outline: block(saddle - between(0.02, 0.04), saddle + between(0.016, 0.03), half * between(0.6, 1)),
        wood: spruce,
        thickness: between(0.0015, 0.003),
        grain: Math.PI / 2,
        side: 'under',
      },
      {
        name: 'bridge',
        outline: block(saddle - 0.015, saddle + 0.013, half),
        wood: spruce,
        thickness: between(0.006, 0.01),
        grain: Math.PI / 2,
        side: 'over',
      },
    ],
    edge: { kind: 'hinged', inPlane: 'held' },
    load: { patch: 'bridge', couple: 8 },
  };
}

/** A generator of numbers in [0, 1) (mulberry32; T. Ettinger, public domain, from memory). */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function outlineOf(length: number, lower: number, waist: number, upper: number): Point[] {
  const stations: readonly Point[] = [
    [0, 0.35 * lower],
    [0.08, 0.74 * lower],
    [0.24, lower],
    [0.42, (lower + waist) / 2],
    [0.6, waist],
    [0.82, upper],
    [0.95, 0.7 * upper],
    [1, 0.3 * upper],
  ];
  const edge: Point[] = [];
  for (let k = 0; k <= 60; k++) {
    const t = (1 - Math.cos((Math.PI * k) / 60)) / 2;
    const i = Math.max(0, stations.findIndex(([s]) => s >= t) - 1);
    const [[s0, y0], [s1, y1]] = [stations[i]!, stations[i + 1]!];
    const share = (1 - Math.cos((Math.PI * (t - s0)) / (s1 - s0))) / 2;
    edge.push([length * t, y0 + (y1 - y0) * share]);
  }
  return [...edge.map(([x, y]): Point => [x, -y]), ...edge.reverse()];
}

function halfWidth(outline: readonly Point[], x: number): number {
  const edge = outline.slice(0, outline.length / 2);
  const i = Math.max(
    1,
    edge.findIndex(([at]) => at >= x),
  );
  const [[x0, y0], [x1, y1]] = [edge[i - 1]!, edge[i]!];
  return -(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0));
}
