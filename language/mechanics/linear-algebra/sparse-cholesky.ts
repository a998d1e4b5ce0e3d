/**
 * Sparse Cholesky factor of a symmetric positive definite matrix by the multifrontal method (J.W.H. Liu, The multifrontal
 * method for sparse matrix solution, SIAM Rev. 34, 1992, 82–109): each supernode is a dense panel in which the matrix is
 * assembled and factored in place.
 */
import { backwardPanel, factorPanel, forwardPanel, subtractSquare } from './dense-kernels.js';
import type { Elimination } from './elimination.js';

/** Where everything lies; it depends on the mesh and on what is held, not on sizes. */
export interface FactorPattern {
  readonly elimination: Elimination;
  /** Unknowns in the order of elimination: first one of each node. */
  readonly first: Int32Array;
  /** Unknowns per node. */
  readonly weights: Int32Array;
  readonly unknowns: number;
  /** Per supernode: columns, columns + rows, start of its panel, and of its row list in `rowList`. */
  readonly width: Int32Array;
  readonly height: Int32Array;
  readonly panelStart: Int32Array;
  readonly rowListStart: Int32Array;
  /** Unknowns below each panel. */
  readonly rowList: Int32Array;
  /** For each unknown below a panel, its row within the parent's panel. */
  readonly inParent: Int32Array;
  readonly panelSize: number;
  /** Most numbers that waiting update matrices need. */
  readonly stackSize: number;
  /** Supernode of each node, and the first row of each node within its supernode. */
  readonly supernodeOf: Int32Array;
  /** Multiplications of one factorisation. */
  readonly work: number;
}

export function factorPattern(elimination: Elimination, weights: Int32Array): FactorPattern {
  const { columnStart, columns, rowStart, rows, parent } = elimination;
  const count = parent.length;
  const first = new Int32Array(weights.length).fill(-1);
  const supernodeOf = new Int32Array(weights.length).fill(-1);
  const width = new Int32Array(count);
  const height = new Int32Array(count);
  const panelStart = new Int32Array(count);
  const rowListStart = new Int32Array(count + 1);
  const rowList: number[] = [];
  let unknowns = 0;
  for (const node of columns) {
    first[node] = unknowns;
    unknowns += weights[node]!;
  }
  let panelSize = 0;
  let work = 0;
  for (let s = 0; s < count; s++) {
    for (let k = columnStart[s]!; k < columnStart[s + 1]!; k++) {
      supernodeOf[columns[k]!] = s;
      width[s]! += weights[columns[k]!]!;
    }
    for (let k = rowStart[s]!; k < rowStart[s + 1]!; k++) {
      const node = rows[k]!;
      for (let d = 0; d < weights[node]!; d++) rowList.push(first[node]! + d);
    }
    rowListStart[s + 1] = rowList.length;
    height[s] = width[s]! + rowList.length - rowListStart[s]!;
    panelStart[s] = panelSize;
    panelSize += width[s]! * height[s]!;
    const below = height[s]! - width[s]!;
    work += width[s]! ** 3 / 6 + (below * width[s]! ** 2) / 2 + (below * below * width[s]!) / 2;
  }
  const inParent = new Int32Array(rowList.length);
  for (let s = 0; s < count; s++) {
    const above = parent[s]!;
    if (above < 0) continue;
    const start = first[columns[columnStart[above]!]!]!;
    let search = rowListStart[above]!;
    for (let k = rowListStart[s]!; k < rowListStart[s + 1]!; k++) {
      const row = rowList[k]!;
      if (row < start + width[above]!) {
        inParent[k] = row - start;
        continue;
      }
      while (rowList[search] !== row) search++;
      inParent[k] = width[above]! + search - rowListStart[above]!;
    }
  }
  return {
    elimination,
    first,
    weights,
    unknowns,
    width,
    height,
    panelStart,
    rowListStart,
    rowList: Int32Array.from(rowList),
    inParent,
    panelSize,
    stackSize: stackNeed(parent, width, height),
    supernodeOf,
    work,
  };
}

/** Greatest total of update matrices that wait at one time: each supernode's own is made before its children's are freed. */
function stackNeed(parent: Int32Array, width: Int32Array, height: Int32Array): number {
  const waiting = new Float64Array(parent.length);
  let held = 0;
  let most = 0;
  for (let s = 0; s < parent.length; s++) {
    const own = (height[s]! - width[s]!) ** 2;
    most = Math.max(most, held + own);
    held += own - waiting[s]!;
    if (parent[s]! >= 0) waiting[parent[s]!]! += own;
    else held -= own;
  }
  return most;
}

