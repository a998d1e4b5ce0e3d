/** What a shop can hold to and read: the half-widths it states, or common practice where it states none. */
import type { Value } from '../../facts/facts.js';

export interface Tolerances {
  /** Half-widths, SI. */
  readonly thickness: number;
  readonly height: number;
  readonly width: number;
  readonly length: number;
  readonly mass: number;
  readonly frequency: number;
  /** Which of them the shop did not state. */
  readonly assumed: readonly ToleranceName[];
}

export type ToleranceName = 'thickness' | 'height' | 'width' | 'length' | 'mass' | 'frequency';

/** Common practice at the bench: plate ±0.05 mm, brace height and width ±0.2 mm, layout ±0.5 mm, scale ±1 g, tap ±1 Hz. */
const COMMON: Readonly<Record<ToleranceName, number>> = {
  thickness: 0.05e-3,
  height: 0.2e-3,
  width: 0.2e-3,
  length: 0.5e-3,
  mass: 1e-3,
  frequency: 1,
};

/** m: a dry film is measured to 0.02 mm. (common practice) */
const FILM = 0.02e-3;

export function tolerancesOf(shop: (path: string) => Value | undefined): Tolerances {
  const assumed: ToleranceName[] = [];
  const read = (name: ToleranceName): number => {
    const value = shop(`tolerance.${name}`);
    if (value?.kind === 'quantity' && value.quantity.unit && value.quantity.si > 0) return value.quantity.si;
    assumed.push(name);
    return COMMON[name];
  };
  return {
    thickness: read('thickness'),
    height: read('height'),
    width: read('width'),
    length: read('length'),
    mass: read('mass'),
    frequency: read('frequency'),
    assumed,
  };
}

/**
 * Standard uncertainty of a value as made or read, SI. A half-width is read as the bound of a rectangular
 * distribution, u = a/√3 (JCGM 100:2008, 4.3.7).
 */
export function standardUncertainty(path: string, value: Value, tolerances: Tolerances): number {
  return halfWidth(path, value, tolerances) / Math.sqrt(3);
}

/** What a value may be off by at the bench, SI: its own tolerance, or else the shop's; zero where there is none to speak of. */
export function halfWidth(path: string, value: Value, tolerances: Tolerances): number {
  if (value.kind !== 'quantity') return 0;
  const { quantity } = value;
  return quantity.tolerance ?? usualHalfWidth(path, quantity.dimension.name, tolerances);
}

function usualHalfWidth(path: string, dimension: string, tolerances: Tolerances): number {
  const last = path.slice(path.lastIndexOf('.') + 1);
  if (dimension === 'mass') return tolerances.mass;
  if (dimension === 'frequency') return tolerances.frequency;
  if (dimension !== 'length') return 0;
  if (last.endsWith('film')) return FILM;
  if (last.endsWith('thickness')) return tolerances.thickness;
  if (last.endsWith('height')) return tolerances.height;
  if (last.endsWith('width') && path.includes('bracing.')) return tolerances.width;
  return tolerances.length;
}
