/** The opening in the top: round, oval, or D-shaped. SI throughout. */
import { ellipticalHole } from './air.js';
import type { PlanPoint } from './plan.js';

export interface Soundhole {
  /** `d-shaped`: half an oval, its straight side towards the bridge. */
  readonly shape: 'oval' | 'd-shaped';
  /** Middle of its length and width. */
  readonly centre: PlanPoint;
  /** m, along the centre line */
  readonly along: number;
  readonly across: number;
}

/** m². Half an oval of this length and width is as large as the whole oval of them: both are π/4 of their block. */
export function soundholeArea({ along, across }: Soundhole): number {
  return ellipticalHole(along, across);
}

/** Its edge as a closed ring of `count` points, the first not repeated. */
export function soundholeEdge(hole: Soundhole, count = 48): readonly PlanPoint[] {
  const { shape, centre, along, across } = hole;
  if (shape === 'oval') return arc(count, { from: 0, to: 2 * Math.PI, ends: false }, centre, along / 2, across / 2);
  const straight: PlanPoint = [centre[0] - along / 2, centre[1]];
  return arc(count, { from: -Math.PI / 2, to: Math.PI / 2, ends: true }, straight, along, across / 2);
}

/** rad; with both ends there is a point at each, else the last stands a step before `to`. */
interface Sweep {
  readonly from: number;
  readonly to: number;
  readonly ends: boolean;
}

function arc(
  count: number,
  { from, to, ends }: Sweep,
  [x, y]: PlanPoint,
  along: number,
  across: number,
): readonly PlanPoint[] {
  return Array.from({ length: count }, (_, i): PlanPoint => {
    const angle = from + ((to - from) * i) / (ends ? count - 1 : count);
    return [x + along * Math.cos(angle), y + across * Math.sin(angle)];
  });
}