/** Row of unknown-block `node` within the panel of supernode `s`, which must reach it. */
export function rowInPanel(pattern: FactorPattern, s: number, node: number): number {
  const { elimination, first, width, rowList, rowListStart } = pattern;
  const start = first[elimination.columns[elimination.columnStart[s]!]!]!;
  const row = first[node]!;
  if (row < start + width[s]!) return row - start;
  let low = rowListStart[s]!;
  let high = rowListStart[s + 1]!;
  while (high - low > 1) {
    const mid = (low + high) >> 1;
    if (rowList[mid]! <= row) low = mid;
    else high = mid;
  }
  return width[s]! + low - rowListStart[s]!;
}

/** Factors `panels` in place. `least`: smallest pivot allowed per unknown. Returns −1, or the unknown whose pivot failed. */
export function factorise(
  pattern: FactorPattern,
  panels: Float64Array,
  stack: Float64Array,
  least: Float64Array,
): number {
  const { width, height, panelStart, rowListStart, inParent, elimination, first } = pattern;
  const { parent, columns, columnStart } = elimination;
  // Updates wait on a stack; children of one parent are always the topmost ones when its turn comes.
  const places: number[] = [];
  const owners: number[] = [];
  let top = 0;
  for (let s = 0; s < parent.length; s++) {
    const n = width[s]!;
    const rows = height[s]!;
    const m = rows - n;
    const at = panelStart[s]!;
    const update = top;
    stack.fill(0, update, update + m * m);
    let base = top;
    while (owners.length > 0 && parent[owners[owners.length - 1]!] === s) {
      const child = owners.pop()!;
      base = places.pop()!;
      extendAdd(
        panels,
        at,
        n,
        stack,
        update,
        m,
        stack,
        base,
        height[child]! - width[child]!,
        inParent,
        rowListStart[child]!,
      );
    }
    const startColumn = first[columns[columnStart[s]!]!]!;
    const failed = factorPanel(panels, at, n, rows, least, startColumn);
    if (failed >= 0) return startColumn + failed;
    if (m === 0) {
      top = base;
      continue;
    }
    subtractSquare(panels, at + n * n, n, m, stack, update);
    if (base !== update) stack.copyWithin(base, update, update + m * m);
    top = base + m * m;
    places.push(base);
    owners.push(s);
  }
  return -1;
}

/** Adds a child's update matrix (lower part of m × m) to its parent's panel and update matrix. */
function extendAdd(
  panels: Float64Array,
  at: number,
  n: number,
  target: Float64Array,
  update: number,
  m: number,
  source: Float64Array,
  from: number,
  size: number,
  inParent: Int32Array,
  list: number,
): void {
  for (let i = 0; i < size; i++) {
    const row = inParent[list + i]!;
    const line = from + i * size;
    const panelRow = at + row * n;
    let j = 0;
    for (; j <= i; j++) {
      const column = inParent[list + j]!;
      if (column >= n) break;
      panels[panelRow + column]! += source[line + j]!;
    }
    const updateRow = update + (row - n) * m - n;
    for (; j <= i; j++) target[updateRow + inParent[list + j]!]! += source[line + j]!;
  }
}

/** Solves L Lᵀ X = B in place for a block of four interleaved vectors in the order of elimination. `scratch`: four times as long as the greatest panel is high. */
export function solveFactored(
  pattern: FactorPattern,
  panels: Float64Array,
  x: Float64Array,
  scratch: Float64Array,
): void {
  const { width, height, panelStart, rowListStart, rowList, elimination, first } = pattern;
  const { columns, columnStart, parent } = elimination;
  for (let s = 0; s < parent.length; s++) {
    const n = width[s]!;
    const rows = height[s]!;
    forwardPanel(panels, panelStart[s]!, n, rows, x, 4 * first[columns[columnStart[s]!]!]!, scratch);
    const list = rowListStart[s]!;
    for (let i = 0; i < rows - n; i++) {
      const to = 4 * rowList[list + i]!;
      x[to]! -= scratch[4 * i]!;
      x[to + 1]! -= scratch[4 * i + 1]!;
      x[to + 2]! -= scratch[4 * i + 2]!;
      x[to + 3]! -= scratch[4 * i + 3]!;
    }
  }
  for (let s = parent.length - 1; s >= 0; s--) {
    const n = width[s]!;
    const rows = height[s]!;
    const list = rowListStart[s]!;
    for (let i = 0; i < rows - n; i++) {
      const from = 4 * rowList[list + i]!;
      scratch[4 * i] = x[from]!;
      scratch[4 * i + 1] = x[from + 1]!;
      scratch[4 * i + 2] = x[from + 2]!;
      scratch[4 * i + 3] = x[from + 3]!;
    }
    backwardPanel(panels, panelStart[s]!, n, rows, x, 4 * first[columns[columnStart[s]!]!]!, scratch);
  }
}
