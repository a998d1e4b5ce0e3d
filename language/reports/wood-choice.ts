/**
 * Choosing wood for a top: the measured sets on the shelf, each planed (in the mind only) to the stiffness that is to be
 * kept, and ranked by what the top would then weigh. Thickness is cubed in stiffness and not in mass, so the stiffest
 * set is not always the lightest.
 */
import { percent, shown } from '../checks/phrases.js';
import { DIMENSION } from '../quantities/dimension.js';
import { writeQuantity } from '../quantities/write.js';
import type { Evaluation } from '../recipes/evaluation/evaluation.js';
import type { Path, Value } from '../facts/facts.js';
import { solveHolds } from '../recipes/instrument/hold.js';
import type { Held, HoldRequest } from '../recipes/instrument/instrument.js';
import type { Desk } from '../checks/desk.js';
import { basisOf } from './figures.js';

export interface WoodChoice {
  readonly recipe: string;
  /** What is kept, `top.stiffness.along` unless the recipe holds something else by the thickness, with its value. */
  readonly quantity: string;
  readonly target: string;
  /** Whose value that is. */
  readonly from: string;
  /** Lightest first; sets already built into an instrument, and those that cannot do it, after the others. */
  readonly sets: readonly RankedSet[];
}

export interface RankedSet {
  readonly wood: string;
  /** The species it is, as far as the shop says. */
  readonly species?: string;
  /** The recipe in hand has it now. */
  readonly current: boolean;
  /** Builds it has gone into: it is not on the shelf any more. */
  readonly builtInto: readonly string[];
  readonly thickness?: string;
  readonly mass?: string;
  /** Against the lightest top that can still be made. */
  readonly heavier?: string;
  readonly across?: string;
  /** Against the stiffness across of the top it is compared with; absent where that is the same. */
  readonly acrossChange?: string;
  /** Left of the blank's thickness once planed. */
  readonly leaves?: string;
  /** Why it should not, or cannot, be used. */
  readonly trouble?: 'too-thin-blank' | 'not-usual' | 'out-of-reach' | 'unknown';
}

export const PART = 'top';
export const THICKNESS = `${PART}.thickness`;
export const WOOD = `${PART}.wood`;

/** Undefined when there is no such recipe, or the stiffness to keep is not known. */
export function woodChoice(desk: Desk, recipe: string): WoodChoice | undefined {
  const aim = aimOf(desk, recipe);
  if (!aim) return undefined;
  const measured = desk.shelf.names('wood').filter((name) => isMeasuredTop(desk, name));
  const tried = measured.map((wood) => tryOut(desk, aim, wood)).sort(byRank);
  const best = tried.find(({ set, mass }) => mass !== undefined && isFree(set))?.mass;
  return {
    recipe,
    quantity: aim.quantity,
    target: aim.target,
    from: aim.from,
    sets: tried.map(({ set, mass }) =>
      best === undefined || mass === undefined || mass <= best
        ? set
        : { ...set, heavier: writeQuantity(mass - best, DIMENSION.mass, { unit: 'g', difference: true }) },
    ),
  };
}

interface Aim {
  readonly quantity: string;
  readonly target: string;
  readonly from: string;
  readonly evaluation: Evaluation;
  readonly values: ReadonlyMap<string, Held>;
  readonly request: HoldRequest;
  /** Of the top that is compared with, SI. */
  readonly across: number | undefined;
}

function aimOf(desk: Desk, recipe: string): Aim | undefined {
  const { workshop } = desk;
  const instrument = workshop.instrument(recipe);
  const own = workshop.evaluation(recipe);
  const start = instrument?.values.get(THICKNESS);
  if (!instrument || !own || !start) return undefined;
  const held = instrument.holds.find(({ by }) => by === THICKNESS);
  const quantity = held?.quantity ?? `${PART}.stiffness.along`;
  const parent = workshop.parentOf(recipe);
  const before = parent === undefined ? undefined : workshop.evaluation(parent);
  const [from, evaluation] =
    parent !== undefined && before?.derived(quantity)?.known ? [parent, before] : [recipe, own];
  const at = held?.statement.at?.kind === 'quantity' ? held.statement.at : undefined;
  const target = evaluation.derived(quantity);
  if (!target?.known) return undefined;
  return {
    quantity,
    target: shown(at?.quantity.si ?? target.si, target.quantity),
    from: at ? recipe : from,
    evaluation,
    values: instrument.values,
    request: held ?? requestFor(quantity, start),
    across: evaluation.number(`${PART}.stiffness.across`),
  };
}

interface Tried {
  readonly set: RankedSet;
  /** kg */
  readonly mass?: number;
}

