/** How much wood is still to come off a plate or a brace, from the last reading of a build. */
import type { BuildRecord } from '../recipes/builds/builds.js';
import type { Held } from '../recipes/instrument/instrument.js';

export interface LeftToTakeOff {
  /** `top.thickness`, `bracing.x-bass.height` */
  readonly path: string;
  readonly meant: Held;
  readonly read: Held;
  /** m; below zero: already thinner than meant. */
  readonly left: number;
}

const ONLY_THINNER =
  /^(?:top|back|sides)\.(?:edge-)?thickness$|^(?:back-)?bracing\.[^.]+\.(?:height|end-height|width)$/;

/** What was read last, in any reading or outside one, of sizes that only get smaller. */
export function leftToTakeOff({ recipe, values, readings }: BuildRecord): readonly LeftToTakeOff[] {
  const last = new Map<string, Held>();
  for (const [path, held] of values) if (held.via === 'built') last.set(path, held);
  for (const reading of readings) for (const [path, held] of reading.values) last.set(path, held);
  return [...last].flatMap(([path, read]): readonly LeftToTakeOff[] => {
    const meant = recipe?.values.get(path);
    if (!ONLY_THINNER.test(path) || meant?.value.kind !== 'quantity' || read.value.kind !== 'quantity') return [];
    return [{ path, meant, read, left: read.value.quantity.si - meant.value.quantity.si }];
  });
}
