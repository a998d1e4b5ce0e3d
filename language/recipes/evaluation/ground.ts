/** What evaluations stand on: the values of an instrument, of a measured wood set with its species, of a string set. */
import { type Dimension, sameDimension } from '../../quantities/dimension.js';
import type { Basis, Evaluation, Ground, Leaf } from './evaluation.js';
import type { QuantityValue, Value } from '../../facts/facts.js';
import type { Held } from '../instrument/instrument.js';
import { differencesBetween } from './ground-differences.js';
import type { Differences } from './derived-quantity.js';
import { standardUncertainty, type Tolerances } from '../instrument/tolerances.js';

export interface Layer {
  readonly values: ReadonlyMap<string, Held>;
  /** Put before the paths of this layer: `species.` for a wood's species; empty for its own. */
  readonly prefix: string;
  /** Makes leaf ids unique where several evaluations share the thing; empty where each instrument has its own. */
  readonly shared: string;
  readonly basis: Basis;
  /**
   * How a `±` is meant: at the bench as a half-width, and where none is written the shop's tolerances hold; in a
   * handbook as a standard deviation. What was bought or set up (strings, a rig) is taken as stated.
   */
  readonly spread: 'half-width' | 'standard deviation' | 'as stated';
}

/** Other evaluations that answer for a part, by its path: `top.wood` → the wood set, `strings` → the string set. */
export type Elsewhere = ReadonlyMap<string, { readonly name: string; readonly evaluation: Evaluation }>;

/** The names in some values that lead to evaluations of their own. Looked up at once, so that it is known what is leant on. */
export function elsewhereOf(
  values: ReadonlyMap<string, Held>,
  find: (part: string, name: string) => Evaluation | undefined,
): Elsewhere {
  const others = new Map<string, { name: string; evaluation: Evaluation }>();
  for (const [path, { value }] of values) {
    if (value.kind !== 'name') continue;
    const evaluation = find(path, value.name);
    if (evaluation) others.set(path, { name: value.name, evaluation });
  }
  return others;
}

export class ValueGround implements Ground {
  /** Null: known to be none. */
  private readonly leaves = new Map<string, Leaf | null>();
  private readonly parts = new Map<string, readonly string[]>();

  constructor(
    private readonly layers: readonly Layer[],
    private readonly tolerances: Tolerances,
    private readonly dimensionOf: (path: string) => Dimension | undefined,
    private readonly others: Elsewhere = new Map(),
    readonly owner = '',
  ) {}

  leaf(path: string): Leaf | undefined {
    const known = this.leaves.get(path);
    if (known !== undefined) return known ?? undefined;
    const leaf = this.findLeaf(path);
    this.leaves.set(path, leaf ?? null);
    return leaf;
  }

  private findLeaf(path: string): Leaf | undefined {
    const found = this.find(path);
    if (!found) return undefined;
    const { layer, value, own } = found;
    const wanted = this.dimensionOf(path) ?? (layer.values.has(own) ? undefined : this.dimensionOf(wholeOf(path)));
    if (!hasRightDimension(value, wanted)) return undefined;
    return {
      id: `${layer.shared}${path}`,
      si: value.quantity.si,
      sigma: this.sigma(layer, own, value),
      basis: layer.basis,
    };
  }

  private sigma(layer: Layer, path: string, value: QuantityValue): number {
    if (layer.spread === 'half-width') return standardUncertainty(path, value, this.tolerances);
    const stated = value.quantity.tolerance ?? 0;
    return layer.spread === 'standard deviation' ? stated : stated / Math.sqrt(3);
  }

  value(path: string): Value | undefined {
    for (const layer of this.layers) {
      if (!path.startsWith(layer.prefix)) continue;
      const held = layer.values.get(path.slice(layer.prefix.length));
      if (held && held.value.kind !== 'unknown') return held.value;
    }
    const other = this.other(path);
    return other?.evaluation.ground.value(other.path);
  }

  members(part: string): readonly string[] {
    const known = this.parts.get(part);
    if (known) return known;
    const members = this.findMembers(part);
    this.parts.set(part, members);
    return members;
  }

  private findMembers(part: string): readonly string[] {
    const start = `${part}.`;
    const names = new Set<string>();
    for (const layer of this.layers) {
      for (const path of layer.values.keys()) {
        const full = layer.prefix + path;
        if (!full.startsWith(start)) continue;
        const rest = full.slice(start.length);
        const dot = rest.indexOf('.');
        if (dot > 0) names.add(rest.slice(0, dot));
      }
    }
    if (names.size > 0) return [...names];
    const value = this.value(part);
    if (value?.kind === 'list') return value.items.map((_, i) => String(i + 1));
    // Frets have no values of their own, only their number.
    const frets = part === 'frets' ? this.leaf('frets.count')?.si : undefined;
    if (frets !== undefined) return numbered(Math.min(frets, MOST_FRETS));
    // `strings: light-12` has the strings of the set for members, counted from the highest.
    const count = this.others.get(part)?.evaluation.derived('count');
    return count?.known ? numbered(count.si) : [];
  }

