/** What the builds of a model say all together, sentence by sentence: the design, what is left out, what to change next. */
import type { Floor, NotFitted, ResponseEffects } from '../../recipes/builds/estimated-effects.js';
import type { LeftOut } from '../../recipes/builds/design-matrix.js';
import type { ModelEffects } from '../../recipes/builds/model-effects.js';
import type { Workshop } from '../../recipes/workshop.js';
import { sentences } from '../../wording/wording.js';
import { scatterInWords } from '../comparison/compared-evidence.js';
import type { VariableWords } from './variable-words.js';

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

/** How many builds there are, and how many effects they can tell apart. */
export function summary(
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

/** Whether the effect of the variable with this index can be found by itself. */
export function standing(i: number, found: ModelEffects, words: VariableWords, workshop: Workshop): string {
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

/** Builds that say nothing here, and why: a sentence for each reason. */
export function leftOutInWords(
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

/** Why nothing was fitted to a reading. */
export function whyNot({ kind, unknowns }: NotFitted, builds: number, { wording: { say, text } }: Workshop): string {
  switch (kind) {
    case 'too-few-builds':
      return say`${builds} builds are too few: ${unknowns - 1} effects to find and the value they start from take at least ${unknowns}. Nothing is fitted.`;
    case 'nothing-varied':
      return text('Nothing that counts differs between these builds, so there is no effect to find.');
    case 'no-scatter':
      return text('No builds alike say how far this reading scatters, so nothing is fitted: build one recipe twice.');
  }
}

/** Where the noise floor comes from. */
export function floorInWords({ share, basis, builds }: Floor, workshop: Workshop): string {
  const { say } = workshop.wording;
  const scatter = `${(share * 100).toPrecision(2)} %`;
  if (basis === 'reading') {
    return say`Builds alike differ by less than the last digit written down; the noise floor comes from that digit: ${scatter} of a reading.`;
  }
  return basis === 'leftover'
    ? say`The effects leave ${scatter} of a reading unexplained, more than builds alike are known to differ by; the noise floor comes from that.`
    : say`The noise floor comes from ${scatterInWords(workshop, { basis, builds })}: ${scatter} of a reading.`;
}

/** What a number with its give or take means. */
export function meaning({ wording: { text } }: Workshop): string {
  return text(
    'Each effect is that of the step above, all else as it was. Nineteen times in twenty the true one lies within what is given or taken; one that is smaller than that is not distinguishable.',
  );
}

/** Nineteen times in twenty means one in twenty by chance: worth saying where there are so many. */
export function byChance(responses: readonly ResponseEffects[], { wording: { say } }: Workshop): readonly string[] {
  const effects = responses.flatMap(({ outcome }) => (outcome.kind === 'fitted' ? outcome.effects : []));
  const found = effects.filter(({ distinguishable }) => distinguishable).length;
  if (effects.length < 20) return [];
  return [
    say`${found} of ${effects.length} effects stand out. About one in twenty would by chance alone, so ${Math.round(effects.length / 20)} of them may mean nothing: what matters is worth building once more.`,
  ];
}
