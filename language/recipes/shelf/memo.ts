/**
 * A small incremental computer: answers are remembered together with what they read, and asked again only when
 * something they read has changed. It is why an edit of a comment costs nothing and why a descendant can never show
 * a stale number.
 *
 * The method is the one called "red-green" in compilers (after the Salsa framework and Adapton), with the edges kept in
 * both directions: a changed input *marks* what has read it, directly or not, and nothing else is ever looked at. A
 * marked answer is first *checked* by bringing up to date what it read, in the order in which it was read, and only
 * computed again if one of those really changed. An answer that comes out equal to the old one counts as unchanged, so
 * the wave stops there.
 *
 * It also forgets. An answer that no other leans on, and that nobody outside asked for in the last edits, goes, and with
 * it what only it leant on. Answers about something that comes and goes (a definition) are bound to it instead: they stay
 * as long as it does and go with it (`forget`).
 *
 * Invariants
 * - A query reads the world only through inputs and other queries of the same `Memo`.
 * - Answers are immutable. What was thrown in place of an answer is kept and thrown again like one.
 * - A question that leads back to itself fails with a `CycleError`, and so does every question of the ring, even one that
 *   would catch it, so that no answer depends on who asked first. Whoever catches one stands outside the rings: the
 *   findings of a definition, which nothing else is made from.
 * - An input set while answers are being worked out takes effect when they are.
 */
import { type Cell, type CellKind, CellTable, CHECK, CLEAN, DIRTY, markReaders } from './memo-cell.js';
import { CycleError } from './cycle-error.js';

export { CycleError } from './cycle-error.js';

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
  /** Keys come and go: an answer stays until `Memo.forget` is told of its key. */
  readonly isBoundToKey?: boolean;
  /** Called when an answer that held may no longer hold. It must not ask anything. */
  readonly marked?: (key: K) => void;
}

/** For how many edits an answer nobody leans on is kept after it was last asked for. */
const KEPT_EDITS = 64;

export class Memo {
  /** Cells being checked or computed, innermost last. */
  private readonly running: Cell[] = [];
  /** For each computation under way, innermost last, what it has read. */
  private readonly reading: Cell[][] = [];
  private readonly later: (() => void)[] = [];
  private readonly tables: CellTable[] = [];
  /** Cells nobody leans on and that are bound to nothing, by when that was so or they were last asked for. */
  private readonly idle = new Map<Cell, number>();
  private readonly gone = new WeakSet<object>();
  private edits = 0;
  /** How many queries have been computed, for tests and benchmarks. */
  computed = 0;

  input<K, V>(equal: (a: V, b: V) => boolean = Object.is): Input<K, V> {
    const table = new CellTable({ name: 'input', compute: () => undefined, equal, isInput: true } as CellKind);
    this.tables.push(table);
    return {
      get: (key) => {
        const cell = table.at(key) ?? table.add(key, CLEAN);
        this.note(cell);
        if (this.reading.length === 0) this.settleIdle(cell);
        return cell.value as V | undefined;
      },
      set: (key, value) => {
        if (this.running.length > 0) this.later.push(() => this.set(table, key, value));
        else this.set(table, key, value);
      },
    };
  }

  /** `name`: what it is called in a `CycleError`. */
  query<K, V>(name: string, compute: (key: K) => V, options: QueryOptions<K, V> = {}): Query<K, V> {
    const { equal = Object.is, isBoundToKey = false, marked } = options;
    const table = new CellTable({ name, compute, equal, isBoundToKey, marked } as CellKind);
    this.tables.push(table);
    return {
      get: (key) => {
        const known = table.at(key);
        // What is asked about something gone is not kept; whoever asks leans on what it reads.
        if (!known && isBoundToKey && isObject(key) && this.gone.has(key)) return compute(key);
        return this.ask(known ?? table.add(key, DIRTY)) as V;
      },
    };
  }

  /** Asks something that has no part in the answer under way: what is read in it is not leant on. */
  aside<T>(ask: () => T): T {
    const reads: Cell[] = [];
    this.reading.push(reads);
    try {
      return ask();
    } finally {
      this.reading.pop();
      for (const cell of reads) this.settleIdle(cell);
    }
  }

  /** These are gone for good, and every answer bound to them with them. */
  forget(keys: Iterable<unknown>): void {
    for (const key of keys) {
      if (isObject(key)) this.gone.add(key);
      for (const table of this.tables) {
        const cell = table.kind.isBoundToKey ? table.at(key) : undefined;
        if (!cell) continue;
        markReaders(cell);
        this.dispose(cell);
      }
    }
  }

  /** One of those has come back. */
  recall(key: object): void {
    this.gone.delete(key);
  }

  /** To be called after each edit: lets go of what nobody has asked for in a while. */
  sweep(): void {
    if (this.running.length > 0) return;
    this.edits++;
    for (const [cell, since] of this.idle) {
      if (since + KEPT_EDITS > this.edits) return;
      this.dispose(cell);
    }
  }

  /** How many answers and inputs are kept, for tests. */
  get size(): number {
    return this.tables.reduce((sum, table) => sum + table.size, 0);
  }

