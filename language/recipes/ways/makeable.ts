/** Sizes as they can be made: a plate to a twentieth of a millimetre, a brace to a tenth, a mass to half a gram. (common practice) */
import { DIMENSION, type Dimension, sameDimension } from '../../quantities/dimension.js';

/** Steps to round to, SI, the coarsest first. */
export function stepsOf(path: string, dimension: Dimension): readonly number[] {
  const last = path.slice(path.lastIndexOf('.') + 1);
  if (sameDimension(dimension, DIMENSION.length)) {
    // Domes are dished to the half foot. (common practice)
    if (last.endsWith('radius')) return [0.1524, 0.03048];
    if (last === 'film') return [0.01e-3];
    if (last.endsWith('thickness')) return [0.05e-3, 0.01e-3];
    if (/^(bracing|back-bracing|saddle|nut|bridge)\./.test(path)) return [0.1e-3, 0.05e-3];
    return [1e-3, 0.5e-3, 0.1e-3];
  }
  if (sameDimension(dimension, DIMENSION.mass)) return [1e-3, 0.5e-3, 0.1e-3];
  if (sameDimension(dimension, DIMENSION.angle)) return [Math.PI / 1800];
  return [];
}

/** The nearest sizes that can be made on either side, SI, the coarsest steps first. */
export function makeable(path: string, dimension: Dimension, si: number): readonly number[] {
  return stepsOf(path, dimension).flatMap((step) => {
    const down = Math.floor(si / step + 1e-6) * step;
    const both = [down, down + step];
    return Math.abs(si - down) <= step / 2 ? both : both.reverse();
  });
}
