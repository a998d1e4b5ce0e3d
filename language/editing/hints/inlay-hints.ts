/**
 * Inlay hints: what a line comes to, shown behind it. Solved values of holds, what a change starts from where it does not
 * say so, what an expectation met, inches in the shop's own unit.
 */
import { shown, writeValue } from '../../checks/phrases.js';
import { shopUnit } from '../../quantities/shop-units.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Expectation } from '../../recipes/instrument/expectations.js';
import type {
  ChangeStatement,
  Definition,
  Position,
  Span,
  Statement,
  QuantityValue,
  Value,
} from '../../facts/facts.js';
import type { SolvedHold } from '../../recipes/instrument/hold.js';
import { uncertaintyOfHold } from '../../recipes/instrument/hold-doubt.js';
import type { Solved } from '../../recipes/workshop.js';
import { allStatements } from '../../recipes/instrument/values.js';
import { type Desk, isBefore, shifted } from '../../checks/desk.js';
import { propertyAt } from '../../reports/subject.js';
import { type Wording } from '../../wording/wording.js';

export interface InlayHint {
  readonly position: Position;
  readonly text: string;
  /** A sentence for whoever points at it. */
  readonly tooltip?: string;
}

export interface InlayOptions {
  /** The line being typed on: hints there would push the text about. */
  readonly except?: number;
}

export function inlayHints(desk: Desk, uri: string, range: Span, options: InlayOptions = {}): readonly InlayHint[] {
  const hints: InlayHint[] = [];
  for (const { definition, line } of desk.shelf.file(uri)?.definitions ?? []) {
    const whole = shifted(definition.span, line);
    if (isBefore(whole.end, range.start) || isBefore(range.end, whole.start)) continue;
    for (const { position, ...hint } of hintsOf(desk, definition)) {
      const here = { line: position.line + line, character: position.character };
      if (here.line === options.except || isBefore(here, range.start) || isBefore(range.end, here)) continue;
      hints.push({ position: here, ...hint });
    }
  }
  return hints;
}

function hintsOf(desk: Desk, definition: Definition): readonly InlayHint[] {
  const hints: InlayHint[] = [];
  const { wording } = desk.workshop;
  const name = definition.name.text;
  const recipe =
    definition.kind === 'recipe' && desk.shelf.find('recipe', name) === definition
      ? desk.workshop.instrument(name)
      : undefined;
  if (recipe) {
    hints.push(
      ...recipe.solvedHolds.flatMap((hold) => holdHint(hold, knownTo(desk, name, hold), wording)),
      ...changeHints(recipe, wording),
    );
    hints.push(...desk.workshop.expectations(name).flatMap((expectation) => expectationHint(expectation, wording)));
  }
  for (const statement of allStatements(definition.statements)) hints.push(...conversions(desk, definition, statement));
  return hints;
}

/** Standard uncertainty of what a hold solved, SI. */
function knownTo({ workshop }: Desk, recipe: string, hold: SolvedHold): number | undefined {
  const evaluation = workshop.evaluation(recipe);
  return evaluation && uncertaintyOfHold(hold, evaluation, workshop.startEvaluation(recipe));
}

function holdHint(
  { request, outcome }: SolvedHold,
  uncertainty: number | undefined,
  { say, text }: Wording,
): readonly InlayHint[] {
  if (outcome.kind === 'pending') {
    return [{ position: request.statement.span.end, text: text('being worked out') }];
  }
  if (outcome.kind !== 'solved') return [];
  const was = writeValue(outcome.before);
  const now = likeWritten(outcome.value, was);
  const spread = spreadOf(outcome.value, uncertainty);
  const others = outcome.along.map(({ value, before }) => likeWritten(value, writeValue(before)));
  // Both legs of an X at one height, or each at its own.
  const beside =
    others.length === 0 ? '' : others.every((other) => other === now) ? say` each` : ` · ${others.join(' · ')}`;
  return [
    {
      position: request.statement.span.end,
      text: now === was ? say`= ${now}${spread}, as it was` : say`= ${now}${spread + beside}, was ${was}`,
      tooltip: say`${request.by} that keeps ${request.quantity}; ± one standard uncertainty`,
    },
  ];
}

