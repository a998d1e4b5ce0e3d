/** When two words come to the same thing: sets of wood exchanged for one another in changes that do not count. */
import type { Value } from '../../facts/facts.js';
import type { Change } from './instrument.js';
import { valueText } from './value-text.js';
import type { Workshop } from '../workshop.js';

export class SameWords {
  private readonly first = new Map<string, string>();

  constructor(
    private readonly workshop: Workshop,
    uncounted: readonly Change[],
  ) {
    for (const { path, before, after } of uncounted) {
      if (before?.value.kind !== 'name' || after?.value.kind !== 'name') continue;
      const [a, b] = [this.meaning(path, before.value), this.meaning(path, after.value)];
      if (a !== b) this.first.set(b, a);
    }
  }

  /** The same text for values that come to the same; empty for none. */
  meaning(path: string, value: Value | undefined): string {
    if (value === undefined) return '';
    let meaning = `${path} ${keyOf(value)}`;
    for (let next = this.first.get(meaning); next !== undefined; next = this.first.get(meaning)) meaning = next;
    return meaning;
  }

  species(value: Value | undefined): string | undefined {
    return value?.kind === 'name' ? this.workshop.speciesOf(value.name)?.name.text : undefined;
  }
}

/** Values of equal meaning, in whatever unit they were written, have one key. */
function keyOf(value: Value): string {
  return valueText(value, ({ quantity }) => quantity.si.toPrecision(9));
}
