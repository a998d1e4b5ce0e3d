/** Expectations: a recipe's own tests, missed or impossible to hold. */
import { DIMENSION, sameDimension } from '../../quantities/dimension.js';
import { didYouMean } from '../../quantities/suggest.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition } from '../../facts/facts.js';
import type { Expectation } from '../../recipes/instrument/expectations.js';
import type { Workshop } from '../../recipes/workshop.js';
import { isInForce } from '../in-force.js';
import { replace } from '../mending.js';
import { whatIsMissing, whyUnknown } from '../values/missing.js';
import { shown, writeValue, suggestion } from '../phrases.js';
import type { Rule } from '../rule.js';
import { sentences } from '../../wording/wording.js';

const RECIPE = `wood spruce-12 is sitka-spruce { density: 421 kg/m³  modulus.along: 10.8 GPa  modulus.across: 0.82 GPa  modulus.twist: 0.7 GPa }
model tarn { scale: 645 mm }
`;

export const EXPECTATION_MISSED: Rule = {
  code: 'expectation-missed',
  severity: 'warning',
  title: 'A recipe that does not come out as expected',
  reason:
    'An expectation is the recipe’s own test. When it is missed, either the recipe or the expectation needs another look before wood is cut.',
  bad: `${RECIPE}recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm }  expect top.stiffness.along: below 15 N·m }`,
  good: `${RECIPE}recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm }  expect top.stiffness.along: below 30 N·m }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const expectation of of(definition, workshop, 'missed')) {
      const { path, low, high } = expectation;
      const si = valueOf(expectation, definition, workshop);
      if (si === undefined) continue;
      const { derived } = expectation;
      const dimension = workshop.catalogue.property(path)?.dimension ?? DIMENSION.number;
      const write = (value: number) =>
        derived?.quantity ? shown(value, derived.quantity) : writeQuantity(value, dimension);

      const spread = derived?.known ? (workshop.evaluation(definition.name.text)?.uncertainty(path) ?? 0) : 0;
      const value = derived?.known ? shown(si, derived.quantity, spread) : write(si);
      const expected = writeValue(expectation.statement.value);
      const above = high !== undefined && si > high ? si - high : undefined;
      const by = above ?? (low ?? si) - si;
      const missed =
        above === undefined
          ? say`${path} comes to ${value}: ${write(by)} below what is expected (${expected}).`
          : say`${path} comes to ${value}: ${write(by)} above what is expected (${expected}).`;
      const open = by <= spread ? say`That is within the ±: it may still come out as expected.` : '';
      report(expectation.statement.span, sentences(missed, open));
    }
  },
};

export const EXPECTATION_UNKNOWN: Rule = {
  code: 'expectation-unknown',
  severity: 'information',
  title: 'An expectation that cannot be tested yet',
  reason: 'Something the computation needs is not known. It is named, so that it can be measured.',
  bad: `${RECIPE}recipe tarn-1 for tarn { top.thickness: 2.85 mm  expect top.stiffness.along: below 30 N·m }`,
  good: `${RECIPE}recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm }  expect top.stiffness.along: below 30 N·m }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { statement, path, derived } of of(definition, workshop, 'unknown')) {
      if (!derived || derived.known || derived.pending) continue;
      const missing = whatIsMissing(derived.missing, workshop.evaluation(definition.name.text), workshop);
      const why = whyUnknown(missing, derived.trouble, workshop.wording);
      report(statement.span, say`${path} cannot be computed: ${why}.`);
    }
  },
};

export const EXPECTATION_NOT_A_QUANTITY: Rule = {
  code: 'expectation-not-a-quantity',
  severity: 'error',
  title: 'An expectation of something that has no number',
  reason: 'Only what is computed or given as a number can be tested.',
  bad: `${RECIPE}recipe tarn-1 for tarn { expect top.loudness: below 30 N·m }`,
  good: `${RECIPE}recipe tarn-1 for tarn { top { wood: spruce-12  thickness: 2.85 mm }  expect top.stiffness.along: below 30 N·m }`,
  of: ['recipe'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { statement, path } of of(definition, workshop, 'not-a-quantity')) {
      if (workshop.catalogue.property(path, 'recipe')) {
        report(statement.quantity.span, say`This recipe has no ${path} to test.`, { severity: 'information' });
        continue;
      }
      const known = workshop
        .derivations('recipe')
        .all.map((quantity) => quantity.path)
        .filter((one) => !one.includes('*'));
      const near = didYouMean(path, known);
      const hint = suggestion(near, workshop.wording) || say`Test something like top.mass or top.stiffness.along.`;
      report(statement.quantity.span, sentences(say`${path} is not a quantity that is computed.`, hint), {
        fixes: near.map((text, i) => ({
          title: say`Write ${text}`,
          edits: [replace(definition, statement.quantity.span, text)],
          preferred: i === 0,
        })),
      });
    }
    for (const { statement } of of(definition, workshop, 'not-a-bound')) {
      if (statement.value.kind === 'unreadable') continue;
      report(
        statement.value.span,
        say`An expectation is a number with its unit: \`below 190 g\`, \`170..185 Hz\`, \`above 2 deg\` or \`172 g ± 4 g\`.`,
      );
    }
  },
};

function of(definition: Definition, workshop: Workshop, outcome: Expectation['outcome']): readonly Expectation[] {
  if (!isInForce(definition, workshop)) return [];
  return workshop
    .expectations(definition.name.text)
    .filter((one) => one.outcome === outcome && hasItsUnit(one, workshop));
}

/** A bound in the wrong unit is no test at all; `missing-unit` and `wrong-dimension` speak up about it. */
function hasItsUnit({ statement, path, derived }: Expectation, workshop: Workshop): boolean {
  const wanted = derived?.quantity?.dimension ?? workshop.catalogue.property(path)?.dimension;
  const { value } = statement;
  const ends = value.kind === 'range' ? [value.low, value.high] : value.kind === 'quantity' ? [value] : [];
  return ends.every((end) => !end || !wanted || sameDimension(end.quantity.dimension, wanted));
}

function valueOf({ path, derived }: Expectation, definition: Definition, workshop: Workshop): number | undefined {
  return derived?.known ? derived.si : workshop.evaluation(definition.name.text)?.number(path);
}
