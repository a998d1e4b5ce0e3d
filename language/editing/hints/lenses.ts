/** The line above each recipe (changes counted, what they do in all against the parent, built or not), model and order. */
import { effectsBetween, isDiscernible } from '../../recipes/evaluation/effects.js';
import type { Definition, Span } from '../../facts/facts.js';
import type { Workshop } from '../../recipes/workshop.js';
import { type Desk, shifted } from '../../checks/desk.js';
import { familyOf, buildsCounted, recipesCounted } from '../../reports/descendants.js';
import { inShort } from '../../reports/in-short.js';
import { isPrintable } from '../../reports/printables.js';

export interface Lens {
  /** The head of the definition. */
  readonly range: Span;
  readonly text: string;
  /** Parent and recipe, laid side by side on a click; absent where there is no parent. */
  readonly compare?: readonly [parent: string, recipe: string];
  /** The model, where it has builds: what each change did is shown on a click. */
  readonly effects?: string;
  /** The order whose sheets are offered on a click. */
  readonly sheets?: string;
}

export function lensesOf(desk: Desk, uri: string): readonly Lens[] {
  return [...lensesByDefinition(desk, uri)].flat();
}

/** The same, definition by definition, for whoever serves others in between. */
export function* lensesByDefinition(desk: Desk, uri: string): Iterable<readonly Lens[]> {
  for (const { definition, line } of desk.shelf.file(uri)?.definitions ?? []) yield lensesAt(desk, definition, line);
}

function lensesAt(desk: Desk, definition: Definition, line: number): readonly Lens[] {
  const name = definition.name.text;
  // Of two of the same name only the first is in force; the other has a finding instead.
  if (name === '' || desk.shelf.find(definition.kind, name) !== definition) return [];
  const range = shifted(definition.head, line);
  if (definition.kind === 'model') {
    const isBuilt = familyOf(desk, definition).builds > 0;
    return [{ range, text: modelText(desk, definition), ...(isBuilt ? { effects: name } : {}) }];
  }
  if (definition.kind === 'order' && isPrintable(desk, definition)) {
    return [{ range, text: desk.workshop.wording.text('Print a sheet'), sheets: name }];
  }
  if (definition.kind !== 'recipe') return [];
  const parent = desk.workshop.parentOf(name);
  const text = recipeText(desk.workshop, definition);
  return [{ range, text, ...(parent === undefined ? {} : { compare: [parent, name] as const }) }];
}

const EFFECTS_SHOWN = 3;

function recipeText(workshop: Workshop, recipe: Definition): string {
  const name = recipe.name.text;
  const built = builtText(workshop, name);
  if (workshop.parentOf(name) === undefined) return [workshop.wording.text('first of its line'), built].join(' · ');
  return [countText(workshop, recipe), ...effectTexts(workshop, name), built].join(' · ');
}

function countText(workshop: Workshop, recipe: Definition): string {
  const { total, variables } = workshop.count(recipe.name.text);
  const limit = workshop.limit(recipe).count;
  const { say } = workshop.wording;
  const changes = total === 0 ? say`no change counted` : total === 1 ? say`1 change` : say`${total} changes`;
  const substituted = total === 0 && variables.some(({ verdict }) => verdict === 'substitution');
  if (substituted) return say`another set of the same wood`;
  return total > limit ? say`${changes} (${limit} allowed)` : changes;
}

/** What all of it does to the parent: what can be told apart, most noticeable first. */
function effectTexts(workshop: Workshop, name: string): readonly string[] {
  const { wording } = workshop;
  const { say, text, and } = wording;
  const parent = workshop.inFull(workshop.parentOf(name) ?? '');
  const own = workshop.inFull(name);
  if (!parent || !own) return [];
  const effects = effectsBetween(parent, own);
  const told = effects.filter(isDiscernible);
  if (told.length === 0) return effects.length === 0 ? [] : [text('nothing that could be told apart')];
  const kept = keptQuantities(workshop, name);
  const part = kept[0]?.part;
  // What a hold is about comes first: "at equal stiffness" is said of it.
  const [ofPart, others] = [told.filter(({ path }) => isOf(path, part)), told.filter(({ path }) => !isOf(path, part))];
  // What comes to be heard has a place among them even where the bench shows other differences more plainly.
  const heard = others.find(({ quantity }) => quantity.scatter !== undefined);
  const [first = '', ...rest] = [
    ...inShort(
      [...ofPart, ...others].filter((effect) => effect !== heard),
      heard ? EFFECTS_SHOWN - 1 : EFFECTS_SHOWN,
      wording,
    ),
    ...inShort(heard ? [heard] : [], 1, wording),
  ];
  const equal = kept.map(({ part: of, what }) =>
    of === part && ofPart.length > 0 ? text(what) : text(`${of} ${what}`.trim()),
  );
  return [equal.length === 0 ? first : say`${first} at equal ${and([...new Set(equal)])}`, ...rest];
}

function isOf(path: string, part: string | undefined): boolean {
  return part !== undefined && path.startsWith(`${part}.`);
}

/** `top` and `stiffness`, for every quantity that a hold keeps as the parent has it. */
function keptQuantities(workshop: Workshop, name: string): readonly { readonly part: string; readonly what: string }[] {
  const holds = workshop.instrument(name)?.solvedHolds ?? [];
  return holds
    .filter(({ request, outcome }) => outcome.kind === 'solved' && request.statement.at === undefined)
    .map(({ request }) => {
      const [part = '', what = ''] = request.quantity.replace(/-/g, ' ').split('.');
      return { part, what };
    });
}

function builtText(workshop: Workshop, name: string): string {
  const { say } = workshop.wording;
  const builds = workshop.buildsOf(name).map((build) => build.name.text);
  if (builds.length === 0) return say`not built`;
  return builds.length > 3 ? say`built ${builds.length} times` : say`built as ${builds.join(', ')}`;
}

function modelText(desk: Desk, model: Definition): string {
  const { recipes, builds } = familyOf(desk, model);
  const { wording } = desk.workshop;
  return `${recipesCounted(recipes, wording)} · ${buildsCounted(builds, wording)}`;
}
