/**
 * The plan of an instrument as plain data: outline, soundhole, braces with their heights, bridge and plate under it, each
 * with its numbers and the place where it is written. What is not known is left out and named; the rest is still drawn.
 */
import { MechanicsError } from '../../mechanics/error.js';
import type { Evaluation } from '../../recipes/evaluation/evaluation.js';
import type { Definition, Value } from '../../facts/facts.js';
import { type Held, isWithin } from '../../recipes/instrument/instrument.js';
import type { Side } from '../../recipes/instrument/comparison.js';
import type { ShopSettings } from '../../recipes/instrument/shop-settings.js';
import { sideOf } from '../../recipes/instrument/sides.js';
import { catalogue } from '../../catalogue/catalogue.js';
import { figureAt } from '../figures.js';
import { type Desk, type Location, locationOf } from '../../checks/desk.js';
import { lengthOnPaper, writeOnPaper } from '../on-paper.js';
import { NotKnown, PlainAsk } from './plain-ask.js';
import { type Outlined, PLAN_PARTS, type PlanPart, outlineOf } from './plan-shapes.js';
import { type PlateThickness, thicknessOf } from './thickness-places.js';
import type { Wording } from '../../wording/wording.js';

/** Station from the tail, and offset from the centre line, bass side negative; mm. */
export type PlanPoint = readonly [number, number];

export interface Drawing {
  readonly name: string;
  /** mm */
  readonly length: number;
  readonly width: number;
  /** The same written out; absent where the body is not known. */
  readonly size?: { readonly length: string; readonly width: string };
  /** Closed, the first point not repeated; empty where the body is not known. */
  readonly outline: readonly PlanPoint[];
  readonly parts: readonly DrawnPart[];
  readonly missing: readonly Missing[];
}

export interface DrawnPart {
  readonly path: string;
  readonly kind: 'plate' | 'soundhole' | 'brace' | 'bridge' | 'bridge-plate';
  readonly plate: 'top' | 'back';
  /** Closed; absent for a plate, which has the outline. */
  readonly shape?: readonly PlanPoint[];
  /** Of a brace: height along its length, both mm. */
  readonly heights?: readonly { readonly at: number; readonly height: number }[];
  /** Of a plate: how thick it is, and where. */
  readonly thickness?: PlateThickness;
  readonly figures: readonly { readonly path: string; readonly value: string }[];
  /** Where it is written: in the definition drawn if that says anything of it, otherwise where it was first told. */
  readonly source?: Location;
}

export interface Missing {
  readonly part: string;
  /** What would have to be known. */
  readonly paths: readonly string[];
  /** Why it cannot be drawn although nothing is missing. */
  readonly trouble?: string;
}

/** Undefined when there is no model, recipe or build of this name. */
export function drawingOf(desk: Desk, name: string): Drawing | undefined {
  const side = sideOf(desk.workshop, name);
  const definition = side && desk.shelf.find(side.kind, name);
  if (!side || !definition) return undefined;
  const { told } = desk.workshop.wording;
  const settings = desk.workshop.settings();
  const missing: Missing[] = [];
  const outline = attempt('body', side.evaluation, missing, outlineOf, told);
  const parts = [...PLAN_PARTS.plates, ...partsNamed(side.evaluation)].flatMap((part): readonly DrawnPart[] => {
    if (![...side.values.keys()].some((path) => isWithin(path, part.path))) return [];
    const drawn = attempt(part.path, side.evaluation, missing, (ask) => part.draw(ask), told);
    if (!drawn) return [];
    return [
      {
        path: part.path,
        kind: part.kind,
        plate: part.plate,
        ...(drawn.shape ? { shape: drawn.shape.map(inMillimetres) } : {}),
        ...(drawn.heights
          ? { heights: drawn.heights.map(({ at, height }) => ({ at: mm(at), height: mm(height) })) }
          : {}),
        ...(part.kind === 'plate' ? thicknessOf(side.evaluation, side.values, part.plate, settings) : {}),
        figures: [...figuresOf(side.values, part, settings), ...computedFigures(side, part, settings)],
        ...sourceOf(desk, definition, side.values, part),
      },
    ];
  });
  return { name, ...sizesOf(outline, settings), parts, missing };
}

function sizesOf(
  outline: Outlined | undefined,
  settings: ShopSettings,
): Pick<Drawing, 'length' | 'width' | 'size' | 'outline'> {
  if (!outline) return { length: 0, width: 0, outline: [] };
  const { length, width, points } = outline;
  const size = { length: lengthOnPaper(length, settings), width: lengthOnPaper(width, settings) };
  return { length: mm(length), width: mm(width), size, outline: points.map(inMillimetres) };
}

function partsNamed(evaluation: Evaluation): readonly PlanPart[] {
  const braces = (['bracing', 'back-bracing'] as const).flatMap((root) =>
    evaluation.ground.members(root).map((member) => PLAN_PARTS.brace(root, member)),
  );
  return [...braces, ...PLAN_PARTS.others];
}

/** What `draw` gives, or nothing and a word on why. */
function attempt<T>(
  part: string,
  evaluation: Evaluation,
  missing: Missing[],
  draw: (ask: PlainAsk) => T,
  told: Wording['told'],
): T | undefined {
  const ask = new PlainAsk(evaluation);
  try {
    return draw(ask);
  } catch (error) {
    if (error instanceof NotKnown) missing.push({ part, paths: error.paths });
    else if (error instanceof MechanicsError) missing.push({ part, paths: [], trouble: told(error.message) });
    else throw error;
    return undefined;
  }
}

/** Parts of the part (the heights of a brace at its stations) are told by the drawing itself. */
function figuresOf(values: ReadonlyMap<string, Held>, part: PlanPart, settings: ShopSettings): DrawnPart['figures'] {
  const own = [...values.values()].filter(({ path, value }) => isWithin(path, part.path) && isFigure(value));
  return own
    .filter(({ path }) => !part.inner.some((inner) => isWithin(path, inner)))
    .map(({ path, value }) => ({ path: path.slice(part.path.length + 1), value: writeOnPaper(path, value, settings) }));
}

/** What a brace comes to, where it is known and not written already. */
function computedFigures(
  { evaluation, values, kind }: Side,
  part: PlanPart,
  settings: ShopSettings,
): DrawnPart['figures'] {
  if (part.kind !== 'brace') return [];
  return ['length', 'mass'].flatMap((word) => {
    const path = `${part.path}.${word}`;
    const si = values.has(path) ? undefined : evaluation.number(path);
    if (si === undefined) return [];
    const isInInches = word === 'length' && settings.units === 'inch';
    const value = isInInches ? lengthOnPaper(si, settings) : figureAt(path, si, evaluation, catalogue, kind).text;
    return [{ path: word, value }];
  });
}

function isFigure({ kind }: Value): boolean {
  return kind !== 'text' && kind !== 'unreadable';
}

function sourceOf(
  desk: Desk,
  drawn: Definition,
  values: ReadonlyMap<string, Held>,
  part: PlanPart,
): Pick<DrawnPart, 'source'> {
  const own = [...values.values()].filter(({ path }) => isWithin(path, part.path));
  const held = own.find(({ from }) => from.definition === drawn) ?? own[0];
  const source = held && locationOf(desk, held.from.definition, held.from.span);
  return source ? { source } : {};
}

function inMillimetres([x, y]: readonly [number, number]): PlanPoint {
  return [mm(x), mm(y)];
}

/** To the hundredth: nobody sees more in a plan. */
function mm(metres: number): number {
  return Math.round(metres * 1e5) / 100 + 0;
}
