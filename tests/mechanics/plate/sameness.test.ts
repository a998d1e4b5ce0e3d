/** The same top seen otherwise is the same top: mirrored, in another order of members, larger as a whole. */
import { expect, test } from 'vitest';
import { TopSolver, type Brace, type Point, type TopModel } from '../../../language/mechanics/plate/index.js';
import { FIVE_TOPS } from '../../published/plate/continuity/five-tops.js';

const answers = (model: TopModel): readonly number[] => {
  const result = new TopSolver().solve(model, { modes: 4 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { modes, statics } = result.solution;
  return [...modes.map(({ frequency }) => frequency), statics!.rotation, statics!.dip, statics!.belly];
};
const tops = FIVE_TOPS.map(({ name, base, make }) => {
  const [first, ...rest] = base.lines;
  const uneven = { ...base, lines: [[first![0] + 5, first![1] - 4, first![2], first![3]] as const, ...rest] };
  return { name, model: { ...make(uneven), crossing: 'solid' as const } };
});
const scaled = ([x, y]: Point, s: number): Point => [x * s, y * s];

test.each(tops)('$name: mirrored bracing within 0.1 %', ({ model }) => {
  const braces = model.braces!.map((brace): Brace => ({ ...brace, axis: brace.axis.map(([x, y]) => [x, -y]) }));
  const [one, other] = [answers(model), answers({ ...model, braces })];
  one.forEach((value, i) => expect(Math.abs(other[i]! / value - 1)).toBeLessThan(1e-3));
});

test.each(tops)('$name: braces in another order, the same to nine digits', ({ model }) => {
  const [one, other] = [answers(model), answers({ ...model, braces: [...model.braces!].reverse() })];
  one.forEach((value, i) => expect(Math.abs(other[i]! / value - 1)).toBeLessThan(1e-9));
});

test.each(tops)('$name: all lengths 7 %% larger, within 0.3 %%', ({ model }) => {
  const s = 1.07;
  const larger: TopModel = {
    ...model,
    outline: model.outline.map((p) => scaled(p, s)),
    holes: model.holes!.map((hole) =>
      'outline' in hole ? hole : { centre: scaled(hole.centre, s), diameter: hole.diameter * s },
    ),
    plate: { ...model.plate, thickness: (model.plate.thickness as number) * s },
    braces: model.braces!.map((brace) => ({
      ...brace,
      axis: brace.axis.map((p) => scaled(p, s)),
      width: brace.width * s,
      height: (brace.height as number) * s,
    })),
    patches: model.patches!.map((patch) => ({
      ...patch,
      outline: patch.outline.map((p) => scaled(p, s)),
      thickness: patch.thickness * s,
    })),
    load: { ...model.load, couple: model.load!.couple! * s ** 3 },
  };
  const [one, other] = [answers(model), answers(larger)];
  // Similar bodies of one wood: frequencies go as 1/s, and the same stress gives the same angles and s times the movements.
  one.forEach((value, i) => {
    const wanted = i < 4 ? value / s : i === 4 ? value : value * s;
    expect(Math.abs(other[i]! / wanted - 1)).toBeLessThan(3e-3);
  });
});

test('a rim that turns freely is a hinged one', () => {
  const { model } = tops[0]!;
  const [soft, hinged] = [
    answers({ ...model, edge: { kind: 'elastic', inPlane: 'held', rotation: 0 } }),
    answers(model),
  ];
  hinged.forEach((value, i) => expect(Math.abs(soft[i]! / value - 1)).toBeLessThan(1e-6));
});

/** Braces let into the rim: the first two go on beyond the edge. */
const letIn = tops.slice(0, 1).map(({ name, model }) => ({
  name: `${name}, let into the rim`,
  model: { ...model, braces: model.braces!.map((brace, i) => (i < 2 ? longer(brace) : brace)) },
}));

function longer(brace: Brace): Brace {
  const [[ax, ay], [bx, by]] = brace.axis as readonly [Point, Point];
  const share = 0.04 / Math.hypot(bx - ax, by - ay);
  const beyond = ([x, y]: Point, sign: number): Point => [x + sign * share * (bx - ax), y + sign * share * (by - ay)];
  return { ...brace, axis: [beyond([ax, ay], -1), beyond([bx, by], 1)] };
}

test.each([...tops, ...letIn])('$name: a rim that does not turn at all is a clamp, within 0.5 %', ({ model }) => {
  const [stiff, clamped] = [
    answers({ ...model, edge: { kind: 'elastic', inPlane: 'held', rotation: 1e7 } }),
    answers({ ...model, edge: { kind: 'clamped' } }),
  ];
  clamped.forEach((value, i) => expect(Math.abs(stiff[i]! / value - 1)).toBeLessThan(5e-3));
});

test('a brace over the soundhole is told, and how far', () => {
  const through = FIVE_TOPS[1]!;
  const { problems } = new TopSolver().solve(through.make(through.base), { modes: 0 });
  const told = problems.map(({ message }) => message).filter((message) => message.includes('runs over the soundhole'));
  expect(told).toHaveLength(2);
  expect(told[0]).toMatch(/^The brace 1 runs over the soundhole for \d+ mm; it is carried there as a free bar\.$/);
});
