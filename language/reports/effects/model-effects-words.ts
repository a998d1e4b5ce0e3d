/** What the builds of a model say all together, sentence by sentence: the design, what is left out, what to change next. */
import type { FittedResponse, NotFitted, ToldEffect } from '../../recipes/builds/response-effects.js';
import type { Heard } from '../../recipes/builds/heard.js';
import type { Response } from '../../recipes/builds/responses.js';
import type { Design, LeftOut } from '../../recipes/builds/design-matrix.js';
import type { ModelEffects } from '../../recipes/builds/model-effects.js';
import type { Workshop } from '../../recipes/workshop.js';
import { sentences } from '../../wording/wording.js';
import { writeInShopUnit } from '../shop-values.js';
import { type Unit, writeInterval } from './effect-words.js';
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
      ? say`Then these would be separate as well: ${and(next.separates.map((each) => words.short([each])))}.`
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
  return say`${builds.length} builds, ${unknowns - 1} effects to find beside the value they start from; ${separation.clear.length} of them stand by themselves.`;
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

/** How far instruments built alike differ, and one from itself when it is read twice. */
export function scatterOf({ scatter, repeatability }: FittedResponse, { wording: { say, text } }: Workshop): string {
  const share = perCent(scatter.share);
  const among = {
    builds: say`Instruments built alike differ by ${share} of a reading, by what the effects leave over in these builds.`,
    'builds and shop': say`Instruments built alike differ by ${share} of a reading, by these builds and the shop’s own figure.`,
    shop: say`Instruments built alike differ by ${share} of a reading: the shop’s own figure, as these builds cannot say yet.`,
    'common practice': say`Instruments built alike differ by ${share} of a reading: common practice, as these builds cannot say yet.`,
  }[scatter.basis];
  // Two degrees of freedom stand for common practice: somebody has read twice only beyond them.
  if (repeatability.freedom <= 2) return sentences(among, text('Nobody has read one of them twice in this state.'));
  return sentences(among, say`Read twice, one instrument differs from itself by ${perCent(repeatability.share)}.`);
}

/** A slow drift along the series. */
export function driftInWords({ drift }: FittedResponse, unit: Unit, { wording: { say } }: Workshop): readonly string[] {
  if (!drift) return [];
  return [
    say`The series drifts: ${writeInterval(drift, unit)} from the first to the last, beside what was changed. The effects are told with that taken off.`,
  ];
}

/** Readings that are asked about and kept out until the maker has answered. */
export function oddInWords(
  { path, odd, values }: Response,
  { builds }: Design,
  { wording: { say } }: Workshop,
): readonly string[] {
  if (odd.length === 0) return [];
  const like = values[Math.floor(values.length / 2)];
  return odd.map(({ row, held }) => {
    const read = writeInShopUnit(path, held.value, 'build');
    const usual = like ? writeInShopUnit(path, like.held.value, 'build') : '';
    return say`${builds[row]!.label} has ${read} for ${path}, where others have ${usual} or so. Is it right? It is kept out until the slip is mended or the build says \`accept odd-reading because "…"\`.`;
  });
}

function perCent(share: number): string {
  return `${(share * 100).toPrecision(2)} %`;
}

/** What a number with its give or take means. */
export function meaning({ wording: { text } }: Workshop): string {
  return text(
    'Each effect is that of the step above, all else as it was; computed, from the builds alone, and both together, where mechanics may be off by a fifth of an effect. Nineteen times in twenty the true one lies within what is given or taken.',
  );
}

/** Nineteen times in twenty means one in twenty by chance: worth saying where there are so many. */
export function byChance(effects: readonly ToldEffect[], { wording: { say } }: Workshop): readonly string[] {
  const alone = effects.filter(({ builds }) => builds);
  const out = alone.filter(({ verdict }) => verdict === 'builds' || verdict === 'disagrees').length;
  const both = effects.filter(({ together }) => together && Math.abs(together.amount) > together.band).length;
  if (effects.length < 20) return [];
  return [
    say`${out} of ${alone.length} effects stand out of the builds alone; of those named, one in twenty may be chance. ${both} are told together with mechanics.`,
    say`Of the ${effects.length} intervals of each column about ${Math.round(effects.length / 20)} miss the truth by chance.`,
  ];
}

/** What the ear said with a change and without it, and how likely that is by chance. */
export function heardInWords(
  { path, variable, with: on, without: off, chance, blind }: Heard,
  words: VariableWords,
  { wording: { say, text } }: Workshop,
): string {
  const marks = (all: readonly number[]) => all.map((mark) => `${Math.round(mark * 100) / 10}`).join(', ');
  const told = say`${path}, ${words.short([variable])}: marks of ${marks(on)} with it, ${marks(off)} without.`;
  const by =
    chance === undefined
      ? text('There are too many to count out by chance.')
      : say`Dealt out by chance, ${Math.round(chance * 100)} in 100 differ as much.`;
  return sentences(told, by, blind ? text('Heard blind.') : text('Not all of it was heard blind.'));
}
