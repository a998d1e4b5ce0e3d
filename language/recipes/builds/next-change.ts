/**
 * Which single change of one more build would separate the most: every variable in play, set to every value it has had,
 * in a build otherwise like one there is.
 */
import type { Design, DesignVariable } from './design-matrix.js';
import { directionsOf, isVaried, LEAST_VARIED } from './least-squares.js';
import { separate } from './separation.js';

export interface NextChange {
  /** Index in the design of the build to start from, and of one that has the value to change to. */
  readonly from: number;
  readonly to: number;
  readonly paths: readonly string[];
  /** Variables that could not be told apart before and can be with it. */
  readonly separates: readonly DesignVariable[];
  /** The largest standard error among the effects, with it over without it; 1 where something is separated instead. */
  readonly narrows: number;
}

/** Undefined while nothing has been changed, or where no single change would help. */
export function nextChange({ builds, variables }: Design): NextChange | undefined {
  if (builds.length < 2 || variables.length === 0) return undefined;
  const now = standing(variables, []);
  let best: (NextChange & { readonly standing: Standing }) | undefined;
  // From the newest build on: a maker goes on from there.
  for (const from of builds
    .map((_, i) => i)
    .slice(-MOST_STARTS)
    .reverse()) {
    for (const [first, to] of stepsFrom(variables, from)) {
      const { paths } = variables[first]!;
      const row = variables.map(({ paths: own, column }) => (own[0] === paths[0] ? column[to]! : column[from]!));
      const then = standing(variables, row);
      if (!isBetter(then, best?.standing ?? now)) continue;
      const separates = variables.filter((_, i) => then.clear.has(i) && !now.clear.has(i));
      best = {
        from,
        to,
        paths,
        separates,
        narrows: separates.length > 0 ? 1 : then.widest / now.widest,
        standing: then,
      };
    }
  }
  return best;
}

/** Enough to find a good one, and few enough to be found at once. */
const MOST_STARTS = 20;

interface Standing {
  /** Indexes of the variables whose own effect can be found. */
  readonly clear: ReadonlySet<number>;
  /** Largest standard error among these, for a scatter of one and the step of the variable. */
  readonly widest: number;
}

function standing(variables: readonly DesignVariable[], row: readonly number[]): Standing {
  const columns = variables.map(({ column }, i) => (row.length === 0 ? column : [...column, row[i]!]));
  const { clear, groups } = separate(columns);
  const { values, vectors, lengths } = directionsOf(groups.map(([first]) => columns[first!]!));
  const alone = clear.filter((group) => group.length === 1);
  const errors = alone.map((group) => {
    const i = groups.indexOf(group);
    const variance = values.reduce(
      (sum, value, k) => (value < LEAST_VARIED ? sum : sum + vectors[k]![i]! ** 2 / value),
      0,
    );
    return (Math.sqrt(variance) / lengths[i]!) * Math.abs(variables[group[0]!]!.step);
  });
  return { clear: new Set(alone.flat()), widest: Math.max(0, ...errors) };
}

function isBetter(a: Standing, b: Standing): boolean {
  if (a.clear.size !== b.clear.size) return a.clear.size > b.clear.size;
  return a.widest < b.widest * (1 - 1e-6);
}

/** For each path in play the builds whose value would be another than it is in `from`, one build a value. */
function stepsFrom(variables: readonly DesignVariable[], from: number): readonly (readonly [number, number])[] {
  const steps: (readonly [number, number])[] = [];
  const seen = new Set<string>();
  variables.forEach(({ paths: [path], column, to, kind }, first) => {
    if (kind === 'number') {
      const [low, high] = [column.indexOf(Math.min(...column)), column.indexOf(Math.max(...column))];
      for (const end of new Set([low, high, to])) if (isVaried([column[end]!, column[from]!])) steps.push([first, end]);
      return;
    }
    if (seen.has(path!)) return;
    seen.add(path!);
    const same = variables.filter(({ paths }) => paths[0] === path);
    const meaning = (row: number) => same.map((each) => each.column[row]).join();
    const rows = new Map(column.map((_, row) => [meaning(row), row]));
    for (const [word, row] of rows) if (word !== meaning(from)) steps.push([first, row]);
  });
  return steps;
}
