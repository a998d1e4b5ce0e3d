/** The step a maker would try: a tenth on a plate, half a millimetre on a brace, a gram at the bridge. */
import type { Property } from '../../catalogue/property.js';
import { DIMENSION, sameDimension } from '../../quantities/dimension.js';
import { unit as unitNamed } from '../../quantities/units.js';

export interface Step {
  /** SI, with its sign: the way that stays open longest at the bench. */
  readonly si: number;
  /** `less` or `more`. */
  readonly word: 'less' | 'more';
}

export function sensibleStep(property: Property, value: number): Step | undefined {
  if (!property.dimension || !Number.isFinite(value) || value === 0) return undefined;
  const size = usualSize(property) ?? roundedShare(value, property.unit);
  // Plates and braces only get thinner; what has no easier way is asked upwards.
  const isSmaller = property.freeze?.easier?.way === 'smaller';
  return isSmaller ? { si: -size, word: 'less' } : { si: size, word: 'more' };
}

/** Steps of the bench, SI. (common practice) */
function usualSize({ path, dimension }: Property): number | undefined {
  const last = path.slice(path.lastIndexOf('.') + 1);
  if (!dimension) return undefined;
  if (sameDimension(dimension, DIMENSION.length)) {
    if (last.endsWith('radius')) return undefined;
    if (last.endsWith('thickness')) return 0.1e-3;
    if (last === 'film') return 0.01e-3;
    if (/^(bracing|back-bracing|saddle|nut)\./.test(path)) return 0.5e-3;
    return path.startsWith('bridge.') && last === 'height' ? 0.5e-3 : 1e-3;
  }
  if (sameDimension(dimension, DIMENSION.mass)) return 1e-3;
  if (sameDimension(dimension, DIMENSION.frequency)) return 1;
  if (sameDimension(dimension, DIMENSION.humidity)) return 0.05;
  if (sameDimension(dimension, DIMENSION.moisture)) return 0.01;
  return sameDimension(dimension, DIMENSION.temperature) ? 1 : undefined;
}

/** About a twentieth, as a round number of the property's unit: 1, 2 or 5 and noughts. */
function roundedShare(value: number, symbol: string | undefined): number {
  const factor = (symbol === undefined ? undefined : unitNamed(symbol))?.factor ?? 1;
  const share = Math.abs(value) / factor / 20;
  const power = 10 ** Math.floor(Math.log10(share));
  const lead = share / power;
  return (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10) * power * factor;
}
