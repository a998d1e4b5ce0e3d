/** Checks of braces: sizes, and where they lie on the plate. */
import { lengthOf, lengthsOf } from './mesh/mesh-lines.js';
import { PLATE_LIMITS } from './limits.js';
import type { Brace, TopModel } from './model.js';
import { above, type Findings, finitePoints, validateWood } from './validate-parts.js';

/** m: less over a hole is not worth a word. */
const LEAST_TOLD = 0.0005;

/** Lines of the braces; whether they lie on the plate only when the rest of the plan is sound. */
export function validateBraceLines(found: Findings, model: TopModel, planSound: boolean): void {
  const braces = model.braces ?? [];
  if (braces.length > PLATE_LIMITS.braces) {
    found.error('braces', `No more than ${PLATE_LIMITS.braces} braces can be solved.`);
    return;
  }
  braces.forEach((brace, i) => {
    const path = `braces.${i}.axis`;
    const what = brace.name || 'brace';
    if (!finitePoints(brace.axis)) {
      found.error(path, `A point of the ${what} is not a number.`);
      return;
    }
    const whole = lengthOf(brace.axis);
    if (brace.axis.length < 2 || !(whole > 1e-3)) {
      found.error(path, `The ${what} needs two ends that lie apart.`);
      return;
    }
    if (!planSound) return;
    const { wood, spans, hanging } = lengthsOf(model, brace.axis);
    if (wood < 0.01 * whole) {
      found.error(path, `The ${what} lies off the top.`);
      return;
    }
    if (spans > LEAST_TOLD) {
      const length = Math.round(spans * 1000);
      found.warning(path, `The ${what} runs over the soundhole for ${length} mm; it is carried there as a free bar.`);
    }
    if (hanging > LEAST_TOLD) {
      const length = Math.round(hanging * 1000);
      found.warning(
        path,
        `The ${what} ends over the soundhole; the last ${length} mm of it hang there and carry nothing.`,
      );
    }
    const inside = wood + spans + hanging;
    if (inside > 0.999 * whole) return;
    const share = Math.round((inside / whole) * 100);
    found.warning(path, `The ${what} runs beyond the top; ${share} % of its length is counted.`);
  });
}

/** Sizes and wood of one brace. */
export function validateBrace(found: Findings, brace: Brace, path: string): void {
  const what = brace.name || 'brace';
  validateWood(found, `${path}.wood`, what, brace.wood);
  above(found, `${path}.width`, `width of the ${what}`, brace.width);
  validateHeight(found, brace, `${path}.height`, what);
  const { slopeShare = 0.5, crestShare = 0 } = brace.gable ?? {};
  if (!(slopeShare >= 0 && slopeShare <= 1 && crestShare >= 0 && crestShare <= 1)) {
    found.error(`${path}.gable`, `The shares of slope and crest of the ${what} must lie between none and all.`);
  }
  if (brace.width > 0.2 || tallest(brace) > 0.2) {
    found.error(`${path}.width`, `The ${what} is wider or taller than 200 mm: check the unit.`);
  }
}

function validateHeight(found: Findings, { height }: Brace, path: string, what: string): void {
  if (typeof height === 'number') return void above(found, path, `height of the ${what}`, height);
  if (height.length === 0) {
    found.error(path, `The height of the ${what} is given nowhere.`);
    return;
  }
  if (height.some(({ at, height: h }) => !Number.isFinite(at) || !Number.isFinite(h) || h < 0)) {
    found.error(path, `A height of the ${what} is not a number from zero up.`);
    return;
  }
  if (height.some(({ at }, i) => i > 0 && at < height[i - 1]!.at)) {
    found.error(path, `The stations of the ${what} must follow each other from its first end.`);
    return;
  }
  if (height.every(({ height: h }) => h === 0)) found.error(path, `The ${what} has no height anywhere.`);
}

function tallest({ height }: Brace): number {
  return typeof height === 'number' ? height : Math.max(0, ...height.map(({ height: h }) => h));
}
