import type { ThicknessMap, TopModel, TopProblem } from './model.js';
export function validateTop(_model: TopModel): TopProblem[] { return []; }
/** m: least thickness anywhere. */
export function thinnest(map: ThicknessMap): number {
  if (typeof map === 'number') return map;
  if (map.kind === 'edge-taper') return Math.min(map.centre, map.edge);
  return Math.min(...map.points.map(({ thickness }) => thickness));
}
