import type { PlanPoint } from '../../../../language/server/protocol.js';

/** A closed path of the plan on the page, its neck up: stations run against the page, and that of `neck` is at its top; mm. */
export function planLine(points: readonly PlanPoint[], neck: number): string {
  return `M${points.map(([station, offset]) => `${offset} ${Math.round((neck - station) * 100) / 100}`).join('L')}Z`;
}
