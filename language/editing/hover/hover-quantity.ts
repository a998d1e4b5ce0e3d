/** Hover on a computed quantity: value and uncertainty, formula with the numbers that went in, what is missing. */
import { cautionsOnQuantity } from '../../catalogue/cautions.js';
import { shown } from '../../checks/phrases.js';
import { writeBoth } from '../../quantities/write.js';
import type { Derived, DerivedQuantity, Evaluation, Known } from '../../recipes/evaluation/evaluation.js';
import type { Desk } from '../../checks/desk.js';
import { figureAt, inPlainWords, shareOf } from '../../reports/figures.js';
import { cautionLines } from './hover-cautions.js';
import { bullets, code, paragraphs, plain, table } from '../markdown.js';
import type { Subject } from '../../reports/subject.js';
import { sentences, type Wording } from '../../wording/wording.js';
import { cited } from '../../wording/cited.js';

export function quantityHover(desk: Desk, subject: Subject, path: string, quantity: DerivedQuantity): string {
  const { evaluation } = subject;
  const { wording } = desk.workshop;
  const { say, text } = wording;
  const derived = evaluation?.derived(path);
  if (!evaluation || !derived) {
    return paragraphs(`**${plain(path)}**`, text(quantity.sentence), formulaOf(quantity, wording));
  }
  if (!derived.known) {
    const state = derived.pending ? text('being worked out') : text('not known');
    return paragraphs(
      `**${plain(path)}**: ${state}`,
      text(quantity.sentence),
      whyUnknown(derived, wording),
      formulaOf(quantity, wording),
    );
  }
  return paragraphs(
    `**${plain(path)}** = ${valueOf(evaluation, path, derived, wording)}`,
    text(quantity.sentence),
    inputsTable(desk, subject, evaluation, derived),
    bullets(
      [
        beforeLine(subject, path, derived, wording),
        doubtLine(evaluation, path, wording),
        ...derived.assumptions.map((assumption) => assumptionLine(assumption, wording)),
      ].filter((line) => line !== undefined),
    ),
    derived.given ? say`Stated or weighed, not computed.` : formulaOf(quantity, wording),
    cautionLines(cautionsOnQuantity(path), wording),
  );
}

/** What the solver says of a plate is a sentence already. */
function assumptionLine(assumption: string, { say, told }: Wording): string {
  const words = plain(told(assumption));
  return assumption.endsWith('.') ? words : say`Assumed: ${words}.`;
}

function valueOf(evaluation: Evaluation, path: string, { si, quantity }: Known, { text }: Wording): string {
  const uncertainty = evaluation.uncertainty(path);
  const first = shown(si, quantity, uncertainty);
  const both = writeBoth(si, quantity.dimension, quantity.unit === '' ? undefined : quantity.unit);
  const other = /\((.*)\)$/.exec(both)?.[1];
  return `${first}${other === undefined ? '' : ` (${other})`}${uncertainty > 0 ? text('; ± one standard uncertainty') : ''}`;
}

function formulaOf({ formula, source }: DerivedQuantity, wording: Wording): string {
  return `${code(wording.text(formula))} (${plain(cited(source, wording))})`;
}

function inputsTable(desk: Desk, subject: Subject, evaluation: Evaluation, derived: Known): string | undefined {
  if (derived.inputs.length === 0) return undefined;
  const { kind } = subject.definition;
  const rows = derived.inputs.map(({ path, si }) => {
    const figure = figureAt(path, si, evaluation, desk.workshop.catalogue, kind);
    return [plain(path), figure.text, inPlainWords(figure.basis, desk.workshop.wording)];
  });
  const { text } = desk.workshop.wording;
  return table([text('with'), text('value'), text('from')], rows);
}

/** Which value the uncertainty mostly comes from, so that a maker knows what to measure better. */
function doubtLine(evaluation: Evaluation, path: string, { say, text }: Wording): string | undefined {
  const parts = [...evaluation.gradient(path)].map(([id, slope]) => ({
    id,
    part: (slope * evaluation.sigma(id)) ** 2,
  }));
  const whole = parts.reduce((sum, { part }) => sum + part, 0);
  const largest = parts.sort((a, b) => b.part - a.part)[0];
  if (!largest || whole === 0 || parts.length < 2) return undefined;
  const { model } = evaluation.leafOf(largest.id) ?? {};
  const from = model ? text(model.name) : plain(largest.id);
  const told = say`Most of its uncertainty (${((largest.part / whole) * 100).toFixed(0)} %) comes from ${from}.`;
  return model && model.common > model.own
    ? sentences(told, say`It is the same in all that is computed alike, and cancels when two are compared.`)
    : told;
}

function beforeLine({ before }: Subject, path: string, now: Known, wording: Wording): string | undefined {
  const then = before?.evaluation.derived(path);
  if (!before || !then?.known) return undefined;
  const share = then.si === 0 ? 0 : now.si / then.si - 1;
  const difference = Math.abs(share) < 1e-9 ? wording.text('the same') : shareOf(share, wording);
  return wording.say`In ${plain(before.name)}: ${shown(then.si, then.quantity)} (${difference}).`;
}

export function whyUnknown(derived: Derived & { known: false }, { say, and, told }: Wording): string {
  if (derived.pending) return say`It takes the solver a moment; point here again.`;
  if (derived.missing.length > 0) return say`It would be known with ${and(derived.missing.map(code))}.`;
  return derived.trouble === undefined ? '' : plain(say`It cannot be computed: ${told(derived.trouble)}.`);
}
