/** Flat things glued to the plates inside, and what is laid into them: there where any of it is said, and then all of it is needed. */
import { saysNone } from '../instrument/values.js';
import type { Ask } from '../evaluation/evaluation.js';
import { areaOfPatch, soundholeIfAny } from './layout/soundhole.js';
import { taken } from './taken.js';

/** Whether the recipe speaks of the part at all. */
export function isThere(ask: Ask, part: string, words: readonly string[]): boolean {
  return !saysNone(ask.value(part)) && words.some((word) => ask.value(`${part}.${word}`) !== undefined);
}

export function hasHolePatch(ask: Ask): boolean {
  return isThere(ask, 'soundhole.patch', ['wood', 'width', 'thickness']);
}

export function hasBackStrip(ask: Ask): boolean {
  return isThere(ask, 'back.reinforcement', ['wood', 'width', 'thickness']);
}

/** kg, zero where there is none. */
export function massIfThere(ask: Ask, part: string, there: boolean): number {
  return there ? ask.number(`${part}.mass`) : 0;
}

export function holePatchMass(ask: Ask): number {
  return ask.number('soundhole.patch.wood.density') * areaOfPatch(ask) * ask.number('soundhole.patch.thickness');
}

/** The strip runs the length of the body, in pieces between the braces. (common practice) */
export function backStripMass(ask: Ask): number {
  const [width, thickness] = ['width', 'thickness'].map((side) => ask.number(`back.reinforcement.${side}`));
  return ask.number('back.reinforcement.wood.density') * ask.number('body.length') * width! * thickness!;
}

/**
 * kg. A block fills the corner behind the bevel; what is planed off the corner of top and side is about what the veneer
 * brings back. (common practice)
 */
export function bevelMass(ask: Ask): number {
  const [depth, width, length] = ['depth', 'width', 'length'].map((side) => ask.number(`arm-bevel.${side}`));
  return (ask.number('arm-bevel.wood.density') * depth! * width! * length!) / 2;
}

export interface RosetteRing {
  /** m, of the middle of the ring. */
  readonly radius: number;
  /** kg beyond the wood it takes the place of. */
  readonly more: number;
}

/** Undefined where nobody weighed it, or there is no hole for it to lie around. */
export function rosetteRing(ask: Ask): RosetteRing | undefined {
  const mass = ask.numberIf('rosette.mass');
  const hole = soundholeIfAny(ask);
  if (mass === undefined || !hole) return undefined;
  const width = taken(ask, 'rosette.width');
  const inner = ask.numberIf('rosette.inner-diameter') ?? Math.max(hole.along, hole.across) + width;
  const channel = Math.PI * ((inner / 2 + width) ** 2 - (inner / 2) ** 2) * taken(ask, 'rosette.channel-depth');
  return { radius: inner / 2 + width / 2, more: mass - ask.number('top.wood.density') * channel };
}
