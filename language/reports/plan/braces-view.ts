/** Braces as they are glued, cross-hatched where they are let into one another, and each from its side. */
import { type DrawnBrace } from './drawn-from.js';
import { common, crossedAt, crossHatch, direction, distance } from './geometry.js';
import type { BraceProfile, Notch, Point, Shape } from './plan.js';

/** As wide as it is glued, square-cut; what is carved shows from the side. */
export function braceShapes(braces: readonly DrawnBrace[]): readonly Shape[] {
  return braces.map((brace): Shape => {
    return { kind: 'path', layer: 'braces', line: 'thin', part: brace.part, points: ringOf(brace), closed: true };
  });
}

/** mm between the strokes of the hatching. */
const HATCH = 2;

export function notchShapes(braces: readonly DrawnBrace[]): readonly Shape[] {
  return crossings(braces).flatMap(({ a, b }): readonly Shape[] => {
    const shared = common(ringOf(a), ringOf(b));
    return crossHatch(shared, HATCH).map((points) => {
      return { kind: 'path', layer: 'notches', line: 'hatch', part: a.part, points, closed: false };
    });
  });
}

function ringOf({ line, width }: DrawnBrace): readonly Point[] {
  const left = line.map((point, i) => beside(line, i, width / 2));
  const right = line.map((point, i) => beside(line, i, -width / 2));
  return [...left, ...right.reverse()];
}

/** The point of a line moved sideways; between two stretches on the mitre. */
function beside(line: readonly Point[], i: number, by: number): Point {
  const before = i > 0 ? direction(line[i - 1]!, line[i]!) : direction(line[0]!, line[1]!);
  const after = i < line.length - 1 ? direction(line[i]!, line[i + 1]!) : before;
  const [nx, ny] = [-(before[1] + after[1]), before[0] + after[0]];
  const scale = (2 * by) / Math.max(0.5, nx * nx + ny * ny);
  return [line[i]![0] + nx * scale, line[i]![1] + ny * scale];
}

interface Crossing {
  readonly a: DrawnBrace;
  readonly b: DrawnBrace;
  /** mm from the first end of each. */
  readonly onA: number;
  readonly onB: number;
  readonly at: Point;
}

export function crossings(braces: readonly DrawnBrace[]): readonly Crossing[] {
  return braces.flatMap((a, i) => braces.slice(i + 1).flatMap((b) => crossing(a, b) ?? []));
}

function crossing(a: DrawnBrace, b: DrawnBrace): Crossing | undefined {
  let fromA = 0;
  for (let i = 1; i < a.line.length; i += 1) {
    const [p, q] = [a.line[i - 1]!, a.line[i]!];
    let fromB = 0;
    for (let k = 1; k < b.line.length; k += 1) {
      const [r, s] = [b.line[k - 1]!, b.line[k]!];
      const met = crossedAt(p, q, r, s);
      if (met) {
        const at: Point = [p[0] + (q[0] - p[0]) * met.at, p[1] + (q[1] - p[1]) * met.at];
        return { a, b, at, onA: fromA + met.at * distance(p, q), onB: fromB + met.other * distance(r, s) };
      }
      fromB += distance(r, s);
    }
    fromA += distance(p, q);
  }
  return undefined;
}

/** mm between the points of a curved crest. */
const STEP = 2;

/** `titled`: the brace’s name in words. */
export function profilesOf(braces: readonly DrawnBrace[], titled: (part: string) => string): readonly BraceProfile[] {
  const all = crossings(braces);
  return braces.map((brace): BraceProfile => {
    const { length, heightAt, height, part, stations } = brace;
    const count = Math.max(12, Math.ceil(length / STEP));
    // Tapers and hollows begin at places of their own; a crest of many points passes within 0.02 mm of them.
    const crest = Array.from({ length: count + 1 }, (_, i): Point => [
      (length * i) / count,
      heightAt((length * i) / count),
    ]);
    const notches = all.flatMap((one): readonly Notch[] => {
      if (one.a !== brace && one.b !== brace) return [];
      const isFirst = one.a === brace;
      const [at, other] = isFirst ? [one.onA, one.b] : [one.onB, one.a];
      const wide = other.width / Math.max(0.2, sineBetween(one));
      const depth = Math.min(heightAt(at), other.heightAt(isFirst ? one.onB : one.onA)) / 2;
      // The first is cut from above and the second from its glued face, so that the first lies through. (common practice)
      return [
        { from: at - wide / 2, to: at + wide / 2, depth, side: isFirst ? 'crest' : 'face', with: titled(other.part) },
      ];
    });
    return {
      part,
      title: titled(part),
      length,
      height,
      shape: [[0, 0], ...crest, [length, 0]],
      notches,
      stations: stations.length > 0 ? stations : usualStations(brace),
    };
  });
}

/** Where nobody names places: the ends, the quarters and the middle. */
function usualStations({ length, heightAt }: DrawnBrace): BraceProfile['stations'] {
  return [0, 0.25, 0.5, 0.75, 1].map((share) => ({ at: share * length, height: heightAt(share * length) }));
}

function sineBetween({ a, b }: Crossing): number {
  const [u, v] = [a, b].map(({ line }) => direction(line[0]!, line[line.length - 1]!)) as [Point, Point];
  return Math.abs(u[0] * v[1] - u[1] * v[0]);
}
