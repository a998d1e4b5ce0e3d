/** What a build's readings may say against the builds it descends from, and what differs that nobody declared. */
import { writeQuantity } from '../../quantities/write.js';
import type { BuildRecord, Reading } from '../../recipes/builds/builds.js';
import {
  type Compared,
  daysStrung,
  type Disagreement,
  type Evidence,
  type NotComparable,
} from '../../recipes/builds/evidence.js';
import type { Definition } from '../../facts/facts.js';
import type { Held } from '../../recipes/instrument/instrument.js';
import { sameValue } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { recordOf } from './as-built.js';
import { isInForce } from '../in-force.js';
import { placeOf } from '../mending.js';
import { writeValue } from '../phrases.js';
import type { Rule } from '../rule.js';
import { english, sentences, type Wording } from '../../wording/wording.js';

const LINE = `model tarn { scale: 645 mm }
recipe tarn-1 for tarn { top.thickness: 2.85 mm }
recipe tarn-2 from tarn-1 { because "Lighter."  change top.thickness: 2.85 mm -> 2.65 mm }
`;

export const NOT_DISTINGUISHABLE: Rule = {
  code: 'not-distinguishable',
  severity: 'hint',
  title: 'A difference that builds alike would show too',
  reason:
    'Two guitars built to one recipe do not sound at the same hertz. A difference smaller than that scatter is no effect of the change, however much one would like it to be. Until there are replicates, a stated share stands in for the scatter.',
  bad: `${LINE}build no-31 of tarn-1 { reading day-1 { resonance.top: 183 Hz } }
build no-32 of tarn-1 { reading day-1 { resonance.top: 181 Hz } }
build no-33 of tarn-1 { reading day-1 { resonance.top: 181 Hz } }
build no-34 of tarn-2 { reading day-1 { resonance.top: 181 Hz } }`,
  good: `${LINE}build no-31 of tarn-1 { reading day-1 { resonance.top: 183 Hz } }
build no-32 of tarn-1 { reading day-1 { resonance.top: 181 Hz } }
build no-33 of tarn-1 { reading day-1 { resonance.top: 181 Hz } }
build no-34 of tarn-2 { reading day-1 { resonance.top: 168 Hz } }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const compared = new Map<string, { readonly read: Held; readonly outcome: Compared }>();
    for (const { response, read, outcome } of evidenceFor(definition, workshop)) {
      // Of several occasions the last counts, when the guitar has settled. Masses and sags are means, not results.
      if (outcome.kind === 'compared' && RESULT.test(response)) compared.set(response, { read, outcome });
    }
    const alike = [...compared].filter(([, { outcome }]) => !outcome.distinguishable);
    const [first] = alike;
    if (!first) return;
    const list = alike.map(([response, { read, outcome }]) => {
      const share = `${(outcome.scatter.share * 100).toPrecision(2)} %`;
      return say`${response} ${write(outcome.difference, read, true)} (±${write(outcome.band, read)}, from a scatter of ${share})`;
    });
    const [, { read, outcome }] = first;
    report(
      read.from.span,
      sentences(
        say`Not distinguishable from ${namesOf(outcome, workshop.wording)}: ${workshop.wording.and(list)}.`,
        basisOf(outcome, workshop.wording),
      ),
    );
  },
};

export const READINGS_NOT_COMPARABLE: Rule = {
  code: 'readings-not-comparable',
  severity: 'information',
  title: 'A reading with nothing like it to compare',
  reason:
    'A guitar loses some hertz in its first month, and more with its strings off or in dry air. Readings taken under different conditions differ for that reason alone, so they are not compared.',
  bad: `${LINE}build no-31 of tarn-1 { reading day-30 { resonance.top: 178 Hz } }
build no-34 of tarn-2 { reading day-1 { resonance.top: 181 Hz } }`,
  good: `${LINE}build no-31 of tarn-1 { reading day-1 { resonance.top: 183 Hz } }
build no-34 of tarn-2 { reading day-1 { resonance.top: 181 Hz } }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const evidence = evidenceFor(definition, workshop);
    const compared = new Set(
      evidence.filter(({ outcome }) => outcome.kind === 'compared').map(({ response }) => response),
    );
    const said = new Set<string>();
    for (const { response, read, reading, outcome } of evidence) {
      if (outcome.kind !== 'not-comparable' || compared.has(response) || said.has(response)) continue;
      said.add(response);
      report(
        read.from.span,
        say`${response} is not compared with ${outcome.against}: ${reasonsInWords(outcome, reading, workshop.wording)}. Read it under the same conditions.`,
      );
    }
  },
};

