/** Who comes from whom in a folder: each model or base recipe with everything that descends from it. */
import type { Workshop } from '../recipes/workshop.js';

export interface FamilyMember {
  readonly name: string;
  readonly kind: 'model' | 'recipe';
  /** Changes counted against the parent; undefined for a model and a base recipe, which change nothing. */
  readonly changes?: number;
  readonly builds: readonly string[];
  readonly children: readonly FamilyMember[];
}

/** Every family of the folder; with a name, only the way down to that one and what descends from it. */
export function familiesOf(workshop: Workshop, name?: string): readonly FamilyMember[] {
  const { shelf } = workshop;
  const roots: FamilyMember[] = [
    ...shelf.names('model').map((model) => modelOf(workshop, model)),
    // A recipe whose parent or model is missing begins a family of its own; so does each ring of recipes.
    ...shelf
      .names('recipe')
      .filter((recipe) => isRootless(workshop, recipe))
      .map((recipe) => member(workshop, recipe, NOBODY)),
  ];
  if (name === undefined) return roots;
  return roots.flatMap((root) => narrowed(root, name) ?? []);
}

function modelOf(workshop: Workshop, model: string): FamilyMember {
  const children = workshop.shelf
    .targeting('recipe', model)
    .filter(({ relation }) => relation?.word === 'for')
    .map(({ name }) => member(workshop, name.text, NOBODY));
  return { name: model, kind: 'model', builds: [], children };
}

function member(workshop: Workshop, name: string, above: ReadonlySet<string>): FamilyMember {
  const line = new Set(above).add(name);
  const children = workshop.shelf
    .targeting('recipe', name)
    .filter(
      ({ name: { text }, relation }) => relation?.word === 'from' && !line.has(text) && isFollowed(workshop, text),
    )
    .map(({ name: child }) => member(workshop, child.text, line));
  return {
    name,
    kind: 'recipe',
    ...(workshop.parentOf(name) !== undefined && { changes: workshop.count(name).total }),
    builds: workshop.buildsOf(name).map((build) => build.name.text),
    children,
  };
}

function isRootless(workshop: Workshop, recipe: string): boolean {
  const { recipes, trouble } = workshop.lineage(recipe);
  if (trouble?.kind === 'ring') return [...trouble.names].sort()[0] === recipe;
  return trouble?.kind === 'long' || (trouble !== undefined && recipes.length === 1);
}

/** Not so far down its line that nobody follows; what is begins a family of its own. */
function isFollowed(workshop: Workshop, recipe: string): boolean {
  return workshop.lineage(recipe).trouble?.kind !== 'long';
}

/** The way down to one member and all below it. */
function narrowed(member: FamilyMember, name: string): FamilyMember | undefined {
  if (member.name === name) return member;
  const children = member.children.flatMap((child) => narrowed(child, name) ?? []);
  return children.length > 0 ? { ...member, children } : undefined;
}

const NOBODY: ReadonlySet<string> = new Set();
