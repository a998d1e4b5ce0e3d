/** Where a brace really ends: in the lining. Lengths in m. */
import { outsideBy, type PlanPoint } from '../../../mechanics/body/plan.js';

/** Braces are told to where they meet the lining, and are held there: what ends this close to the outline reaches it. */
const LINING = 0.03;

/** An end this little beyond the outline is drawing: it is trimmed, as anybody would. */
const TRIMMED = 1e-3;

/** So far past the outline that no rounding leaves a gap. */
const JUST_PAST = 1e-5;

export interface Tucked {
  readonly points: readonly PlanPoint[];
  /** m by which it starts before the line as it is told; below zero where it was trimmed. */
  readonly before: number;
}

/** The line of a brace, carried on to the rim of the plate where an end lies close to it. */
export function tucked(ring: readonly PlanPoint[], line: readonly PlanPoint[]): Tucked {
  const last = line.length - 1;
  const from = toTheRim(ring, line[0]!, line[1]!);
  const to = toTheRim(ring, line[last]!, line[last - 1]!);
  return { points: [from.end, ...line.slice(1, last), to.end], before: from.by };
}

function toTheRim(
  ring: readonly PlanPoint[],
  end: PlanPoint,
  next: PlanPoint,
): { readonly end: PlanPoint; readonly by: number } {
  const length = Math.hypot(end[0] - next[0], end[1] - next[1]);
  const as = (by: number): PlanPoint => [
    end[0] + ((end[0] - next[0]) * by) / length,
    end[1] + ((end[1] - next[1]) * by) / length,
  ];
  if (!(length > TRIMMED)) return { end, by: 0 };
  const isOut = (by: number) => outsideBy(ring, as(by)) > 0;
  let [inside, outside] = isOut(0) ? [-TRIMMED, 0] : [0, LINING];
  // Neither short of the rim nor a little beyond it.
  if (isOut(inside) || !isOut(outside)) return { end, by: 0 };
  while (outside - inside > JUST_PAST / 10) {
    const middle = (inside + outside) / 2;
    if (isOut(middle)) outside = middle;
    else inside = middle;
  }
  const by = outside + JUST_PAST;
  return { end: as(by), by };
}
