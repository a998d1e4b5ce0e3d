/** A line of recipes drawn without a step to the right for each generation: only where it forks does it indent. */
interface Descendant<T> {
  readonly kind: 'model' | 'recipe' | 'build';
  readonly children: readonly T[];
}

/** What is drawn a step below an entry: its builds, and its branches where the line forks there. */
export function drawnBelow<T extends Descendant<T>>(entry: T): readonly T[] {
  const recipes = entry.children.filter(({ kind }) => kind === 'recipe');
  const builds = entry.children.filter(({ kind }) => kind !== 'recipe');
  const branches = entry.kind === 'model' || recipes.length > 1 ? recipes : [];
  return [...branches.flatMap(drawnInLine), ...builds];
}

/** An entry and, on the same level, whatever goes on from it alone. */
export function drawnInLine<T extends Descendant<T>>(entry: T): readonly T[] {
  const line: T[] = [];
  for (let next: T | undefined = entry; next !== undefined && !line.includes(next);) {
    line.push(next);
    const recipes: readonly T[] = next.children.filter(({ kind }) => kind === 'recipe');
    next = next.kind === 'recipe' && recipes.length === 1 ? recipes[0] : undefined;
  }
  return line;
}
