/**
 * What the builds of a model say all together, written out: what was changed in which build, what each change did to each
 * reading with the noise floor beside it, and what to change next. The terminal prints it, the editor draws it.
 */
import type { EstimatedEffect, ResponseEffects } from '../../recipes/builds/estimated-effects.js';
import { type ModelEffects, modelEffects } from '../../recipes/builds/model-effects.js';
import type { Workshop } from '../../recipes/workshop.js';
import { writeQuantity } from '../../quantities/write.js';
import { writeSigned } from '../comparison/compared-evidence.js';
import {
  byChance,
  floorInWords,
  leftOutInWords,
  meaning,
  nextInWords,
  standing,
  summary,
  whyNot,
} from './model-effects-words.js';
import { conditionsInWords } from '../reading-words.js';
import { unitFor } from '../shop-values.js';
import { VariableWords } from './variable-words.js';

export interface ModelEffectsTable {
  readonly model: string;
  readonly builds: readonly string[];
  readonly summary: string;
  readonly variables: readonly VariableRow[];
  /** Builds that say nothing here, and why. */
  readonly leftOut: readonly string[];
  readonly responses: readonly ResponseTable[];
  /** What the numbers mean, and what one more build should change. */
  readonly closing: readonly string[];
}

/** Something that was changed between the builds. */
export interface VariableRow {
  readonly paths: string;
  /** `15.9 mm → 14.9 mm`. */
  readonly step: string;
  /** Whether its effect can be found by itself. */
  readonly standing: string;
  /** For each build what it has, and whether that is otherwise than in the build the others are told from. */
  readonly values: readonly { readonly text: string; readonly moved: boolean }[];
}

/** What was read under one set of conditions, and what the changes did to it. */
export interface ResponseTable {
  /** `resonance.air day-1`. */
  readonly name: string;
  readonly conditions: string;
  /** Of the sizes. */
  readonly unit: string;
  readonly effects: readonly EffectRow[];
  /** What could not be told apart, or why nothing was fitted. */
  readonly notes: readonly string[];
  /** Where the noise floor comes from. */
  readonly floor?: string;
}

export interface EffectRow {
  /** `bridge.mass 22 g`: the step whose effect it is. */
  readonly what: string;
  /** `−10.2 ± 7.0 g`. */
  readonly effect: string;
  /** What the engine computes for the same step, or that it is at it; absent where it cannot. */
  readonly computed?: string;
  readonly distinguishable: boolean;
  readonly verdict: string;
  /** In the unit of the response, for drawing. Nineteen times in twenty the effect is within ± `band` of `amount`. */
  readonly size: { readonly amount: number; readonly band: number; readonly computed?: number };
}

/** Undefined when there is no such model. */
export function modelEffectsTable(workshop: Workshop, model: string): ModelEffectsTable | undefined {
  const found = modelEffects(workshop, model);
  return found && writtenOut(workshop, found);
}

export function writtenOut(workshop: Workshop, found: ModelEffects): ModelEffectsTable {
  const { design, responses, separation } = found;
  const words = new VariableWords(design, workshop);
  // With too few builds for what was changed nothing is fitted anywhere, and the summary has said so.
  const isFitted = separation.groups.length > 0 && design.builds.length > separation.groups.length;
  return {
    model: design.model,
    builds: design.builds.map(({ definition }) => definition.name.text),
    summary: summary(found, workshop),
    variables: design.variables.map((variable, i) => ({
      paths: words.paths(variable),
      step: words.step(variable),
      standing: standing(i, found, words, workshop),
      values: variable.column.map((value, row) => ({
        text: words.valueAt(variable.paths[0]!, row),
        moved: value !== variable.column[design.reference],
      })),
    })),
    leftOut: leftOutInWords(design.leftOut, design.base, workshop),
    responses: isFitted ? responses.map((each) => responseTable(each, found, words, workshop)) : [],
    closing: [
      ...(isFitted ? [meaning(workshop), ...byChance(responses, workshop)] : []),
      ...nextInWords(found, words, workshop),
    ],
  };
}

function responseTable(
  { response, builds, outcome }: ResponseEffects,
  found: ModelEffects,
  words: VariableWords,
  workshop: Workshop,
): ResponseTable {
  const { path, reading } = response;
  const { say, and } = workshop.wording;
  const all = found.design.builds.length;
  const readIn =
    builds.length === all ? say`read in all ${all} builds` : say`read in ${builds.length} of ${all} builds`;
  const head = {
    name: `${path}${reading.name === '' ? '' : ` ${reading.name}`}`,
    conditions: [conditionsInWords(reading, workshop.wording), readIn].filter((part) => part !== '').join('; '),
    unit: unitFor(path, 'build')?.symbol ?? '',
  };
  if (outcome.kind !== 'fitted') return { ...head, effects: [], notes: [whyNot(outcome, builds.length, workshop)] };
  return {
    ...head,
    effects: outcome.effects.map((effect) => effectRow(path, effect, found, words, workshop)),
    notes: outcome.tangled.map(
      (knot) =>
        say`Not to be told apart in these builds, and not fitted: ${and(knot.map((each) => words.short([each])))}.`,
    ),
    floor: floorInWords(outcome.floor, workshop),
  };
}

function effectRow(
  path: string,
  { variables, amount, band, distinguishable }: EstimatedEffect,
  { predicted }: ModelEffects,
  words: VariableWords,
  { catalogue, wording: { text } }: Workshop,
): EffectRow {
  const dimension = catalogue.property(path, 'build')!.dimension!;
  const unit = unitFor(path, 'build');
  const symbol = unit?.symbol ?? '';
  const inUnit = (si: number) => si / (unit?.factor ?? 1);
  const said = predicted(path, variables);
  const computed = said === 'pending' ? undefined : said;
  return {
    what: words.short(variables),
    effect: writeQuantity(amount, dimension, { unit: symbol, uncertainty: band, difference: true }).replace(/^-/, '−'),
    ...(computed === undefined ? {} : { computed: writeSigned(computed, dimension, symbol) }),
    ...(said === 'pending' ? { computed: text('being worked out') } : {}),
    distinguishable,
    verdict: distinguishable ? text('stands out') : text('not distinguishable'),
    size: {
      amount: inUnit(amount),
      band: inUnit(band),
      ...(computed === undefined ? {} : { computed: inUnit(computed) }),
    },
  };
}
