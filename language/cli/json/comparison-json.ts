/** Two instruments side by side for another program. */
import type { Comparison, DerivedDifference } from '../../recipes/instrument/comparison.js';
import { byPart } from '../../reports/parts-in-order.js';
import { inUnit, plainValue, tidy } from '../numbers.js';
import { type Escaped, forJson } from '../border.js';

export function comparisonAsJson({ a, b, ancestor, differences, derived }: Comparison): Escaped {
  return forJson({
    a: { [a.kind]: a.name },
    b: { [b.kind]: b.name },
    ancestor,
    changes: byPart(differences, ({ paths }) => paths[0]?.path ?? '', ['recipe']).map(
      ({ label, class: kind, paths }) => ({
        label,
        class: kind,
        paths: paths.map(({ path, a: x, b: y }) => ({
          path,
          a: x ? plainValue(path, x.value) : null,
          b: y ? plainValue(path, y.value) : null,
        })),
      }),
    ),
    derived: Object.fromEntries(derived.map((each) => [each.path, plainDifference(each)])),
  });
}

function plainDifference(each: DerivedDifference): object {
  const { unit } = each.quantity;
  const value = (si: number | undefined) => (si === undefined ? null : inUnit(si, unit));
  if (each.difference === undefined) return { a: value(each.a), b: value(each.b), missing: each.missing };
  const { difference, discernible = 0, percent, contributions, remainder } = each;
  return {
    a: value(each.a),
    b: value(each.b),
    unit: unit === '' ? undefined : unit,
    difference: inUnit(difference, unit, 'difference'),
    percent: percent === undefined ? null : tidy(percent),
    contributions: contributions.map(({ label, amount }) => ({ label, amount: inUnit(amount, unit, 'difference') })),
    remainder: inUnit(remainder, unit, 'difference'),
    smallest: inUnit(discernible, unit, 'difference'),
    distinguishable: Math.abs(difference) > discernible,
  };
}