function tryOut(desk: Desk, aim: Aim, wood: string): Tried {
  const { workshop } = desk;
  const { request } = aim;
  const species = workshop.speciesOf(wood)?.name.text;
  const now = aim.values.get(WOOD)?.value;
  const set: RankedSet = {
    wood,
    ...(species === undefined ? {} : { species }),
    current: now?.kind === 'name' && now.name === wood,
    builtInto: buildsWith(desk, wood),
  };
  const values = new Map(aim.values);
  const value: Value = { kind: 'name', name: wood, span: request.statement.span };
  values.set(WOOD, { path: WOOD, value, from: request.from, via: 'changed' });
  const solved = solveHolds(
    { name: wood, definition: request.from.definition, values, changes: [], holds: [request] },
    {
      parent: aim.evaluation,
      evaluate: (all) => workshop.evaluate(all),
      // Wider than what is usual: the answer for an odd set is of interest too, and is marked.
      range: () => ({ low: 0.3e-3, high: 20e-3 }),
    },
  );
  const outcome = solved.holds[0]?.outcome;
  if (outcome?.kind !== 'solved') {
    return { set: { ...set, trouble: outcome?.kind === 'out-of-reach' ? 'out-of-reach' : 'unknown' } };
  }
  const planed = workshop.evaluate(solved.values);
  return finished(desk, aim, set, outcome.value.quantity.si, planed);
}

function finished(desk: Desk, aim: Aim, set: RankedSet, thickness: number, planed: Evaluation): Tried {
  const mass = planed.derived(`${PART}.mass`);
  const across = planed.derived(`${PART}.stiffness.across`);
  const blank = desk.workshop.wood(set.wood)?.number('blank.thickness');
  const usual = desk.workshop.catalogue.plausibleSpan(THICKNESS);
  const isOdd = usual !== undefined && (thickness < usual.low || thickness > usual.high);
  const isTooThin = blank !== undefined && blank < thickness;
  return {
    ...(mass?.known ? { mass: mass.si } : {}),
    set: {
      ...set,
      thickness: inMillimetres(thickness),
      ...(mass?.known ? { mass: shown(mass.si, mass.quantity) } : {}),
      ...(across?.known ? { across: shown(across.si, across.quantity) } : {}),
      ...(across?.known && aim.across ? changeOf(across.si / aim.across - 1) : {}),
      ...(blank === undefined || isTooThin ? {} : { leaves: inMillimetres(blank - thickness) }),
      ...(isTooThin ? { trouble: 'too-thin-blank' as const } : isOdd ? { trouble: 'not-usual' as const } : {}),
    },
  };
}

function changeOf(share: number): Pick<RankedSet, 'acrossChange'> {
  return Math.abs(share) < 0.0005 ? {} : { acrossChange: percent(share) };
}

/** Weighed and tested along the grain by the maker, and meant for a top or for nothing in particular. */
function isMeasuredTop(desk: Desk, name: string): boolean {
  const definition = desk.shelf.find('wood', name);
  const wood = desk.workshop.wood(name);
  if (!definition || !wood) return false;
  const use = desk.workshop.stated(definition).get('use')?.value;
  if (use?.kind === 'name' && use.name !== PART) return false;
  return ['density', 'modulus.along'].every((path) => {
    const basis = basisOf(path, wood);
    return wood.number(path) !== undefined && basis.includes('measured') && !basis.includes('handbook');
  });
}

function buildsWith({ shelf, workshop }: Desk, wood: string): readonly string[] {
  return shelf.names('build').filter((name) => {
    const value = workshop.build(name)?.values.get(WOOD)?.value;
    return value?.kind === 'name' && value.name === wood;
  });
}

function byRank(a: Tried, b: Tried): number {
  const late = ({ set, mass }: Tried) => (mass === undefined ? 2 : isFree(set) ? 0 : 1);
  return late(a) - late(b) || (a.mass ?? 0) - (b.mass ?? 0) || (a.set.wood < b.set.wood ? -1 : 1);
}

function isFree({ builtInto, trouble }: RankedSet): boolean {
  return builtInto.length === 0 && trouble !== 'too-thin-blank';
}

function requestFor(quantity: string, start: Held): HoldRequest {
  const { span } = start.value;
  const path = (text: string): Path => ({ text, segments: [], span });
  return {
    statement: { kind: 'hold', quantity: path(quantity), by: path(THICKNESS), span },
    quantity,
    by: THICKNESS,
    along: [],
    from: start.from,
  };
}

/** To the hundredth, so that figures in a list stand under each other. */
function inMillimetres(si: number): string {
  return `${(si * 1000).toFixed(2)} mm`;
}
