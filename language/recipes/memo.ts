/**
 * A small incremental computer: answers are remembered together with what they read, and asked again only when
 * something they read has changed. It is why an edit of a comment costs nothing and why a descendant can never show
 * a stale number.
 *
 * The method is the one called "red-green" in compilers (after the Salsa framework and Adapton): every answer knows the
 * revision at which it last changed; when the world moves on, an answer is first *verified* by verifying what it
 * read, and only computed again if one of those really changed. An answer that comes out equal to the old one counts
 * as unchanged, so the wave stops there.
 *
 * Invariants
 * - A query reads the world only through inputs and other queries of the same `Memo`.
 * - Answers are immutable.
 * - A query that asks for itself is not a crash: `onCycle` supplies the answer.
 */

export interface Input<K, V> {
  get(key: K): V | undefined;
  /** Undefined removes the entry. An equal value is not a change. */
  set(key: K, value: V | undefined): void;
}

export interface Query<K, V> {
  get(key: K): V;
}

export interface QueryOptions<K, V> {
  /** When two answers count as the same. Default: `Object.is`. */
  readonly equal?: (a: V, b: V) => boolean;
  /** The answer given to a query that, directly or not, asks for itself. Default: throws. */
  readonly onCycle?: (key: K) => V;
}

interface Cell {
  changedAt: number;
  verifiedAt: number;
  /** Brings the cell up to the present revision. */
  refresh(): void;
}

export class Memo {
  private revision = 1;
  private reading: Cell[][] = [];
  /** How many queries have been computed, for tests and benchmarks. */
  computed = 0;

  input<K, V>(equal: (a: V, b: V) => boolean = Object.is): Input<K, V> {
    const cells = new Map<K, Cell & { value: V | undefined }>();
    const cellOf = (key: K) => {
      let cell = cells.get(key);
      if (!cell) {
        cell = { value: undefined, changedAt: 0, verifiedAt: 0, refresh: () => undefined };
        cells.set(key, cell);
      }
      return cell;
    };
    return {
      get: (key) => {
        const cell = cellOf(key);
        this.note(cell);
        return cell.value;
      },
      set: (key, value) => {
        const cell = cellOf(key);
        const same = value === undefined || cell.value === undefined ? value === cell.value : equal(cell.value, value);
        if (same) return;
        cell.value = value;
        cell.changedAt = ++this.revision;
      },
    };
  }

  query<K, V>(compute: (key: K) => V, options: QueryOptions<K, V> = {}): Query<K, V> {
    const equal = options.equal ?? Object.is;
    const cells = new Map<K, QueryCell<K, V>>();
    return {
      get: (key) => {
        let cell = cells.get(key);
        if (!cell) {
          cell = new QueryCell(this, key, compute, equal, options.onCycle);
          cells.set(key, cell);
        }
        const value = cell.read();
        this.note(cell);
        return value;
      },
    };
  }

  /** @internal */
  now(): number {
    return this.revision;
  }

  /** @internal Runs `compute` and returns its answer with the cells it read. */
  track<V>(compute: () => V): { value: V; reads: Cell[] } {
    const reads: Cell[] = [];
    this.reading.push(reads);
    try {
      this.computed++;
      return { value: compute(), reads };
    } finally {
      this.reading.pop();
    }
  }

  private note(cell: Cell): void {
    this.reading.at(-1)?.push(cell);
  }
}

class QueryCell<K, V> implements Cell {
  changedAt = 0;
  verifiedAt = 0;
  private value: V | undefined;
  private reads: readonly Cell[] = [];
  private known = false;
  private running = false;
  /** Set when the answer leaned on a cycle: it then depends on who asked first, so it is not kept. */
  private leanedOnCycle = false;

  constructor(
    private readonly memo: Memo,
    private readonly key: K,
    private readonly compute: (key: K) => V,
    private readonly equal: (a: V, b: V) => boolean,
    private readonly onCycle: ((key: K) => V) | undefined,
  ) {}

  read(): V {
    if (this.running) {
      if (!this.onCycle) throw new Error(`a query asks for itself: ${String(this.key)}`);
      this.leanedOnCycle = true;
      return this.onCycle(this.key);
    }
    this.refresh();
    return this.value as V;
  }

  refresh(): void {
    if (this.running) return;
    const now = this.memo.now();
    if (this.known && this.verifiedAt === now) return;
    this.running = true;
    try {
      if (this.known && !this.readsChanged()) {
        this.verifiedAt = now;
        return;
      }
      const { value, reads } = this.memo.track(() => this.compute(this.key));
      if (!this.known || !this.equal(this.value as V, value)) {
        this.value = value;
        this.changedAt = now;
      }
      this.reads = dedupe(reads);
      this.known = true;
      this.verifiedAt = now;
    } finally {
      this.running = false;
    }
  }

  private readsChanged(): boolean {
    for (const cell of this.reads) {
      cell.refresh();
      if (cell.changedAt > this.verifiedAt) return true;
    }
    return this.leanedOnCycle;
  }
}

function dedupe(cells: Cell[]): readonly Cell[] {
  return cells.length < 2 ? cells : [...new Set(cells)];
}