  elsewhere(path: string): { evaluation: Evaluation; path: string; prefix: string } | undefined {
    const other = this.other(path);
    if (!other) return undefined;
    const { evaluation, path: rest } = other;
    return evaluation.ground.leaf(rest) || evaluation.derivations.find(rest) ? other : undefined;
  }

  /** The thing a path leads to by name, and the rest of the path inside it. */
  private other(path: string): { evaluation: Evaluation; path: string; prefix: string } | undefined {
    if (this.others.size === 0) return undefined;
    for (let dot = path.indexOf('.'); dot > 0; dot = path.indexOf('.', dot + 1)) {
      const other = this.others.get(path.slice(0, dot));
      if (other) return { evaluation: other.evaluation, path: path.slice(dot + 1), prefix: other.name };
    }
    return undefined;
  }

  differencesFrom(other: Ground, parts: Iterable<string>): Differences | undefined {
    if (!(other instanceof ValueGround) || !this.isOfKindOf(other)) return undefined;
    const [mine, ...others] = this.layers;
    const [theirs, ...otherOthers] = other.layers;
    if (!mine || !theirs || !isSameLayer({ ...mine, values: theirs.values }, theirs)) return undefined;
    // What lies below, such as the shop, is mostly the same; who changes it has everything worked out anew.
    if (others.length !== otherOthers.length || !others.every((one, i) => isSameLayer(one, otherOthers[i]!)))
      return undefined;
    return differencesBetween(
      { values: mine.values, others: this.others, members: (part) => this.members(part) },
      { values: theirs.values, others: other.others, members: (part) => other.members(part) },
      parts,
    );
  }

  /** Whether what is written means the same on both. */
  private isOfKindOf({ tolerances, dimensionOf, owner }: ValueGround): boolean {
    return this.tolerances === tolerances && this.dimensionOf === dimensionOf && this.owner === owner;
  }

  isSaid(path: string): boolean {
    for (const { prefix, values } of this.layers) {
      if (!path.startsWith(prefix)) continue;
      const own = path.slice(prefix.length);
      if (values.has(own)) return true;
      const whole = values.get(own.slice(0, own.lastIndexOf('.')))?.value;
      if (whole && whole.kind !== 'name' && whole.kind !== 'text') return true;
    }
    const other = this.other(path);
    if (other) return other.evaluation.isSaid(other.path);
    for (const { name, evaluation } of this.others.values()) {
      if (path.startsWith(`${name}.`)) return evaluation.isSaid(path.slice(name.length + 1));
    }
    return false;
  }

  /** The quantity at a path; a part of a point, size or list is reached by one more word. */
  private find(path: string): { layer: Layer; value: QuantityValue; own: string } | undefined {
    for (const layer of this.layers) {
      if (!path.startsWith(layer.prefix)) continue;
      const own = path.slice(layer.prefix.length);
      const whole = layer.values.get(own)?.value;
      if (whole?.kind === 'quantity') return { layer, value: whole, own };
      const dot = own.lastIndexOf('.');
      const part = partOf(layer.values.get(own.slice(0, dot))?.value, own.slice(dot + 1));
      if (part) return { layer, value: part, own };
    }
    return undefined;
  }
}

function isSameLayer(a: Layer, b: Layer): boolean {
  const isAlike = a.prefix === b.prefix && a.shared === b.shared && a.basis === b.basis && a.spread === b.spread;
  return isAlike && a.values === b.values;
}

/** `from.station`, `from.offset`, `blank.length`, `blank.width`, `blank.thickness`, `gauges.1` (counted from 1). */
function partOf(value: Value | undefined, word: string): QuantityValue | undefined {
  if (value?.kind === 'point') return word === 'station' ? value.station : word === 'offset' ? value.offset : undefined;
  if (value?.kind === 'size') {
    // With a unit on some and not on others nobody knows what the others are: a finding asks.
    const withUnit = value.parts.filter(({ quantity }) => quantity.unit !== undefined).length;
    if (withUnit !== 0 && withUnit !== value.parts.length) return undefined;
    return value.parts[['length', 'width', 'thickness'].indexOf(word)];
  }
  if (value?.kind === 'list') {
    const item = value.items[Number(word) - 1];
    return item?.kind === 'quantity' ? item : undefined;
  }
  return undefined;
}

/** `blank` of `blank.thickness`: a part has the dimension of the whole. */
function wholeOf(path: string): string {
  return path.slice(0, Math.max(path.lastIndexOf('.'), 0));
}

/** A number without a unit where one is needed is no value at all: a finding asks what it means. */
function hasRightDimension(value: QuantityValue, wanted: Dimension | undefined): boolean {
  return wanted === undefined || sameDimension(value.quantity.dimension, wanted);
}

const MOST_FRETS = 36;

/** `1`, `2`, … */
function numbered(count: number): readonly string[] {
  return Array.from({ length: Math.max(0, Math.floor(count)) }, (_, i) => String(i + 1));
}