/** ` ± 0.03 mm`, with one digit that means something; nothing where it is not known or nothing to speak of. */
function spreadOf({ quantity: { dimension, unit } }: QuantityValue, uncertainty: number | undefined): string {
  if (uncertainty === undefined || uncertainty === 0) return '';
  const step = 10 ** Math.floor(Math.log10(uncertainty));
  return ` ± ${writeQuantity(Math.round(uncertainty / step) * step, dimension, { unit, digits: 1 })}`;
}

/** What a change starts from, where it leaves that out; what it comes to, where it only says the step. */
function changeHints(recipe: Solved, { say }: Wording): readonly InlayHint[] {
  return recipe.changes.flatMap(({ statement, before, after }) => {
    if (statement.kind !== 'change' || !before) return [];
    const was = writeValue(before.value);
    const position = statement.span.end;
    const tooltip = say`as ${before.from.definition.name.text} has it`;
    if (statement.by) {
      return after ? [{ position, text: say`= ${likeWritten(after.value, was)}, was ${was}`, tooltip }] : [];
    }
    return leavesOldOut(statement) ? [{ position, text: say`was ${was}`, tooltip }] : [];
  });
}

/** A computed value with at least the decimals of the one it stands beside. */
function likeWritten(value: Value, beside: string): string {
  const usual = writeValue(value);
  if (value.kind !== 'quantity' || value.written !== '') return usual;
  const [own, wanted] = [decimalsIn(usual), decimalsIn(beside)];
  const { si, dimension, unit } = value.quantity;
  return wanted > own ? writeQuantity(si, dimension, { unit, decimals: wanted }) : usual;
}

function decimalsIn(text: string): number {
  return /\.(\d+)/.exec(text)?.[1]?.length ?? 0;
}

function leavesOldOut(statement: ChangeStatement): boolean {
  return statement.old === undefined && statement.new !== undefined;
}

function expectationHint({ statement, outcome, derived }: Expectation, wording: Wording): readonly InlayHint[] {
  const { say, text } = wording;
  const position = statement.span.end;
  if (!derived || (outcome !== 'met' && outcome !== 'missed' && outcome !== 'unknown')) return [];
  if (derived.known)
    return [
      {
        position,
        text:
          outcome === 'met'
            ? say`${shown(derived.si, derived.quantity)}, met`
            : say`${shown(derived.si, derived.quantity)}, missed`,
      },
    ];
  if (derived.pending) return [{ position, text: text('being worked out') }];
  const { length } = derived.missing;
  const some = derived.missing.slice(0, 3).join(', ');
  if (length === 0) return [{ position, text: text('not known') }];
  return [{ position, text: say`not known without ${length > 3 ? say`${some} and ${length - 3} more` : some}` }];
}

function conversions(desk: Desk, definition: Definition, statement: Statement): readonly InlayHint[] {
  if (statement.kind !== 'property' && statement.kind !== 'change' && statement.kind !== 'expect') return [];
  const path = statement.kind === 'expect' ? statement.quantity : statement.path;
  const values = statement.kind === 'change' ? [statement.old, statement.new] : [statement.value];
  const canonical = desk.workshop.catalogue.canonical(path.text, definition.kind);
  const usual = propertyAt(desk, definition, canonical)?.unit;
  return values.flatMap((value) => (value ? conversion(value, usual) : []));
}

/** A value in inches or ounces, in the shop's unit; not where the trade itself speaks in that unit, as of string gauges. */
function conversion(value: Value, usual: string | undefined): readonly InlayHint[] {
  if (value.kind === 'range') {
    return [value.low, value.high].flatMap((end) => (end ? conversion(end, usual) : []));
  }
  if (value.kind !== 'quantity') return [];
  const { si, dimension, unit } = value.quantity;
  if (!unit || unit.system !== 'inch' || unit.symbol === usual) return [];
  const own = shopUnit(dimension, si);
  if (!own || own.symbol === unit.symbol) return [];
  return [{ position: value.span.end, text: `= ${writeQuantity(si, dimension, { unit: own })}` }];
}
