/**
 * What silence means: values that count as this where nobody says anything, since most instruments have nothing there or
 * the usual. Everything else that is not written is unknown. What is written and cannot be used is never replaced by these.
 */
import { english } from '../wording/wording.js';

export interface TakenAs {
  readonly si: number;
  /** Said of everything computed with it; absent where silence says so itself: no offset, no such part. */
  readonly assumption?: string;
  /** The same, written out. */
  readonly word?: string;
}

const NONE: TakenAs = { si: 0 };

/** By path; `*` stands for one word. */
const TABLE: ReadonlyMap<string, TakenAs> = new Map([
  ['top.thickness', { si: 0, assumption: english('the depth of the body is taken without the top') }],
  ['back.thickness', { si: 0, assumption: english('the depth of the body is taken without the back') }],
  // Width of the thinned band where only two thicknesses are given. (common practice)
  ['top.edge-width', { si: 0.06, assumption: english('the top is taken to be thinned over the outer 60 mm') }],
  ['back.edge-width', { si: 0.06, assumption: english('the back is taken to be thinned over the outer 60 mm') }],
  // What is left of the loss of measured main resonances when that of the wood is taken off.
  [
    'top.rim-loss',
    { si: 0.015, assumption: english('rim, joints and finish of the top are taken to cost it 1/Q 0.015') },
  ],
  [
    'back.rim-loss',
    { si: 0.015, assumption: english('rim, joints and finish of the back are taken to cost it 1/Q 0.015') },
  ],
  ['cutaway.volume-change', NONE],
  ['shop.climate.humidity', { si: 0.45, assumption: english('the shop is taken to be at 45 %RH') }],
  ['shop.climate.temperature', { si: 293.15, assumption: english('the shop is taken to be at 20 °C') }],
  ['home.temperature', { si: 293.15, assumption: english('where it will live is taken to be at 20 °C') }],
  ['bracing.*.scallop.length', { si: 0.1, assumption: english('a scallop is taken to be 100 mm long') }],
  ['top.grain-angle', NONE],
  ['back.grain-angle', NONE],
  ['bridge.plate.grain-angle', NONE],
  ['bridge.offset', NONE],
  // Where the front edge of a bridge usually lies before the saddle. (common practice)
  ['bridge.saddle-distance', { si: 0.01 }],
  // Square across, and as far from the nut as the scale is long.
  ['saddle.angle', NONE],
  ['setup.compensation.middle', NONE],
  ['soundhole.offset', NONE],
  ['soundhole.patch.grain-angle', NONE],
  ['soundhole.patch.thickness', NONE],
  ['port.count', { si: 1 }],
  ['rosette.width', NONE],
  ['rosette.channel-depth', NONE],
  ['saddle.mass', NONE],
  ['bridge.pins.mass', NONE],
  ['bridge.plate.mass', NONE],
  ['electronics.*.mass', NONE],
  ['rim.added-mass', NONE],
  ['nut.mass', NONE],
  ['deflection.rig.at', { si: 0, word: 'middle' }],
]);

/** What is taken for a path nobody says anything about; undefined: nothing is. */
export function takenAs(path: string): TakenAs | undefined {
  return (
    TABLE.get(path) ??
    TABLE.get(
      path.replace(/^(?:bracing|back-bracing)\.[^.]+/, 'bracing.*').replace(/^electronics\.[^.]+/, 'electronics.*'),
    )
  );
}

export const TAKEN_AS: ReadonlyMap<string, TakenAs> = TABLE;
