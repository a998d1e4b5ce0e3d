/** The line a brace is glued on. */
import type { PlanPoint } from '../../../mechanics/body/plan.js';
import type { Ask } from '../../evaluation/derived-quantity.js';
import type { SharedPart } from '../../evaluation/shared-part.js';

export type BraceRoot = 'bracing' | 'back-bracing';

export interface BraceLine {
  /** Its two ends, and between them the points a curved brace passes through. */
  readonly points: readonly PlanPoint[];
  /** m, from end to end along it */
  readonly length: number;
}

export function braceLineOf(ask: Ask, root: string, member: string): BraceLine {
  const { key, make } = braceLine(root, member);
  return ask.shared(key, make);
}

export function braceLine(root: string, member: string): SharedPart<BraceLine> {
  return { key: `line of ${root}.${member}`, make: (ask) => makeLine(ask, `${root}.${member}`) };
}

function makeLine(ask: Ask, brace: string): BraceLine {
  const end = (which: 'from' | 'to'): PlanPoint => [
    ask.number(`${brace}.${which}.station`),
    ask.number(`${brace}.${which}.offset`),
  ];
  const points = [end('from'), ...curveOf(ask, `${brace}.curve`), end('to')];
  const length = points.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - points[i]![0], y - points[i]![1]), 0);
  return { points, length };
}

function curveOf(ask: Ask, path: string): readonly PlanPoint[] {
  const value = ask.value(path);
  const items = value?.kind === 'list' ? value.items : value ? [value] : [];
  return items.flatMap((item): readonly PlanPoint[] =>
    item.kind === 'point' && [item.station, item.offset].every(({ quantity }) => quantity.dimension.name === 'length')
      ? [[item.station.quantity.si, item.offset.quantity.si]]
      : [],
  );
}