export const UNDECLARED_CHANGE: Rule = {
  code: 'undeclared-change',
  severity: 'information',
  title: 'Something else differs between two builds',
  reason:
    'A new billet for the braces, another glue, another hygrometer: nobody meant to change them, and any of them may have made the difference. Whatever is recorded and differs is listed, so that it is not forgotten.',
  bad: `${LINE}build no-31 of tarn-1 { billet.braces: "B-4"  resonance.top: 183 Hz }
build no-34 of tarn-2 { billet.braces: "B-5"  resonance.top: 175 Hz }`,
  good: `${LINE}build no-31 of tarn-1 { billet.braces: "B-4"  resonance.top: 183 Hz }
build no-34 of tarn-2 { billet.braces: "B-4"  resonance.top: 175 Hz }`,
  of: ['build'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    const build = recordOf(definition, workshop);
    const before = build && referenceOf(build, workshop);
    if (!build || !before || before.length === 0) return;
    for (const [path, here] of recordsOf(build, workshop)) {
      const theirs = before.flatMap((other) => {
        const there = recordsOf(other, workshop).get(path);
        return there ? [{ name: other.definition.name.text, there }] : [];
      });
      const last = theirs[theirs.length - 1];
      if (!last || theirs.some(({ there }) => sameValue(there.value, here.value))) continue;
      const { name, there } = last;
      report(
        here.from.span,
        say`${path} is ${writeValue(here.value)} here and ${writeValue(there.value)} in ${name}: a change nobody declared.`,
        {
          related: [{ place: placeOf(there.from), message: say`${writeValue(there.value)} in ${name}` }],
        },
      );
    }
  },
};

function evidenceFor(definition: Definition, workshop: Workshop): readonly Evidence[] {
  return isInForce(definition, workshop) ? workshop.evidence(definition.name.text) : [];
}

/** The builds this one is held against: of the last built ancestor, or else the other builds of its own recipe. */
function referenceOf(build: BuildRecord, workshop: Workshop): readonly BuildRecord[] {
  const recipe = build.recipe?.name;
  if (recipe === undefined) return [];
  const ancestor = workshop.lastBuiltAncestor(recipe);
  const all = ancestor === undefined ? workshop.replicates(recipe) : workshop.replicates(ancestor);
  const self = all.indexOf(build);
  // Of replicates only those before it, so that a new billet is listed where it came in, and once.
  return (self < 0 ? all : all.slice(0, self)).filter((other) => other !== build);
}

/** With what and by whom the readings were taken: as apt to make a difference as a glue. */
const OF_READINGS = ['hygrometer', 'reader'] as const;

function isOfReadings(path: string): boolean {
  return OF_READINGS.some((each) => each === path);
}

/** What is recorded of stock and tools, and the hygrometer and the reader of the readings. */
function recordsOf(build: BuildRecord, workshop: Workshop): ReadonlyMap<string, Held> {
  const records = new Map<string, Held>();
  for (const [path, held] of workshop.stated(build.definition)) {
    if (path.startsWith('billet.') || path.startsWith('glue.') || isOfReadings(path)) records.set(path, held);
  }
  for (const { conditions } of build.readings) {
    for (const path of OF_READINGS) {
      const held = conditions.get(path);
      if (held && !records.has(path)) records.set(path, held);
    }
  }
  return records;
}

/** What a maker hears, or feels under the hand. */
const RESULT = /^(?:resonance|resonance-gap|bridge)\./;

function namesOf({ against }: Compared, { say, some }: Wording): string {
  return against.length === 1 ? some(against) : say`the mean of ${some(against, 3)}`;
}

function basisOf({ scatter, against }: Compared, { say, some }: Wording): string {
  if (scatter.basis === 'shop')
    return say`Builds alike differ as much; no replicates yet, so the shop’s own figure is taken for their scatter.`;
  if (scatter.basis === 'common practice')
    return say`Builds alike differ as much; no replicates yet, so 2 % from common practice is taken for their scatter.`;
  const same = scatter.builds.length === against.length && scatter.builds.every((name) => against.includes(name));
  return same
    ? say`Builds alike differ as much.`
    : say`Builds alike differ as much (scatter of ${some(scatter.builds, 4)}).`;
}

/** Why two readings are not compared: what differs in how they were taken. */
export function reasonsInWords(
  { reasons: all, reading: there }: NotComparable,
  here: Reading,
  wording: Wording,
): string {
  return wording.and(
    all.map((one) => (one.condition === 'days-strung' ? ages(here, there, wording) : reason(one, wording))),
  );
}

function reason({ condition, here, there }: Disagreement, { say, text }: Wording): string {
  const word = text(CONDITION_WORDS[condition] ?? condition);
  if (here && there) return say`${word} is ${writeValue(here.value)} here and ${writeValue(there.value)} there`;
  return here ? say`${word} is not written down there` : say`${word} is not written down here`;
}

function ages(here: Reading, there: Reading, { say }: Wording): string {
  const [a = '', b = ''] = [daysStrung(here), daysStrung(there)].map((days) =>
    days === undefined ? say`on a day not written down` : say`on day ${Math.round(days)} after stringing`,
  );
  return say`it was read ${a} here and ${b} there`;
}

const CONDITION_WORDS: Readonly<Record<string, string>> = {
  stage: english('the stage'),
  'strings-damped': english('whether the strings were damped'),
  humidity: english('the humidity'),
  temperature: english('the temperature'),
  moisture: english('the moisture'),
  rig: english('the rig'),
  method: english('the method'),
  held: english('how it was held'),
};

function write(si: number, like: Held, difference = false): string {
  if (like.value.kind !== 'quantity') return '';
  const { dimension, unit } = like.value.quantity;
  return writeQuantity(si, dimension, { unit, difference }).replace(/^-/, '−');
}
