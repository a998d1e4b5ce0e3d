/** How close a size is made at the bench where nobody says: half-widths in m. (common practice; the shop's own for plates and braces) */
import type { Held } from '../recipes/instrument/instrument.js';
import { halfWidth, type Tolerances } from '../recipes/instrument/tolerances.js';

const BY_PATH: readonly (readonly [path: RegExp, half: number])[] = [
  [/^setup\.relief$/, 0.05e-3],
  [/^setup\.(?:action|string-height|straightedge)/, 0.1e-3],
  [/^setup\.nut-clearance/, 0.03e-3],
  [/^setup\.compensation/, 0.25e-3],
  [/^(?:nut|saddle)\.(?!width)/, 0.1e-3],
  [/^nut\.width$/, 0.1e-3],
  [/^neck\.depth/, 0.2e-3],
  [/^(?:fingerboard|frets|headplate)\./, 0.1e-3],
  [/^rosette\.channel-depth$/, 0.05e-3],
  [/^(?:binding|purfling|back-purfling|back-strip|end-graft)/, 0.1e-3],
  [/^scale/, 0.25e-3],
];

/** Zero where there is none to speak of: a dome is checked with its own dish. */
export function benchTolerance({ path, value }: Held, tolerances: Tolerances): number {
  if (value.kind !== 'quantity' || path.endsWith('radius')) return 0;
  const general = halfWidth(path, value, tolerances);
  if (value.quantity.tolerance !== undefined || value.quantity.dimension.name !== 'length') return general;
  return BY_PATH.find(([pattern]) => pattern.test(path))?.[1] ?? general;
}
