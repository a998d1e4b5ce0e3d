/** What a rim of finite stiffness against turning holds, as springs at the nodes of the edge and at the ends of braces on it. */
import type { DiscreteTop } from './discrete.js';

export interface RimSprings {
  /** N·m/rad on both rotations of a node; a node may come more than once. */
  readonly nodes: readonly { readonly node: number; readonly spring: number }[];
  /** N·m/rad on the section of a brace; `end`: index into the mesh's `ribs`. */
  readonly braces: readonly { readonly end: number; readonly spring: number }[];
}

/** None where the edge turns freely. */
export function rimSprings({
  mesh,
  x,
  y,
  rimSpring,
  widths,
}: Pick<DiscreteTop, 'mesh' | 'x' | 'y' | 'rimSpring' | 'widths'>): RimSprings {
  if (!(rimSpring > 0)) return { nodes: [], braces: [] };
  const nodes: { node: number; spring: number }[] = [];
  for (let e = 0; e < mesh.rim.length; e += 2) {
    const [a, b] = [mesh.rim[e]!, mesh.rim[e + 1]!];
    const spring = (rimSpring * Math.hypot(x[b]! - x[a]!, y[b]! - y[a]!)) / 2;
    nodes.push({ node: a, spring }, { node: b, spring });
  }
  const onRim = new Set(mesh.rim);
  const braces: { end: number; spring: number }[] = [];
  for (let end = 0; end < mesh.ribs.length; end++) {
    if (onRim.has(mesh.ribs[end]!)) braces.push({ end, spring: rimSpring * widths[mesh.ribBrace[end >> 1]!]! });
  }
  return { nodes, braces };
}

/** Whether both hold the edge alike. */
export function sameSprings(one: DiscreteTop, other: DiscreteTop): boolean {
  if (one.rimSpring !== other.rimSpring) return false;
  return one.rimSpring === 0 || (one.x === other.x && one.widths.every((width, i) => width === other.widths[i]));
}
