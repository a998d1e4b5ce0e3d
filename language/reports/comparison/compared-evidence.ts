/** What the builds say of a difference: each reading against those of the other side, and against the scatter of replicates. */
import type { Comparison, Side } from '../../recipes/instrument/comparison.js';
import type { Compared, Evidence, NotComparable, Scatter } from '../../recipes/builds/evidence.js';
import { evidenceBetween } from '../../recipes/builds/evidence-between.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import type { BuildRecord, Reading } from '../../recipes/builds/builds.js';
import { sameValue } from '../../recipes/instrument/values.js';
import { reasonsInWords } from '../../checks/builds/reading-rules.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Workshop } from '../../recipes/workshop.js';
import { shareOf } from '../figures.js';
import { moreOrLess } from './more-or-less.js';
import { withinPart } from '../part-of.js';
import { conditionsInWords } from '../reading-words.js';
import { writeInShopUnit } from '../shop-values.js';

export interface ComparedEvidence {
  /** Names of the builds compared, and of those they are held against. */
  readonly builds: readonly string[];
  readonly against: readonly string[];
  /** What to make of it in one sentence. */
  readonly summary: string;
  readonly rows: readonly EvidenceRow[];
  /** What else differs between the builds although no recipe says so, a sentence each. */
  readonly undeclared: readonly string[];
}

export interface EvidenceRow {
  readonly build: string;
  readonly path: string;
  readonly name: string;
  readonly occasion: string;
  readonly conditions: string;
  readonly reading: string;
  /** Mean of the others, read under the same conditions. */
  readonly mean?: string;
  readonly difference?: string;
  readonly percent?: string;
  readonly word?: string;
  /** Difference and noise floor as shares of the mean, for drawing. */
  readonly shares?: { readonly difference: number; readonly floor: number };
  /** `±4.1 Hz`: builds alike differ as much, 19 times in 20. */
  readonly floor?: string;
  /** Scatter of builds alike that the noise floor comes from: `1.1 %`, and whose it is. */
  readonly scatter?: string;
  readonly scatterFrom?: string;
  /** What the two compute to differ by. */
  readonly predicted?: string;
  readonly verdict: 'distinct' | 'alike' | 'not-comparable';
  readonly verdictInWords: string;
}

export function comparedEvidence(workshop: Workshop, comparison: Comparison): ComparedEvidence | undefined {
  const { a, b, derived } = comparison;
  const predicted = new Map(
    derived.flatMap(({ path, difference, quantity }) =>
      difference === undefined ? [] : [[path, writeSigned(difference, quantity.dimension, quantity.unit)]],
    ),
  );
  return evidenceTable(workshop, a, b, predicted);
}

/** The builds of `b` against those of `a`; `predicted`: what they compute to differ by, by path. */
export function evidenceTable(
  workshop: Workshop,
  a: Side,
  b: Side,
  predicted: ReadonlyMap<string, string>,
): ComparedEvidence | undefined {
  const between = evidenceBetween(workshop, a, b);
  if (!between || between.builds.length === 0) return undefined;
  const rows = between.found.flatMap(({ build, evidence }) =>
    evidence.map((each) => evidenceRow(workshop, build.definition.name.text, each, predicted)),
  );
  return {
    builds: between.builds.map(({ definition }) => definition.name.text),
    against: between.reference.map(({ definition }) => definition.name.text),
    summary: between.alike ? alikeInWords(workshop) : summaryOf(workshop, rows),
    rows,
    undeclared: between.builds.flatMap((build) => undeclaredIn(workshop, build, between.reference)),
  };
}

/** Words that a build has otherwise than its recipe, and otherwise than every build it is held against: another billet. */
function undeclaredIn(
  { wording: { say } }: Workshop,
  build: BuildRecord,
  reference: readonly BuildRecord[],
): readonly string[] {
  return build.departures.flatMap(({ path, made }) => {
    const theirs = reference.flatMap((other) => {
      const there = other.values.get(path);
      return there ? [{ name: other.definition.name.text, there }] : [];
    });
    const last = theirs.at(-1);
    if (!last || made.value.kind === 'quantity') return [];
    if (theirs.some(({ there }) => sameValue(there.value, made.value))) return [];
    const [here, there] = [writeInShopUnit(path, made.value), writeInShopUnit(path, last.there.value)];
    return [
      say`${path} is ${here} in ${build.definition.name.text} and ${there} in ${last.name}: no recipe declares it.`,
    ];
  });
}

