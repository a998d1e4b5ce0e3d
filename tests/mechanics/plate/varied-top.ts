/** A top that uses what the reference tops do not: taper, sprung edge, carved braces of other profiles, half-laps, turned grain. */
import type { TopModel } from '../../../language/mechanics/plate/index.js';
import { bridgeParts, guitarOutline, spruce, toneBar, xBraces } from '../../published/plate/reference-tops.js';

export const variedTop: TopModel = {
  outline: guitarOutline,
  holes: [{ centre: [0.335, 0], diameter: 0.098 }],
  plate: { wood: spruce, thickness: { kind: 'edge-taper', centre: 0.003, edge: 0.0024, width: 0.05 }, grain: 0.05 },
  braces: [
    {
      ...xBraces[0]!,
      profile: 'parabolic',
      height: [
        { at: 0, height: 0.004 },
        { at: 0.12, height: 0.012 },
        { at: 0.2, height: 0.015 },
        { at: 0.38, height: 0.006 },
      ],
    },
    { ...xBraces[1]!, profile: 'gabled', gable: { slopeShare: 0.4, crestShare: 0.2 }, height: 0.013 },
    { ...toneBar, profile: 'triangular', height: 0.011 },
  ],
  patches: bridgeParts,
  edge: { kind: 'elastic', inPlane: 'held', rotation: 40 },
  load: { patch: 'bridge', couple: 8, shear: 700 },
};
