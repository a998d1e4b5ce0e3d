/** Paints a surface on a canvas. */
import type { PlanPoint } from '../../../../../language/server/protocol.js';
import { mixed, type ReliefColours, written } from './colours.js';
import { facets, look, type Stand, type Surface } from './relief.js';

export interface ReliefPicture {
  readonly surface: Surface;
  /** The rim and the soundhole, as points of the plan, with their movement as a share of the largest. */
  readonly lines: readonly {
    readonly kind: 'rim' | 'hole';
    readonly points: readonly (readonly [...PlanPoint, number])[];
  }[];
}

/** px around the plate. */
const MARGIN = 14;

/** From where the plate is seen, how far it has swung out (−1 … 1), and in which colours. */
export interface Moment {
  readonly stand: Stand;
  readonly swing: number;
  readonly colours: ReliefColours;
}

/** `size`: of the canvas, in its own points. */
export function paint(
  context: CanvasRenderingContext2D,
  size: readonly [width: number, height: number],
  { surface, lines }: ReliefPicture,
  { stand, swing, colours }: Moment,
): void {
  const [width, height] = size;
  // The same scale from wherever one looks: the plate fits however it is turned.
  const scale = (Math.min(width, height) - 2 * MARGIN) / (surface.length * 1.06);
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, width, height);
  context.setTransform(scale, 0, 0, scale, width / 2, height / 2);
  context.lineJoin = 'round';
  context.lineWidth = 1.2 / scale;
  for (const { corners, out, light } of facets(surface, stand, swing)) {
    const hue = mixed(colours.still, out > 0 ? colours.out : colours.into, Math.min(1, 1.2 * Math.abs(out)));
    const lit =
      light < 0.5 ? mixed(hue, [0, 0, 0], 0.75 * (0.5 - light)) : mixed(hue, [255, 255, 255], 0.7 * (light - 0.5));
    context.fillStyle = context.strokeStyle = written(lit);
    trace(context, corners);
    context.fill();
    // Closes the hair between neighbours.
    context.stroke();
  }
  const see = look(surface, stand);
  context.lineWidth = 1.6 / scale;
  context.strokeStyle = written(colours.ink);
  context.fillStyle = written(colours.paper);
  for (const { kind, points } of lines) {
    trace(
      context,
      points.map(([station, offset, out]) => see(station, offset, swing * out)),
    );
    if (kind === 'hole') context.fill();
    context.stroke();
  }
}

function trace(context: CanvasRenderingContext2D, points: readonly (readonly [number, number, ...unknown[]])[]): void {
  context.beginPath();
  points.forEach(([x, y], i) => (i === 0 ? context.moveTo(x, y) : context.lineTo(x, y)));
  context.closePath();
}
