/** What the memo keeps of one question or one input, and who read it. */
import type { CycleError } from './cycle-error.js';

/**
 * How much is known of an answer. `CLEAN`: it holds. `CHECK`: something further up was changed; it holds if what it read
 * comes out as before. `DIRTY`: something it read did change, or it was never worked out.
 */
export type State = typeof CLEAN | typeof CHECK | typeof DIRTY;
export const CLEAN = 0;
export const CHECK = 1;
export const DIRTY = 2;

/**
 * Invariant: whoever read a cell that is not clean is not clean either, unless being worked out this moment.
 */
export class Cell {
  value: unknown = undefined;
  /** What was thrown in place of an answer. Kept like an answer, so that it does not depend on who asked first. */
  failed: { readonly error: unknown } | undefined = undefined;
  reads: readonly Cell[] = NOTHING;
  /** Set while the cell is being worked out and turned out to be part of a ring. */
  ring: CycleError | undefined = undefined;
  isRunning = false;
  wasComputed = false;
  /** Its last answer was that it is part of a ring; what it read then cannot be gone through one by one. */
  wasInRing = false;
  /** The edit at which somebody who is no query last asked for it. */
  askedAt = 0;
  /** Most cells are read by one other or by none, so that a set for each would be a waste. */
  private readers: Cell | Set<Cell> | undefined = undefined;

  constructor(
    readonly table: CellTable,
    readonly key: unknown,
    public state: State,
  ) {}

  get isRead(): boolean {
    return this.readers !== undefined;
  }

  addReader(reader: Cell): void {
    if (this.readers === undefined) this.readers = reader;
    else if (this.readers instanceof Set) this.readers.add(reader);
    else if (this.readers !== reader) this.readers = new Set([this.readers, reader]);
  }

  removeReader(reader: Cell): void {
    if (this.readers === reader) this.readers = undefined;
    else if (this.readers instanceof Set && this.readers.delete(reader) && this.readers.size === 1) {
      [this.readers] = this.readers;
    }
  }

  forEachReader(visit: (reader: Cell) => void): void {
    if (this.readers instanceof Set) this.readers.forEach(visit);
    else if (this.readers) visit(this.readers);
  }
}

/** What a query or an input does. */
export interface CellKind {
  /** In messages. */
  readonly name: string;
  readonly compute: (key: unknown) => unknown;
  readonly equal: (a: unknown, b: unknown) => boolean;
  readonly isInput?: boolean;
  /** Its cells are kept as long as their key is, and not only while somebody reads or asks for them. */
  readonly isBoundToKey?: boolean;
  /** Told of cells that no longer hold for sure. */
  readonly marked?: ((key: unknown) => void) | undefined;
}

/** The cells of one query or input, by key. */
export class CellTable {
  private readonly cells = new Map<unknown, Cell>();

  constructor(readonly kind: CellKind) {}

  get size(): number {
    return this.cells.size;
  }

  at(key: unknown): Cell | undefined {
    return this.cells.get(key);
  }

  add(key: unknown, state: State): Cell {
    const cell = new Cell(this, key, state);
    this.cells.set(key, cell);
    return cell;
  }

  drop(cell: Cell): void {
    this.cells.delete(cell.key);
  }
}

const NOTHING: readonly Cell[] = [];

/**
 * Marks everything that read a cell which has changed: its own readers as dirty, theirs as to be checked. Goes no
 * further where there is a mark already, so that it costs what it newly marks.
 */
export function markReaders(changed: Cell, isSpared: (reader: Cell) => boolean = () => false): void {
  const todo: Cell[] = [];
  const mark = (cell: Cell, state: State) => {
    const wasClean = cell.state === CLEAN;
    if (cell.state < state) cell.state = state;
    if (!wasClean) return;
    cell.table.kind.marked?.(cell.key);
    todo.push(cell);
  };
  changed.forEachReader((reader) => {
    if (!isSpared(reader)) mark(reader, DIRTY);
  });
  for (let next = todo.pop(); next; next = todo.pop()) next.forEachReader((reader) => mark(reader, CHECK));
}
