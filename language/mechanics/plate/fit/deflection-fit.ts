/** E along the grain from the deflection of a plank or plate on two supports, with the plate solver: shear and sideways bending included. */
import { valueAt } from '../solve/sampling.js';
import type { OrthotropicWood, Point, TopModel, TopProblem } from '../model.js';
import type { FittedConstant } from './tap-fit.js';
import type { TopSolver } from '../solve/top-solver.js';

export interface DeflectionTest {
  /** m: the plank along the grain and across it, and its thickness. */
  readonly length: number;
  readonly width: number;
  readonly thickness: number;
  /** m: places of the two supports from one end. */
  readonly supports: readonly [number, number];
  /** m from the same end: where the weight hangs and where the dial reads (absent: under the weight), both on the middle line. */
  readonly loadAt: number;
  readonly readAt?: number;
  /** N */
  readonly force: number;
  /** m, down */
  readonly deflection: number;
  /** m, standard uncertainty of the deflection; absent: 2 %. */
  readonly uncertainty?: number;
  /** The other constants; E along is found. */
  readonly wood: OrthotropicWood;
}

export type DeflectionFit =
  | { readonly ok: true; readonly eAlong: Pick<FittedConstant, 'value' | 'uncertainty'> }
  | { readonly ok: false; readonly stopped: boolean; readonly problems: readonly TopProblem[] };

const STEPS = 12;

export function fitDeflection(
  solver: TopSolver,
  test: DeflectionTest,
  shouldStop: () => boolean = () => false,
): DeflectionFit {
  const refused = (path: string, message: string): DeflectionFit => ({
    ok: false,
    stopped: false,
    problems: [{ severity: 'error', path, message }],
  });
  const wrong = problemWith(test);
  if (wrong) return refused(...wrong);
  const place: Point = [test.readAt ?? test.loadAt, test.width / 2];
  let eAlong = Math.max(test.wood.eAlong, 1e6);
  for (let step = 0; step < STEPS; step++) {
    const result = solver.solve(modelOf(test, eAlong), { modes: 0, nodes: 400, shouldStop });
    if (!result.ok) return result;
    const { statics, mesh } = result.solution;
    const computed = -(valueAt(mesh, statics!.deflection, place) ?? 0);
    if (!(computed > 0)) return refused('deflection', 'At that place such a plank would not go down.');
    const ratio = computed / test.deflection;
    eAlong *= ratio;
    if (!(eAlong > 1e6 && eAlong < 1e12))
      return refused('deflection', 'No wood bends that much, or that little: check the units.');
    if (Math.abs(ratio - 1) < 1e-7) {
      return {
        ok: true,
        eAlong: { value: eAlong, uncertainty: (test.uncertainty ?? 0.02 * test.deflection) / test.deflection },
      };
    }
  }
  return refused('deflection', 'Shear alone would bend the plank more than was measured: check the thickness.');
}

function modelOf(
  { length, width, thickness, supports, loadAt, force, wood }: DeflectionTest,
  eAlong: number,
): TopModel {
  return {
    outline: [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ],
    plate: { wood: { ...wood, eAlong }, thickness, grain: 0 },
    edge: { kind: 'free' },
    rests: supports.map((x) => ({ from: [x, -width] as const, to: [x, 2 * width] as const })),
    load: { forces: [{ at: [loadAt, width / 2], force: -force }] },
  };
}

function problemWith(test: DeflectionTest): readonly [string, string] | undefined {
  const { length, width, thickness, force, deflection, supports, loadAt, readAt = loadAt, uncertainty = 1 } = test;
  for (const [name, value] of Object.entries({ length, width, thickness, force, deflection, uncertainty })) {
    if (!(Number.isFinite(value) && value > 0))
      return [name, `The ${name} of the deflection test must be more than zero.`];
  }
  const [low, high] = [Math.min(...supports), Math.max(...supports)];
  if (!(low >= 0 && high <= length && high - low > 5 * thickness))
    return ['supports', 'The two supports must lie apart, under the plank.'];
  if (!(loadAt > low && loadAt < high)) return ['loadAt', 'The weight must hang between the supports.'];
  if (!(readAt > low && readAt < high)) return ['readAt', 'The dial must read between the supports.'];
  return undefined;
}
