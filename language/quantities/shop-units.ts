/** Which unit a shop speaks in, and which unit of the other system says the same. */
import { sameDimension, type Dimension } from './dimension.js';
import type { Unit } from './unit.js';
import { unit, unitsOf } from './units.js';

export type System = 'metric' | 'inch';

/**
 * The unit a value of this dimension is best shown in. `si`, when given, lets the size decide between, say, MPa and
 * GPa. Undefined for a pure number and for a dimension that has no unit in the table.
 */
export function shopUnit(dimension: Dimension, si?: number, system: System = 'metric'): Unit | undefined {
  const size = si === undefined || !Number.isFinite(si) || si === 0 ? undefined : Math.abs(si);
  const steps = STEPS[system].find(({ of }) => sameDimension(unit(of)?.dimension ?? dimension, dimension) && unit(of));
  if (steps !== undefined) {
    const step = size === undefined ? undefined : steps.from.find(([, least]) => size >= least);
    return unit(step?.[0] ?? steps.of);
  }
  if (dimension.exponents.every((exponent) => exponent === 0)) return undefined;
  const all = unitsOf(dimension);
  return all.find((one) => one.system === system || one.system === 'both') ?? all[0];
}

/** The unit of the other system that a maker sets beside this one; undefined where both systems use the same. */
export function otherUnit(of: Unit): Unit | undefined {
  return of.beside === 'itself' ? undefined : unit(of.beside);
}

interface Steps {
  /** The usual unit, used when the size is not known. */
  readonly of: string;
  /** Unit and the least SI size it is used for, largest first; the last one takes the rest. */
  readonly from: readonly (readonly [string, number])[];
}

const STEPS: Readonly<Record<System, readonly Steps[]>> = {
  metric: [
    {
      of: 'mm',
      from: [
        ['m', 3],
        ['mm', 1e-5],
        ['µm', 0],
      ],
    },
    {
      of: 'g',
      from: [
        ['kg', 5],
        ['g', 1e-4],
        ['mg', 0],
      ],
    },
    {
      of: 'GPa',
      from: [
        ['GPa', 1e8],
        ['MPa', 1e5],
        ['kPa', 1e3],
        ['Pa', 0],
      ],
    },
    {
      of: 'L',
      from: [
        ['m³', 1],
        ['L', 0.1e-3],
        ['cm³', 0],
      ],
    },
    {
      of: 'cm²',
      from: [
        ['m²', 1],
        ['cm²', 1e-5],
        ['mm²', 0],
      ],
    },
    {
      of: 'days',
      from: [
        ['days', 86400],
        ['h', 3600],
        ['min', 60],
        ['s', 0],
      ],
    },
    {
      of: 'kN/m',
      from: [
        ['kN/m', 1e3],
        ['N/m', 0],
      ],
    },
    {
      of: 'N·m',
      from: [
        ['N·m', 0.01],
        ['N·mm', 0],
      ],
    },
  ],
  inch: [
    {
      of: 'in',
      from: [
        ['ft', 3],
        ['in', 1e-4],
        ['mil', 0],
      ],
    },
    {
      of: 'oz',
      from: [
        ['lb', 1],
        ['oz', 0],
      ],
    },
    {
      of: 'Mpsi',
      from: [
        ['Mpsi', 1e8],
        ['psi', 0],
      ],
    },
  ],
};
