/** Where the bridge stands, and the plate under it. */
import { taken } from '../taken.js';
import { fretPlace } from '../../../mechanics/strings/frets.js';
import { acrossCentre, type PlanPoint } from '../../../mechanics/body/plan.js';
import type { Ask } from '../../evaluation/derived-quantity.js';
import type { SharedPart } from '../../evaluation/shared-part.js';

/** The station at which scale, fret at the body and length of the body put the saddle, before compensation. */
export const SADDLE_BY_SCALE: SharedPart<number> = { key: 'saddle by the scale', make: saddleByScale };

/** The bridge as it stands on the top. */
export const BRIDGE: SharedPart<readonly PlanPoint[]> = {
  key: 'place of the bridge',
  make: (ask) => {
    const width = ask.number('bridge.width');
    return acrossCentre(bridgeMiddle(ask, width), width, ask.number('bridge.length'), offsetOf(ask));
  },
};

/** The plate under it. */
export const BRIDGE_PLATE: SharedPart<readonly PlanPoint[]> = {
  key: 'place of the bridge plate',
  make: (ask) => {
    const [along, across] = [ask.number('bridge.plate.width'), ask.number('bridge.plate.length')];
    const middle = ask.numberIf('bridge.plate.station') ?? bridgeMiddle(ask, ask.number('bridge.width'));
    return acrossCentre(middle, along, across, offsetOf(ask));
  },
};

/** The station of the middle of the saddle: as told, or where the scale and the fret at the body put it. */
export function saddleStation(ask: Ask): number {
  return ask.numberIf('bridge.station') ?? saddleByScale(ask);
}

/** The station of the middle of a bridge of this width. */
export function bridgeMiddle(ask: Ask, width: number): number {
  const ahead = taken(ask, 'bridge.saddle-distance');
  return saddleStation(ask) + ahead - width / 2;
}

function saddleByScale(ask: Ask): number {
  const scale = ask.number('scale');
  return ask.number('body.length') - (scale - fretPlace(scale, ask.number('neck.join-fret')));
}

function offsetOf(ask: Ask): number {
  return taken(ask, 'bridge.offset');
}
