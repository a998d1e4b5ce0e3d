/** How each type of line looks on paper, mm: widths in the ratio 2 : 1 and dashes after ISO 128-2 (from memory). */
import type { LineType } from '../plan.js';

export interface LineLook {
  readonly width: number;
  /** Strokes and gaps; empty: continuous. */
  readonly dashes: readonly number[];
}

export const LINE_LOOKS: Readonly<Record<LineType, LineLook>> = {
  visible: { width: 0.5, dashes: [] },
  thin: { width: 0.25, dashes: [] },
  hidden: { width: 0.25, dashes: [3, 0.75] },
  centre: { width: 0.25, dashes: [6, 0.75, 0.13, 0.75] },
  phantom: { width: 0.25, dashes: [6, 0.75, 0.13, 0.75, 0.13, 0.75] },
  hatch: { width: 0.18, dashes: [] },
};
