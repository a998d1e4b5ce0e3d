/** The opening that the air moves through. */
import type { Ask } from '../evaluation/evaluation.js';

/** m², round or oval. */
export function soundholeArea(ask: Ask): number {
  const diameter = ask.numberIf('soundhole.diameter');
  if (diameter !== undefined) return (Math.PI * diameter ** 2) / 4;
  const width = ask.numberIf('soundhole.width');
  const length = ask.numberIf('soundhole.length');
  if (width !== undefined && length !== undefined) return (Math.PI * width * length) / 4;
  return (Math.PI * ask.number('soundhole.diameter') ** 2) / 4;
}
