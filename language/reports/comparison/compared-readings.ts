/** What was read off the builds of either side, beside what each of them computes to as it was made. */
import type { BuildRecord, Reading } from '../../recipes/builds/builds.js';
import type { Comparison } from '../../recipes/instrument/comparison.js';
import type { Derived, Evaluation, Known } from '../../recipes/evaluation/evaluation.js';
import { buildsOf } from '../../recipes/builds/evidence-between.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { standardUncertainty } from '../../recipes/instrument/tolerances.js';
import type { Workshop } from '../../recipes/workshop.js';
import { shown, shownDifference } from '../../checks/phrases.js';
import type { Wording } from '../../wording/wording.js';
import { shareOf } from '../figures.js';
import { moreOrLess } from './more-or-less.js';
import { partTitle, partOf, withinPart } from '../part-of.js';
import { conditionsInWords } from '../reading-words.js';
import { writeInShopUnit } from '../shop-values.js';

export interface ReadingRow {
  readonly side: 'a' | 'b';
  readonly build: string;
  /** Canonical path of what was read. */
  readonly path: string;
  readonly name: string;
  readonly part: string;
  readonly title: string;
  /** `day-30`; empty for what the build states outside any occasion. */
  readonly occasion: string;
  readonly conditions: string;
  readonly reading: string;
  /** With its uncertainty; absent where nothing of the kind is computed, or not yet. */
  readonly prediction?: string;
  /** Reading less prediction. */
  readonly difference?: string;
  readonly percent?: string;
  /** `lower`: the reading against the prediction. */
  readonly word?: string;
  readonly verdict: 'within' | 'outside' | 'not-predicted' | 'pending';
  readonly verdictInWords: string;
}

export function comparedReadings(workshop: Workshop, comparison: Comparison): readonly ReadingRow[] {
  return (['a', 'b'] as const).flatMap((side) =>
    buildsOf(workshop, comparison[side])
      // A recipe's replicates belong to other recipes, where each has its own prediction.
      .filter((build) => comparison[side].kind === 'build' || build.recipe?.name === comparison[side].name)
      .flatMap((build) => rowsOf(workshop, build, side)),
  );
}

function rowsOf(workshop: Workshop, build: BuildRecord, side: 'a' | 'b'): readonly ReadingRow[] {
  const evaluation = workshop.evaluateInFull(build.values);
  return build.readings.flatMap((reading) =>
    [...reading.values].map(([path, held]): ReadingRow => {
      const part = partOf(path);
      return {
        side,
        build: build.definition.name.text,
        path,
        name: withinPart(path),
        part,
        title: partTitle(part, workshop.wording),
        occasion: reading.name,
        conditions: conditionsInWords(reading, workshop.wording),
        reading: writeInShopUnit(path, held.value, 'build'),
        ...besidePrediction(workshop, evaluation, reading, path, held),
      };
    }),
  );
}

type Beside = Pick<ReadingRow, 'prediction' | 'difference' | 'percent' | 'word' | 'verdict' | 'verdictInWords'>;

function besidePrediction(
  workshop: Workshop,
  evaluation: Evaluation,
  reading: Reading,
  path: string,
  held: Held,
): Beside {
  const { wording } = workshop;
  const { say, text } = wording;
  const computed = evaluation.derived(path);
  if (computed?.known === false && computed.pending) {
    return { verdict: 'pending', verdictInWords: text('being worked out') };
  }
  if (!isOfOneKind(computed, held) || held.value.kind !== 'quantity') {
    return { verdict: 'not-predicted', verdictInWords: whyNot(wording, computed) };
  }
  if (path.startsWith('resonance.') && !isStrung(reading)) {
    return { verdict: 'not-predicted', verdictInWords: text('computed for the strung instrument only') };
  }
  const { quantity } = computed;
  const spread = evaluation.uncertainty(path);
  const own = standardUncertainty(path, held.value, workshop.settings().tolerances);
  const band = Math.hypot(2 * Math.hypot(own, spread), (quantity.scatter ?? 0) * Math.abs(computed.si));
  const by = held.value.quantity.si - computed.si;
  const within = Math.abs(by) <= band;
  const limit = shown(band, quantity);
  return {
    prediction: shown(computed.si, quantity, spread),
    difference: shownDifference(by, quantity),
    ...(computed.si === 0 ? {} : { percent: shareOf(by / Math.abs(computed.si), wording) }),
    ...(by === 0 ? {} : { word: moreOrLess(path, quantity.dimension, by, wording) }),
    verdict: within ? 'within' : 'outside',
    verdictInWords: within ? say`as computed, within ±${limit}` : say`not as computed: outside ±${limit}`,
  };
}

function whyNot({ say, text, some, told }: Wording, computed: Derived | undefined): string {
  if (!computed || computed.known) return text('nothing of the kind is computed');
  if (computed.missing.length > 0) return say`cannot be computed: needs ${some(computed.missing, 3)}`;
  return computed.trouble === undefined
    ? text('cannot be computed')
    : say`cannot be computed: ${told(computed.trouble)}`;
}

function isOfOneKind(computed: Derived | undefined, { value }: Held): computed is Known {
  return (
    computed?.known === true &&
    value.kind === 'quantity' &&
    value.quantity.dimension.name === computed.quantity.dimension.name
  );
}

/** Nothing said: a reading of the finished instrument. */
function isStrung({ conditions }: Reading): boolean {
  const stage = conditions.get('stage')?.value;
  return stage?.kind !== 'name' || stage.name === 'strung';
}
