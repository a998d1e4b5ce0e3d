/**
 * In which order to eliminate the nodes of a mesh, and which nodes are then filled in: minimum degree on bit sets
 * (A. George & J.W.H. Liu, The evolution of the minimum degree ordering algorithm, SIAM Rev. 31, 1989, 1–19), then columns of
 * like structure gathered into supernodes.
 */

/** A graph of nodes: neighbours of i are `list[start[i] … start[i + 1])`, both ways, without i. */
export interface NodeGraph {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/** Supernodes in the order of their elimination; children come before their parents. */
export interface Elimination {
  /** Nodes eliminated by each supernode, `columns[columnStart[s] … columnStart[s + 1])`. */
  readonly columnStart: Int32Array;
  readonly columns: Int32Array;
  /** Nodes eliminated later that each touches, in the order of their elimination. */
  readonly rowStart: Int32Array;
  readonly rows: Int32Array;
  /** The supernode that takes over what each leaves, or −1. */
  readonly parent: Int32Array;
  /** Place of each node in the order. */
  readonly place: Int32Array;
}

/** `weights`: unknowns per node; nodes without unknowns are left out of the order. */
export function eliminationOf(graph: NodeGraph, weights: ArrayLike<number>): Elimination {
  const n = graph.start.length - 1;
  const words = (n + 31) >> 5;
  const sets = new Int32Array(n * words);
  for (let i = 0; i < n; i++) {
    if (!weights[i]) continue;
    for (let k = graph.start[i]!; k < graph.start[i + 1]!; k++) {
      const j = graph.list[k]!;
      if (weights[j]) sets[i * words + (j >> 5)]! |= 1 << (j & 31);
    }
  }
  const order = minimumDegree(sets, words, weights, n);
  return supernodes(order, sets, words, weights, n);
}

/** Eliminates step by step; afterwards the set of each node holds the nodes eliminated later that it is joined to. */
function minimumDegree(sets: Int32Array, words: number, weights: ArrayLike<number>, n: number): Int32Array {
  const degree = new Int32Array(n).fill(-1);
  const left: number[] = [];
  for (let i = 0; i < n; i++) {
    if (!weights[i]) continue;
    left.push(i);
    degree[i] = degreeOf(sets, words, i);
  }
  const order = new Int32Array(left.length);
  for (let step = 0; step < order.length; step++) {
    let best = 0;
    for (let k = 1; k < left.length; k++) if (degree[left[k]!]! < degree[left[best]!]!) best = k;
    const node = left[best]!;
    left.splice(best, 1);
    order[step] = node;
    const own = node * words;
    const neighbours = members(sets, words, node);
    for (const other of neighbours) {
      const at = other * words;
      for (let w = 0; w < words; w++) sets[at + w]! |= sets[own + w]!;
      sets[at + (other >> 5)]! &= ~(1 << (other & 31));
      sets[at + (node >> 5)]! &= ~(1 << (node & 31));
    }
    for (const other of neighbours) degree[other] = degreeOf(sets, words, other);
  }
  return order;
}

function members(sets: Int32Array, words: number, node: number): number[] {
  const found: number[] = [];
  for (let w = 0; w < words; w++) {
    let bits = sets[node * words + w]!;
    while (bits !== 0) {
      const low = bits & -bits;
      found.push((w << 5) + (31 - Math.clz32(low)));
      bits ^= low;
    }
  }
  return found;
}

/** How many nodes a node is joined to. Nearly all nodes have the same number of unknowns, so it does for the number of unknowns. */
function degreeOf(sets: Int32Array, words: number, node: number): number {
  let sum = 0;
  for (let at = node * words; at < (node + 1) * words; at++) {
    let bits = sets[at]!;
    if (bits === 0) continue;
    bits -= (bits >>> 1) & 0x55555555;
    bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
    sum += (((bits + (bits >>> 4)) & 0x0f0f0f0f) * 0x01010101) >>> 24;
  }
  return sum;
}

/** Share of a panel that may be zeros for the sake of fewer, larger panels. */
const ZEROS_ALLOWED = 0.05;

interface Group {
  columns: number[];
  /** Later nodes, unsorted. */
  rows: number[];
  parent: number;
  readonly children: number[];
  /** Numbers stored that stay zero. */
  zeros: number;
}

function supernodes(
  order: Int32Array,
  sets: Int32Array,
  words: number,
  weights: ArrayLike<number>,
  n: number,
): Elimination {
  const time = new Int32Array(n).fill(-1);
  order.forEach((node, step) => (time[node] = step));
  const groupOf = new Int32Array(n).fill(-1);
  const groups: Group[] = [];
  const weigh = (nodes: readonly number[]): number => nodes.reduce((sum, node) => sum + weights[node]!, 0);
  // From the last eliminated to the first, so that the parent's group is known.
  for (let step = order.length - 1; step >= 0; step--) {
    const node = order[step]!;
    const rows = members(sets, words, node);
    if (rows.length === 0) {
      groupOf[node] = groups.push({ columns: [node], rows: [], parent: -1, children: [], zeros: 0 }) - 1;
      continue;
    }
    const next = rows.reduce((a, b) => (time[a]! < time[b]! ? a : b));
    const index = groupOf[next]!;
    const group = groups[index]!;
    // Joined when `next` is the group's first column and the structures agree, or nearly do.
    const joined = weigh(group.columns) + weigh(group.rows);
    const extra = joined - weigh(rows);
    const width = weigh(group.columns) + weights[node]!;
    const zeros = group.zeros + extra * weights[node]!;
    if (group.columns[0] === next && zeros <= ZEROS_ALLOWED * (joined + weights[node]!) * width) {
      group.zeros = zeros;
      group.columns.unshift(node);
      groupOf[node] = index;
    } else {
      groupOf[node] = groups.push({ columns: [node], rows, parent: index, children: [], zeros: 0 }) - 1;
      group.children.push(groups.length - 1);
    }
  }
  return arranged(groups, n);
}

/** Numbers the groups so that children come first, each right before what takes over from it. */
function arranged(groups: readonly Group[], n: number): Elimination {
  const sequence: number[] = [];
  const visit = (index: number): void => {
    for (const child of groups[index]!.children) visit(child);
    sequence.push(index);
  };
  groups.forEach((group, index) => {
    if (group.parent < 0) visit(index);
  });
  const number = new Int32Array(groups.length);
  sequence.forEach((index, s) => (number[index] = s));
  const place = new Int32Array(n).fill(-1);
  let count = 0;
  for (const index of sequence) for (const node of groups[index]!.columns) place[node] = count++;
  const columnStart = [0];
  const rowStart = [0];
  const columns: number[] = [];
  const rows: number[] = [];
  const parent: number[] = [];
  for (const index of sequence) {
    const group = groups[index]!;
    columns.push(...group.columns);
    rows.push(...group.rows.sort((a, b) => place[a]! - place[b]!));
    columnStart.push(columns.length);
    rowStart.push(rows.length);
    parent.push(group.parent < 0 ? -1 : number[group.parent]!);
  }
  return {
    columnStart: Int32Array.from(columnStart),
    columns: Int32Array.from(columns),
    rowStart: Int32Array.from(rowStart),
    rows: Int32Array.from(rows),
    parent: Int32Array.from(parent),
    place,
  };
}
