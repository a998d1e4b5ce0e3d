/** Derived quantities found by path, a `*` in which stands for a member. */
import type { DerivedQuantity } from './derived-quantity.js';

/** The derived quantities an evaluation knows, found by path. */
export class Derivations {
  private readonly exact = new Map<string, DerivedQuantity>();
  private readonly patterns: { readonly pattern: RegExp; readonly quantity: DerivedQuantity }[] = [];

  constructor(readonly all: readonly DerivedQuantity[]) {
    for (const quantity of all) {
      if (!quantity.path.includes('*')) this.exact.set(quantity.path, quantity);
      else {
        const source = quantity.path.split('.').map((word) => (word === '*' ? '([^.]+)' : escape(word)));
        this.patterns.push({ pattern: new RegExp(`^${source.join('\\.')}$`), quantity });
      }
    }
  }

  find(path: string): { readonly quantity: DerivedQuantity; readonly member: string } | undefined {
    const exact = this.exact.get(path);
    if (exact) return { quantity: exact, member: '' };
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