function evidenceRow(
  workshop: Workshop,
  build: string,
  { response, reading, read, outcome }: Evidence,
  predicted: ReadonlyMap<string, string>,
): EvidenceRow {
  const { wording } = workshop;
  const expected = predicted.get(response);
  return {
    build,
    path: response,
    name: withinPart(response),
    occasion: reading.name,
    conditions: conditionsInWords(reading, wording),
    reading: writeInShopUnit(response, read.value, 'build'),
    ...(outcome.kind === 'compared'
      ? comparedPart(workshop, response, read, outcome)
      : notComparablePart(workshop, reading, outcome)),
    ...(expected === undefined ? {} : { predicted: expected }),
  };
}

type Outcome = Omit<EvidenceRow, 'build' | 'path' | 'name' | 'occasion' | 'conditions' | 'reading' | 'predicted'>;

function comparedPart(workshop: Workshop, response: string, read: Held, outcome: Compared): Outcome {
  const { text } = workshop.wording;
  const { mean, difference, band, scatter, distinguishable } = outcome;
  if (read.value.kind !== 'quantity') return { verdict: 'not-comparable', verdictInWords: '' };
  const { dimension, unit } = read.value.quantity;
  const floor = `±${writeQuantity(band, dimension, { unit, digits: 2 })}`;
  return {
    mean: writeQuantity(mean, dimension, { unit }),
    difference: writeSigned(difference, dimension, unit?.symbol ?? ''),
    percent: shareOf(difference / mean, workshop.wording),
    ...(difference === 0 ? {} : { word: moreOrLess(response, dimension, difference, workshop.wording) }),
    shares: { difference: difference / mean, floor: band / mean },
    floor,
    scatter: `${(scatter.share * 100).toPrecision(2)} %`,
    scatterFrom: scatterInWords(workshop, scatter),
    verdict: distinguishable ? 'distinct' : 'alike',
    verdictInWords: distinguishable ? text('stands out') : text('not distinguishable'),
  };
}

function notComparablePart({ wording }: Workshop, here: Reading, outcome: NotComparable): Outcome {
  return {
    verdict: 'not-comparable',
    verdictInWords: wording.say`not compared with ${outcome.against}: ${reasonsInWords(outcome, here, wording)}`,
  };
}

/** Whose scatter the noise floor comes from. */
export function scatterInWords(
  { wording: { say, text, and } }: Workshop,
  { basis, builds }: Pick<Scatter, 'basis' | 'builds'>,
): string {
  if (basis === 'replicates') return say`the scatter of ${and(builds)}, built alike`;
  return basis === 'shop'
    ? text('the shop’s own figure for scatter, as there are no replicates yet')
    : text('2 % in frequency, common practice, as there are no replicates yet');
}

function alikeInWords({ wording }: Workshop): string {
  return wording.text(
    'Nothing counted lies between the two: their builds are replicates, and what differs between them is the noise floor.',
  );
}

function summaryOf({ wording: { say, text, and } }: Workshop, rows: readonly EvidenceRow[]): string {
  const compared = rows.filter(({ verdict }) => verdict !== 'not-comparable');
  const distinct = [...new Set(compared.filter(({ verdict }) => verdict === 'distinct').map(({ path }) => path))];
  if (compared.length === 0)
    return text('No two readings were taken under the same conditions, so nothing is compared.');
  if (distinct.length === 0) return text('Not distinguishable: builds alike differ as much in every reading compared.');
  return say`More than builds alike differ by: ${and(distinct)}.`;
}

export function writeSigned(si: number, dimension: Parameters<typeof writeQuantity>[1], unit: string): string {
  return writeQuantity(si, dimension, { ...(unit === '' ? {} : { unit }), difference: true }).replace(/^-/, '−');
}
