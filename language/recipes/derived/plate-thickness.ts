/** How thick a plate is, where: even, thinned towards its edge, or as its map says. */
import { mappedPlate, type MappedPoint, taperedPlate, type TaperedPlate } from '../../mechanics/wood/uneven-plate.js';
import type { Ask } from '../evaluation/evaluation.js';
import { taken } from './taken.js';
import { bodyOf } from './layout/outline.js';

/** Its mean thicknesses; the outline is needed only where it is not even. */
export function thicknessesOf(ask: Ask, plate: 'top' | 'back'): TaperedPlate {
  const centre = ask.number(`${plate}.thickness`);
  const map = thicknessMap(ask, plate);
  if (map)
    return mappedPlate(
      map.map(({ point }) => point),
      bodyOf(ask),
    );
  const edge = ask.numberIf(`${plate}.edge-thickness`);
  if (edge === undefined || edge === centre) return { volume: 0, mean: centre, stiff: centre };
  const band = taken(ask, `${plate}.edge-width`);
  return taperedPlate({ centre, edge, band }, ask.number('body.top-area'), ask.number('body.perimeter'));
}

/**
 * The points of a plate's thickness map, each with the path of its number. The plate's own thickness stands at its middle, unless
 * a point there has a name of its own. Undefined without a map.
 */
export function thicknessMap(
  ask: Ask,
  plate: 'top' | 'back',
): readonly { readonly path: string; readonly point: MappedPoint }[] | undefined {
  const names = ask.members(`${plate}.map`);
  if (names.length === 0) return undefined;
  const named = names.map((name) => {
    const at = `${plate}.map.${name}`;
    const place = [ask.number(`${at}.at.station`), ask.number(`${at}.at.offset`)] as const;
    return { path: `${at}.thickness`, point: { at: place, thickness: ask.number(`${at}.thickness`) } };
  });
  if (names.includes('centre')) return named;
  const middle = [bodyOf(ask).outline.length / 2, 0] as const;
  const own = { path: `${plate}.thickness`, point: { at: middle, thickness: ask.number(`${plate}.thickness`) } };
  return [own, ...named];
}
