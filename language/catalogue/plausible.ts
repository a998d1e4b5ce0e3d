/** Which plausible range fits a property of a certain instrument. */
import { braceRole } from './brace-roles.js';
import { impliedTags } from './instrument-tags.js';
import type { PlausibleRange, Property } from './property.js';

/**
 * The range that fits best: of those whose tags all hold, the one with most tags, where a tag that is only implied (an OM
 * has steel strings) counts half. Where none fits, the ranges taken together, since a question should only be asked of
 * what is odd for every instrument. Undefined: no range is known.
 *
 * `tags` are the instrument's kind and form, the species of the wood, or, for a `size`, the part meant (`thickness`).
 * `path`, where given, adds what the name of a brace tells (`bracing.x-bass.height`: an X).
 */
export function plausible(property: Property, tags: readonly string[] = [], path = ''): PlausibleRange | undefined {
  const role = braceRole(path)?.tag;
  const said = new Set(role === undefined ? tags : [...tags, role]);
  const held = impliedTags([...said]);
  let best: { readonly range: PlausibleRange; readonly weight: number } | undefined;
  for (const range of property.ranges) {
    const wanted = tagsOf(range);
    if (!wanted.every((tag) => held.has(tag))) continue;
    const weight = wanted.reduce((sum, tag) => sum + (said.has(tag) ? 2 : 1), 0);
    if (!best || weight > best.weight) best = { range, weight };
  }
  return best?.range ?? together(property.ranges);
}

function tagsOf(range: PlausibleRange): readonly string[] {
  return range.of === undefined ? [] : range.of.split(' ');
}

function together(ranges: readonly PlausibleRange[]): PlausibleRange | undefined {
  const [first, ...others] = ranges;
  if (!first || others.length === 0) return first;
  const typicals = ranges.map((range) => range.typical).sort((a, b) => a - b);
  return {
    low: Math.min(...ranges.map((range) => range.low)),
    typical: typicals[Math.floor(typicals.length / 2)] ?? first.typical,
    high: Math.max(...ranges.map((range) => range.high)),
    source: [...new Set(ranges.map((range) => range.source))].join('; '),
    note: 'over every kind of instrument listed',
  };
}
