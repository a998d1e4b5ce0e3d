/** How thick a plate of another set would have to be for the stiffness of the plate it is compared with. */
import { shown } from '../checks/phrases.js';
import { writeQuantity } from '../quantities/write.js';
import { DIMENSION } from '../quantities/dimension.js';
import type { Path, Value } from '../facts/facts.js';
import { solveHolds } from '../recipes/instrument/hold.js';
import type { Held, HoldRequest } from '../recipes/instrument/instrument.js';
import type { Desk } from '../checks/desk.js';
import type { Subject } from './subject.js';

export interface Fitting {
  readonly part: 'top' | 'back';
  /** Whose stiffness is aimed at: the parent, or for the first of a line the recipe itself. */
  readonly from: string;
  readonly target: string;
  readonly thickness: string;
  readonly mass?: string;
  /** The thickness is outside what is usually built. */
  readonly isOdd: boolean;
}

export function thicknessFor(desk: Desk, subject: Subject, path: string, wood: string): Fitting | undefined {
  const part = path === 'top.wood' ? 'top' : path === 'back.wood' ? 'back' : undefined;
  if (!part || !subject.evaluation) return undefined;
  const quantity = `${part}.stiffness.along`;
  const own = { name: subject.definition.name.text, evaluation: subject.evaluation };
  const aim = subject.before?.evaluation.derived(quantity)?.known ? subject.before : own;
  const by = `${part}.thickness`;
  const start = subject.values.get(by);
  const target = aim.evaluation.derived(quantity);
  if (!target?.known || !start) return undefined;

  const values = new Map(subject.values);
  values.set(path, named(path, wood, start));
  const solved = solveHolds(
    { name: own.name, definition: subject.definition, values, changes: [], holds: [request(quantity, by, start)] },
    {
      parent: aim.evaluation,
      evaluate: (all) => desk.workshop.evaluate(all),
      // Wider than what is plausible: the answer for an odd set is of interest too, and is marked.
      range: () => ({ low: 0.3e-3, high: 20e-3 }),
    },
  );
  const outcome = solved.holds[0]?.outcome;
  if (outcome?.kind !== 'solved') return undefined;
  const { si } = outcome.value.quantity;
  const mass = desk.workshop.evaluate(solved.values).derived(`${part}.mass`);
  const range = desk.workshop.catalogue.plausibleSpan(by);
  return {
    part,
    from: aim.name,
    target: shown(target.si, target.quantity),
    thickness: writeQuantity(si, DIMENSION.length, { unit: 'mm' }),
    mass: mass?.known ? shown(mass.si, mass.quantity) : undefined,
    isOdd: range !== undefined && (si < range.low || si > range.high),
  };
}

function named(path: string, name: string, like: Held): Held {
  const value: Value = { kind: 'name', name, span: like.value.span };
  return { path, value, from: like.from, via: 'stated' };
}

function request(quantity: string, by: string, at: Held): HoldRequest {
  const { span } = at.value;
  const path = (text: string): Path => ({ text, segments: [], span });
  return {
    statement: { kind: 'hold', quantity: path(quantity), by: path(by), span },
    quantity,
    by,
    along: [],
    from: at.from,
  };
}
