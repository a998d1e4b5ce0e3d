/**
 * Taking a set of wood into a recipe: the change of the wood, and the hold that keeps the stiffness. The first of a line
 * has nothing to change or hold against, so there the wood and the thickness it needs are written instead.
 */
import type { Edit } from '../../checks/finding.js';
import { behind, indentOf, insertAt, insertLine, replace } from '../../checks/mending.js';
import { writeValue } from '../../checks/phrases.js';
import type { Definition } from '../../facts/facts.js';
import type { Desk } from '../../checks/desk.js';
import { THICKNESS, WOOD, woodChoice } from '../../reports/wood-choice.js';

export interface WoodUse {
  readonly edits: readonly Edit[];
  /** The recipe sets its thickness by itself; it was left as written, and the stiffness is not kept. */
  readonly thicknessLeft: boolean;
}

const HOLD = `hold top.stiffness.along by ${THICKNESS}`;

/** Undefined when the recipe or the set is not there. */
export function useWood(desk: Desk, recipe: string, wood: string): WoodUse | undefined {
  const definition = desk.shelf.find('recipe', recipe);
  if (!definition || !desk.shelf.find('wood', wood)) return undefined;
  return desk.workshop.parentOf(recipe) === undefined
    ? written(desk, definition, wood)
    : changed(desk, definition, wood);
}

function changed({ workshop }: Desk, recipe: Definition, wood: string): WoodUse | undefined {
  const name = recipe.name.text;
  const instrument = workshop.instrument(name);
  if (!instrument) return undefined;
  const isHeld = instrument.holds.some(({ by }) => by === THICKNESS);
  const thicknessLeft = !isHeld && instrument.changes.some(({ path }) => path === THICKNESS);
  const hold = isHeld || thicknessLeft ? [] : [HOLD];
  const now = instrument.changes.find(({ path }) => path === WOOD)?.statement;
  const value = now?.kind === 'change' ? now.new : now?.kind === 'property' ? now.value : undefined;
  if (value) return { edits: [replace(recipe, value.span, wood), ...appended(recipe, hold)], thicknessLeft };
  const before = workshop.startOf(name)?.values.get(WOOD)?.value;
  const change = before ? `change ${WOOD}: ${writeValue(before)} -> ${wood}` : `${WOOD}: ${wood}`;
  return { edits: appended(recipe, [change, ...hold]), thicknessLeft };
}

/** In a recipe without a parent: its own words replaced, or written where they are missing. */
function written(desk: Desk, recipe: Definition, wood: string): WoodUse {
  const stated = desk.workshop.stated(recipe);
  const thickness = woodChoice(desk, recipe.name.text)?.sets.find((set) => set.wood === wood)?.thickness;
  const wanted = new Map([[WOOD, wood], ...(thickness === undefined ? [] : [[THICKNESS, thickness] as const])]);
  const edits = [...wanted].flatMap(([path, text]) => {
    const held = stated.get(path);
    return held ? [replace(recipe, held.value.span, text)] : [];
  });
  const missing = [...wanted].filter(([path]) => !stated.has(path)).map(([path, text]) => `${path}: ${text}`);
  return { edits: [...edits, ...appended(recipe, missing)], thicknessLeft: thickness === undefined };
}

/** Lines of their own behind the last change or value, before what is expected of them. */
function appended(recipe: Definition, lines: readonly string[]): readonly Edit[] {
  if (lines.length === 0) return [];
  const last = recipe.statements.filter(({ kind }) => kind !== 'expect' && kind !== 'note').at(-1);
  if (!last) {
    const indent = indentOf(recipe, recipe.span.start);
    return [insertLine(recipe, lines.join(`\n${indent}  `), recipe.statements[0])];
  }
  // A definition written on one line stays on one line.
  const between = last.span.start.line === 0 ? '  ' : `\n${indentOf(recipe, last.span.start)}`;
  return [insertAt(recipe, behind(recipe, last.span), lines.map((line) => between + line).join(''))];
}
