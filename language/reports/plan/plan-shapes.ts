/** The shapes a plan is made of, in metres: stations from the tail, offsets from the centre line, bass side negative. */
import { braceHeight } from '../../mechanics/braces/brace-height.js';
import { bodyRing } from '../../mechanics/body/cutaway-outline.js';
import { strip } from '../../mechanics/body/plan.js';
import { soundholeEdge } from '../../mechanics/body/soundhole.js';
import { braceOf } from '../../recipes/derived/brace-quantities.js';
import { BRIDGE, BRIDGE_PLATE } from '../../recipes/derived/layout/bridge-place.js';
import { braceLineOf } from '../../recipes/derived/layout/brace-line.js';
import { bodyOf } from '../../recipes/derived/layout/outline.js';
import { soundholeOf } from '../../recipes/derived/layout/soundhole.js';
import type { Ask } from '../../recipes/evaluation/evaluation.js';

type Point = readonly [number, number];

export interface Outlined {
  readonly length: number;
  readonly width: number;
  readonly points: readonly Point[];
}

export interface Shape {
  readonly shape?: readonly Point[];
  readonly heights?: readonly { readonly at: number; readonly height: number }[];
}

export interface PlanPart {
  readonly path: string;
  readonly kind: 'plate' | 'soundhole' | 'brace' | 'bridge' | 'bridge-plate';
  readonly plate: 'top' | 'back';
  /** Parts of it that are parts of the plan by themselves, or drawn rather than told. */
  readonly inner: readonly string[];
  readonly draw: (ask: Ask) => Shape;
}

export const PLAN_PARTS = {
  plates: (['top', 'back'] as const).map((plate): PlanPart => ({
    path: plate,
    kind: 'plate',
    plate,
    inner: [`${plate}.rig`],
    draw: () => ({}),
  })),
  brace: (root: 'bracing' | 'back-bracing', member: string): PlanPart => ({
    path: `${root}.${member}`,
    kind: 'brace',
    plate: root === 'bracing' ? 'top' : 'back',
    inner: [`${root}.${member}.heights`, `${root}.${member}.stations`],
    draw: (ask) => braceShape(ask, root, member),
  }),
  others: [
    {
      path: 'soundhole',
      kind: 'soundhole',
      plate: 'top',
      inner: [],
      draw: (ask) => ({ shape: soundholeEdge(soundholeOf(ask)) }),
    },
    {
      path: 'bridge.plate',
      kind: 'bridge-plate',
      plate: 'top',
      inner: [],
      draw: (ask) => ({ shape: ask.shared(BRIDGE_PLATE.key, BRIDGE_PLATE.make) }),
    },
    {
      path: 'bridge',
      kind: 'bridge',
      plate: 'top',
      inner: ['bridge.plate', 'bridge.pins'],
      draw: (ask) => ({ shape: ask.shared(BRIDGE.key, BRIDGE.make) }),
    },
  ] satisfies readonly PlanPart[],
};

/** Points along each side: a chord misses the curve by less than a line's width in print. */
const POINTS_A_SIDE = 60;

export function outlineOf(ask: Ask): Outlined {
  const body = bodyOf(ask);
  const { length } = body.outline;
  const points = bodyRing(body, POINTS_A_SIDE);
  // The bouts are the widest places; a trace is as wide as it was read off.
  const halfWidths = ask.value('body.outline')
    ? points.map(([, y]) => Math.abs(y))
    : ['lower-bout', 'upper-bout'].map((bout) => body.bassWidth(ask.number(`body.${bout}.station`)));
  return { length, width: 2 * Math.max(...halfWidths), points };
}

/** As wide as it is glued, from end to end, square-cut; what is carved shows in the heights. */
function braceShape(ask: Ask, root: string, member: string): Shape {
  const brace = braceOf(ask, root, member);
  const heightAt = braceHeight(brace);
  const count = Math.max(12, Math.ceil(brace.length / 0.005));
  return {
    shape: strip(braceLineOf(ask, root, member).points, brace.width),
    heights: Array.from({ length: count + 1 }, (_, i) => {
      const at = (brace.length * i) / count;
      return { at, height: heightAt(at) };
    }),
  };
}