  private set(table: CellTable, key: unknown, value: unknown): void {
    const cell = table.at(key);
    const before = cell?.value;
    if (value === undefined || before === undefined ? value === before : table.kind.equal(before, value)) return;
    const changed = cell ?? table.add(key, CLEAN);
    changed.value = value;
    markReaders(changed);
    this.settleIdle(changed);
  }

  private ask(cell: Cell): unknown {
    this.note(cell);
    if (cell.isRunning) throw this.ringFrom(cell);
    if (cell.state !== CLEAN) {
      this.refresh(cell);
      if (this.running.length === 0) for (let set = this.later.shift(); set; set = this.later.shift()) set();
    }
    if (this.reading.length === 0) {
      cell.askedAt = this.edits;
      this.settleIdle(cell);
    }
    if (cell.failed) throw cell.failed.error;
    return cell.value;
  }

  private note(cell: Cell): void {
    this.reading.at(-1)?.push(cell);
  }

  /** Brings a cell up to date. Never throws: what is thrown becomes its answer. */
  private refresh(cell: Cell): void {
    if (cell.isRunning) {
      this.ringFrom(cell);
      return;
    }
    cell.isRunning = true;
    this.running.push(cell);
    try {
      if (cell.state === CHECK && !cell.wasInRing) this.check(cell);
      if (cell.ring) this.settle(cell, undefined, { error: cell.ring }, cell.reads);
      else if (cell.state === CHECK && !cell.wasInRing) cell.state = CLEAN;
      else if (cell.state !== CLEAN) this.compute(cell);
    } finally {
      this.running.pop();
      cell.isRunning = false;
      cell.ring = undefined;
    }
  }

  /** In the order in which they were read: what comes after one that changed may not be asked for any more. */
  private check(cell: Cell): void {
    for (const read of cell.reads) {
      if (read.state !== CLEAN) this.refresh(read);
      if (cell.state === DIRTY || cell.ring) return;
    }
  }

  private compute(cell: Cell): void {
    const reads: Cell[] = [];
    this.reading.push(reads);
    let value: unknown;
    let failed: Cell['failed'];
    try {
      this.computed++;
      value = cell.table.kind.compute(cell.key);
    } catch (error) {
      failed = { error };
    } finally {
      this.reading.pop();
    }
    if (cell.ring) failed = { error: cell.ring };
    this.settle(cell, value, failed, reads.length < 2 ? reads : [...new Set(reads)]);
  }

  private settle(cell: Cell, value: unknown, failed: Cell['failed'], reads: readonly Cell[]): void {
    const isSame = failed
      ? isSameFault(cell.failed, failed)
      : !cell.failed && cell.wasComputed && cell.table.kind.equal(cell.value, value);
    cell.wasInRing = cell.ring !== undefined;
    this.lean(cell, reads);
    cell.state = CLEAN;
    cell.wasComputed = true;
    if (isSame) return;
    cell.value = failed ? undefined : value;
    cell.failed = failed;
    // Whoever failed for a ring this one is part of fails for it still.
    markReaders(cell, (reader) => cell.wasInRing && reader.wasInRing);
  }

  /** Everything from a question to where it was asked again is a ring. */
  private ringFrom(cell: Cell): CycleError {
    const members = this.running.slice(this.running.indexOf(cell));
    const error = CycleError.of(members.map(({ table, key }) => ({ query: table.kind.name, key })));
    for (const member of members) member.ring ??= error;
    return cell.ring ?? error;
  }

  /** From now on a cell has read these. */
  private lean(cell: Cell, reads: readonly Cell[]): void {
    const before = cell.reads;
    if (reads === before) return;
    cell.reads = reads;
    for (const read of reads) {
      read.addReader(cell);
      this.idle.delete(read);
    }
    if (before.length === 0 || isStartOf(before, reads)) return;
    const kept = new Set(reads);
    for (const read of before) {
      if (kept.has(read)) continue;
      read.removeReader(cell);
      this.settleIdle(read);
    }
  }

  private settleIdle(cell: Cell): void {
    this.idle.delete(cell);
    if (isIdle(cell)) this.idle.set(cell, this.edits);
  }

  private dispose(cell: Cell): void {
    const todo = [cell];
    for (let next = todo.pop(); next; next = todo.pop()) {
      this.idle.delete(next);
      next.table.drop(next);
      for (const read of next.reads) {
        read.removeReader(next);
        if (!isIdle(read)) continue;
        if (read.askedAt + KEPT_EDITS <= this.edits) todo.push(read);
        else this.idle.set(read, this.edits);
      }
      next.reads = [];
      next.state = DIRTY;
    }
  }
}

/** Nobody leans on it and nothing keeps it: neither a key it is bound to nor, for an input, what was put in. */
function isIdle(cell: Cell): boolean {
  return !cell.isRead && !cell.table.kind.isBoundToKey && !(cell.table.kind.isInput && cell.value !== undefined);
}

function isObject(key: unknown): key is object {
  return typeof key === 'object' && key !== null;
}

function isStartOf(before: readonly Cell[], reads: readonly Cell[]): boolean {
  return before.length <= reads.length && before.every((cell, i) => cell === reads[i]);
}

function isSameFault(a: Cell['failed'], b: { readonly error: unknown }): boolean {
  if (!a) return false;
  if (a.error === b.error) return true;
  return a.error instanceof Error && b.error instanceof Error && a.error.message === b.error.message;
}
