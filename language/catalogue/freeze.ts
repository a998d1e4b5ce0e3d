/** Until when what can be changed, as a change order meets it. (common practice) */
import type { Freeze } from './property.js';

/** Which set of wood is whose. */
export const SET_FREEZE: Freeze = { costly: 'joining', impossible: 'bracing' };
export const ROSETTE_FREEZE: Freeze = { costly: 'rosette', impossible: 'thicknessing' };
/** A hole can be enlarged; it never gets smaller. */
export const HOLE_FREEZE: Freeze = {
  costly: 'rosette',
  impossible: 'thicknessing',
  easier: { way: 'larger', costly: 'bracing' },
};
/** A plate can be thinned, first freely, then through the hole or from outside; it never gets thicker. */
export const PLATE_FREEZE: Freeze = {
  costly: 'thicknessing',
  impossible: 'thicknessing',
  easier: { way: 'smaller', costly: 'bracing', impossible: 'finish' },
};
export const OUTLINE_FREEZE: Freeze = { costly: 'outline', impossible: 'bracing' };
export const BRACE_PLACE_FREEZE: Freeze = { costly: 'bracing', impossible: 'closing' };
/** A glued brace can be carved down, after closing only through the hole. */
export const BRACE_HEIGHT_FREEZE: Freeze = {
  costly: 'bracing',
  impossible: 'closing',
  easier: { way: 'smaller', costly: 'closing' },
};
export const RIM_FREEZE: Freeze = { costly: 'rim', impossible: 'closing' };
export const CUTAWAY_FREEZE: Freeze = { costly: 'rim', impossible: 'closing' };
export const BEVEL_FREEZE: Freeze = { costly: 'rim', impossible: 'binding' };
/** A port can be cut at any time, with risk once the box is closed. */
export const PORT_FREEZE: Freeze = { costly: 'closing' };
export const SCALE_FREEZE: Freeze = { costly: 'thicknessing', impossible: 'neck' };
export const NECK_FREEZE: Freeze = { costly: 'neck', impossible: 'setup' };
/** A neck can be made slimmer. */
export const NECK_DEPTH_FREEZE: Freeze = {
  costly: 'neck',
  impossible: 'neck',
  easier: { way: 'smaller', costly: 'neck', impossible: 'setup' },
};
export const NECK_ANGLE_FREEZE: Freeze = { costly: 'neck-angle' };
export const BINDING_FREEZE: Freeze = { costly: 'binding', impossible: 'finish' };
export const BRIDGE_FREEZE: Freeze = { costly: 'setup' };
/** Bridge wood can still come off when it is on the guitar; it cannot go back. */
export const BRIDGE_SIZE_FREEZE: Freeze = { costly: 'setup', easier: { way: 'smaller' } };
export const FINISH_FREEZE: Freeze = { costly: 'finish' };
export const SHEEN_FREEZE: Freeze = { costly: 'setup' };
export const TUNER_FREEZE: Freeze = { costly: 'finish' };
export const PICKUP_FREEZE: Freeze = { costly: 'setup' };
