/** The design of a model's builds in words: how many there are, what was changed in them, and what to change next. */
import type { LeftOut } from '../../recipes/design-matrix.js';
import type { ModelEffects } from '../../recipes/model-effects.js';
import type { Workshop } from '../../recipes/workshop.js';
import { sentences } from '../../wording/wording.js';
import { type Cell, table, wrapped } from './layout.js';
import type { Style } from './style.js';
import type { VariableWords } from './variable-words.js';

export function designInWords(found: ModelEffects, words: VariableWords, workshop: Workshop, style: Style): string {
  const { design } = found;
  const { and } = workshop.wording;
  const builds = design.builds.map(({ definition }) => definition.name.text);
  const indented = (sentence: string) => wrapped(sentence, style.columns - 2).map((line) => `  ${line}`);
  const title = builds.length === 0 ? design.model : `${design.model}: ${and(builds)}`;
  const rows = design.variables.map((variable, i): readonly (Cell | string)[] => [
    words.paths(variable),
    words.step(variable),
    standing(i, found, words, workshop),
  ]);
  return [
    ...wrapped(title, style.columns).map((line) => style.bold(line)),
    ...indented(summary(found, workshop)),
    ...table(rows),
    ...leftOutInWords(design.leftOut, design.base, workshop).flatMap(indented).map(style.dim),
  ].join('\n');
}

/** What one more build should change. Empty where no single change would help. */
export function nextInWords(
  { design, next }: ModelEffects,
  words: VariableWords,
  workshop: Workshop,
): readonly string[] {
  if (!next) return [];
  const { say, and } = workshop.wording;
  const from = design.builds[next.from]!.definition.name.text;
  const path = next.paths[0]!;
  const value = words.valueAt(path, next.to);
  const build = say`The next change that would tell the most: build once more as ${from} was made, with ${and(next.paths)} ${value} instead of ${words.valueAt(path, next.from)}.`;
  const then =
    next.separates.length > 0
      ? say`Then these could be told apart as well: ${and(next.separates.map((each) => words.short([each])))}.`
      : say`The widest noise floor of all these effects would shrink by ${Math.round((1 - next.narrows) * 100)} %.`;
  return [sentences(build, then)];
}

function summary(
  { design: { builds, variables }, separation }: ModelEffects,
  { wording: { say, text } }: Workshop,
): string {
  const unknowns = separation.groups.length + 1;
  if (builds.length < 2) {
    return text('It takes at least two builds of this model in which something was read to tell what a change did.');
  }
  if (variables.length === 0)
    return text('Nothing that counts differs between these builds, so there is no effect to find.');
  if (builds.length < unknowns) {
    return say`${builds.length} builds are too few: ${unknowns - 1} effects to find and the value they start from take at least ${unknowns}. Nothing is fitted.`;
  }
  if (unknowns === 2) return say`${builds.length} builds, and one effect to find beside the value they start from.`;
  return say`${builds.length} builds, ${unknowns - 1} effects to find beside the value they start from; ${separation.clear.length} of them can be told apart.`;
}

function standing(i: number, found: ModelEffects, words: VariableWords, workshop: Workshop): string {
  const { separation, design } = found;
  const { say, text, and } = workshop.wording;
  const at = (index: number) => design.variables[index]!;
  const group = separation.groups.find((each) => each.includes(i)) ?? [i];
  const knot = separation.tangled.find((each) => each.some((one) => one.includes(i)));
  const others = (all: readonly number[]) => and(all.filter((j) => j !== i).map((j) => words.short([at(j)])));
  const said = [
    group.length > 1
      ? say`always moved together with ${others(group)}`
      : knot
        ? say`cannot be told from ${others(knot.flat())}`
        : design.builds.length <= separation.groups.length
          ? text('too few builds')
          : text('its effect can be found by itself'),
    ...(at(i).declared ? [] : [text('no recipe declares it')]),
  ];
  return said.join('; ');
}

function leftOutInWords(
  leftOut: readonly LeftOut[],
  base: string | undefined,
  { wording: { say, and } }: Workshop,
): readonly string[] {
  const reasons = new Map<string, LeftOut[]>();
  for (const one of leftOut) {
    const reason = `${one.because} ${one.base ?? one.path ?? ''}`;
    reasons.set(reason, [...(reasons.get(reason) ?? []), one]);
  }
  return [...reasons.values()].map((all) => {
    const [first] = all;
    const names = and(all.map(({ build }) => build));
    switch (first!.because) {
      case 'nothing-read':
        return say`Left out, as nothing was read: ${names}.`;
      case 'other-base':
        return say`Left out, as no recipe says what lies between ${first!.base ?? ''} and ${base ?? ''}: ${names}.`;
      case 'unknown-value':
        return say`Left out, as ${first!.path ?? ''} is not known or cannot be read one way only: ${names}.`;
    }
  });
}
