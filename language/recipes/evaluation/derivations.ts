/** Derived quantities found by path, a `*` in which stands for a member. */
import { remembered } from '../shelf/remembered.js';
import type { DerivedQuantity } from './derived-quantity.js';

export interface Found {
  readonly quantity: DerivedQuantity;
  /** What stands in place of the `*`; empty where there is none. */
  readonly member: string;
}

/** The derived quantities an evaluation knows, found by path. */
export class Derivations {
  private readonly exact = new Map<string, Found>();
  private readonly filled = new Map<string, (member: string) => string>();
  private readonly byPattern = remembered((path: string) => this.search(path));
  private readonly patterns: { readonly pattern: RegExp; readonly quantity: DerivedQuantity }[] = [];

  constructor(readonly all: readonly DerivedQuantity[]) {
    for (const quantity of all) {
      if (!quantity.path.includes('*')) this.exact.set(quantity.path, { quantity, member: '' });
      else {
        const source = quantity.path.split('.').map((word) => (word === '*' ? '([^.]+)' : escape(word)));
        this.patterns.push({ pattern: new RegExp(`^${source.join('\\.')}$`), quantity });
      }
    }
  }

  find(path: string): Found | undefined {
    const exact = this.exact.get(path);
    return exact ?? this.byPattern(path);
  }

  /**
   * The path of a quantity with its `*` filled in. The same text every time: one made anew would have to be gone through again
   * wherever it is looked up, which took longer than the looking up.
   */
  pathOf(pattern: string, member: string): string {
    let filled = this.filled.get(pattern);
    if (!filled) this.filled.set(pattern, (filled = remembered((each: string) => pattern.replace('*', () => each))));
    return filled(member);
  }

  private search(path: string): Found | undefined {
    for (const { pattern, quantity } of this.patterns) {
      const match = pattern.exec(path);
      if (match) return { quantity, member: match[1] ?? '' };
    }
    return undefined;
  }
}

function escape(word: string): string {
  return word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
