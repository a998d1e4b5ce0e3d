/**
 * What the builds of a model say all together, written out: what was changed in which build, what each change did to each
 * reading (computed, builds alone, together), and what to do next. The terminal prints it, the editor draws it.
 */
import { fittedIn, type FittedResponse, type Interval, type ResponseEffects, type ToldEffect, type Verdict } from '../../recipes/builds/response-effects.js'; // prettier-ignore
import { type ModelEffects, modelEffects } from '../../recipes/builds/model-effects.js';
import type { Workshop } from '../../recipes/workshop.js';
import { unit as unitNamed } from '../../quantities/units.js';
import { conditionsInWords } from '../reading-words.js';
import { unitFor } from '../shop-values.js';
import { effectSentence, nextSentence, type Unit, verdictInWords, writeInterval } from './effect-words.js';
import { byChance, driftInWords,
  heardInWords, leftOutInWords, meaning, nextInWords, oddInWords, scatterOf, standing, summary, whyNot } from './model-effects-words.js'; // prettier-ignore
import { chartOf, type RunChart } from './run-chart.js';
import { VariableWords } from './variable-words.js';

export interface ModelEffectsTable {
  readonly model: string;
  readonly builds: readonly string[];
  readonly summary: string;
  /** Where builds and mechanics disagree: told first. */
  readonly disagreements: readonly string[];
  /** Readings so far from the others that they are asked about and kept out. */
  readonly asked: readonly string[];
  readonly variables: readonly VariableRow[];
  /** Builds that say nothing here, and why. */
  readonly leftOut: readonly string[];
  readonly responses: readonly ResponseTable[];
  /** How many effects are told by builds alone, and how many together with mechanics. */
  readonly told: { readonly effects: number; readonly builds: number; readonly together: number };
  /** What the ear said of each change, a sentence each. */
  readonly heard: readonly string[];
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

/** What was read of one thing in one state, and what the changes did to it. */
export interface ResponseTable {
  /** `resonance.air`. */
  readonly name: string;
  readonly conditions: string;
  /** Of the sizes. */
  readonly unit: string;
  readonly effects: readonly EffectRow[];
  /** What could not be told apart, why nothing was fitted, what drifts. */
  readonly notes: readonly string[];
  /** How far instruments built alike differ, and one instrument from itself. */
  readonly floor?: string;
  readonly chart: RunChart;
}

export interface EffectRow {
  /** `bridge.mass 22 g`: the step whose effect it is. */
  readonly what: string;
  /** Which of the variables, by index. */
  readonly variables: readonly number[];
  /** `+2.1 ± 0.8 Hz`; absent where nothing is computed, or these builds cannot tell it from others. */
  readonly computed?: string;
  readonly builds?: string;
  readonly together?: string;
  readonly verdict: Verdict;
  readonly verdictInWords: string;
  /** The three in one sentence, and what to make of them. */
  readonly sentence: string;
  /** What it would take to tell it from builds alone. */
  readonly next?: string;
  readonly beforeAndAfter: readonly string[];
  /** In the unit of the response, for drawing. */
  readonly sizes: { readonly computed?: Interval; readonly builds?: Interval; readonly together?: Interval };
}

/** Undefined when there is no such model. */
export function modelEffectsTable(workshop: Workshop, model: string): ModelEffectsTable | undefined {
  const found = modelEffects(workshop, model);
  return found && writtenOut(workshop, found);
}

export function writtenOut(workshop: Workshop, found: ModelEffects): ModelEffectsTable {
  const { design, responses } = found;
  const words = new VariableWords(design, workshop);
  const tables = responses.map((each) => responseTable(each, found, words, workshop));
  const effects = responses.flatMap(({ outcome }) => fittedIn(outcome)?.effects ?? []);
  const isFitted = effects.length > 0;
  return {
    model: design.model,
    builds: design.builds.map(({ label }) => label),
    summary: summary(found, workshop),
    disagreements: tables.flatMap(({ name, effects: rows }) =>
      rows.filter(({ verdict }) => verdict === 'disagrees').map(({ sentence }) => `${name}: ${sentence}`),
    ),
    asked: found.kinds.flatMap((kind) => oddInWords(kind, design, workshop)),
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
    responses: isFitted ? tables : [],
    told: {
      effects: effects.length,
      builds: effects.filter(({ verdict }) => verdict === 'builds' || verdict === 'disagrees').length,
      together: effects.filter(({ together }) => together && Math.abs(together.amount) > together.band).length,
    },
    heard: found.heard.map((one) => heardInWords(one, words, workshop)),
    closing: [
      ...(isFitted ? [meaning(workshop), ...byChance(effects, workshop)] : []),
      ...nextInWords(found, words, workshop),
    ],
  };
}

function responseTable(
  { response, rows, outcome }: ResponseEffects,
  found: ModelEffects,
  words: VariableWords,
  workshop: Workshop,
): ResponseTable {
  const { path, reading, occasions } = response;
  const { say, and } = workshop.wording;
  const all = found.design.builds.length;
  const readIn = rows.length === all ? say`read in all ${all} builds` : say`read in ${rows.length} of ${all} builds`;
  const when = occasions.length > 1 ? and(occasions.map(({ name }) => name)) : '';
  const symbol = unitFor(path, 'build')?.symbol ?? '';
  const head = {
    name: path,
    conditions: [conditionsInWords(reading, workshop.wording), when, readIn].filter((part) => part !== '').join('; '),
    unit: symbol,
    chart: chartOf(response, fittedIn(outcome), found.design, words),
  };
  if (outcome.kind !== 'fitted') return { ...head, effects: [], notes: [whyNot(outcome, rows.length, workshop)] };
  const unit = { dimension: workshop.catalogue.property(path, 'build')!.dimension!, symbol };
  return {
    ...head,
    effects: outcome.effects.map((effect) => effectRow(effect, outcome, unit, { found, words, workshop })),
    notes: [
      ...driftInWords(outcome, unit, workshop),
      ...outcome.tangled.map(
        (knot) =>
          say`Always changed together in these builds, so that none has a number of its own: ${and(knot.map((each) => words.short([each])))}.`,
      ),
    ],
    floor: scatterOf(outcome, workshop),
  };
}

interface Telling {
  readonly found: ModelEffects;
  readonly words: VariableWords;
  readonly workshop: Workshop;
}

function effectRow(
  effect: ToldEffect,
  outcome: FittedResponse,
  unit: Unit,
  { found, words, workshop: { wording } }: Telling,
): EffectRow {
  const what = words.group(effect);
  const factor = unitNamed(unit.symbol)?.factor ?? 1;
  const size = (interval: Interval) => ({ amount: interval.amount / factor, band: interval.band / factor });
  const next = nextSentence(found.nextFor(outcome, effect), wording);
  const columns = (['computed', 'builds', 'together'] as const).flatMap((column) => {
    const interval = effect[column];
    return interval ? [[column, interval] as const] : [];
  });
  return {
    what,
    variables: effect.variables.map((each) => found.design.variables.indexOf(each)),
    ...Object.fromEntries(columns.map(([column, interval]) => [column, writeInterval(interval, unit)])),
    ...(outcome.pending && !effect.computed ? { computed: wording.text('being worked out') } : {}),
    ...(outcome.pending ? { together: wording.text('being worked out') } : {}),
    verdict: effect.verdict,
    verdictInWords: verdictInWords(effect, wording),
    sentence: effectSentence(what, effect, unit, wording),
    ...(next === undefined ? {} : { next }),
    beforeAndAfter: effect.beforeAndAfter,
    sizes: Object.fromEntries(columns.map(([column, interval]) => [column, size(interval)])),
  };
}
