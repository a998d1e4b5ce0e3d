/** What the air of the body moves through: the soundhole, and a port where there is one. */
import { taken } from '../taken.js';
import type { Opening } from '../../../mechanics/body/air.js';
import type { Ask } from '../../evaluation/derived-quantity.js';
import { areaOfSoundhole } from './soundhole.js';

export function openingsOf(ask: Ask): readonly Opening[] {
  const rim = ask.numberIf('soundhole.edge-thickness') ?? plateAndPatch(ask);
  const hole: Opening = { area: areaOfSoundhole(ask), thickness: rim };
  const port = ask.numberIf('port.area');
  if (port === undefined || port <= 0) return [hole];
  const passage = ask.numberIf('port.length') ?? ask.number('sides.thickness');
  const count = wholeOf(taken(ask, 'port.count'));
  return [hole, ...Array.from({ length: count }, () => ({ area: port / count, thickness: passage }))];
}

function plateAndPatch(ask: Ask): number {
  return ask.number('top.thickness') + taken(ask, 'soundhole.patch.thickness');
}

/** Openings that share an area are each a plug of air of their own; what is no count is one. */
function wholeOf(count: number): number {
  return Number.isInteger(count) && count > 0 && count <= MOST_PORTS ? count : 1;
}

const MOST_PORTS = 100;
