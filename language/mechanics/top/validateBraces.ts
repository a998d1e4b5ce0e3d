/** Checks of braces: sizes, and where they lie on the plate. */
import { layoutOf } from './layout.js';
import type { Brace, Point, TopModel } from './model.js';
import { above, type Findings, finitePoints, validateWood } from './validateParts.js';

const MOST_BRACES = 60;

/** The rest of the model must be sound. */
export function validateBraces(found: Findings, model: TopModel): void {
  const braces = model.braces ?? [];
  if (braces.length > MOST_BRACES) {
    found.error('braces', `No more than ${MOST_BRACES} braces can be solved.`);
    return;
  }
  const sound = braces.map((brace, i) => validateBrace(found, brace, `braces.${i}`));
  braces.forEach((brace, i) => {
    if (!sound[i]) return;
    const what = brace.name || 'brace';
    const { ribs } = layoutOf({ ...model, patches: [], braces: [brace] }, 0);
    const whole = lengthOf(brace.axis);
    const left = ribs.reduce((sum, { points }) => sum + lengthOf(points), 0);
    const path = `braces.${i}.axis`;
    if (left < 0.01 * whole) found.error(path, `The ${what} lies off the top.`);
    else if (left < 0.999 * whole) {
      found.warning(
        path,
        `The ${what} runs beyond the top; ${Math.round((left / whole) * 100)} % of its length is counted.`,
      );
    }
  });
}

function validateBrace(found: Findings, brace: Brace, path: string): boolean {
  const what = brace.name || 'brace';
  const before = found.list.length;
  validateWood(found, `${path}.wood`, what, brace.wood);
  if (!finitePoints(brace.axis)) found.error(`${path}.axis`, `A point of the ${what} is not a number.`);
  else if (brace.axis.length < 2 || !(lengthOf(brace.axis) > 1e-3)) {
    found.error(`${path}.axis`, `The ${what} needs two ends that lie apart.`);
  }
  above(found, `${path}.width`, `width of the ${what}`, brace.width);
  validateHeight(found, brace, `${path}.height`, what);
  const { slopeShare = 0.5, crestShare = 0 } = brace.gable ?? {};
  if (!(slopeShare >= 0 && slopeShare <= 1 && crestShare >= 0 && crestShare <= 1)) {
    found.error(`${path}.gable`, `The shares of slope and crest of the ${what} must lie between none and all.`);
  }
  if (brace.width > 0.2 || tallest(brace) > 0.2) {
    found.error(`${path}.width`, `The ${what} is wider or taller than 200 mm: check the unit.`);
  }
  return found.list.length === before;
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

function lengthOf(points: readonly Point[]): number {
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    length += Math.hypot(points[i]![0] - points[i - 1]![0], points[i]![1] - points[i - 1]![1]);
  }
  return length;
}
