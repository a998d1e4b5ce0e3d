/** One definition for another program. */
import { inUnit, plainValue, tidy } from '../numbers.js';
import { basesInOrder, type Shown, type ShownDerived, type ShownValue } from '../shown.js';
import { plainFinding } from './findings-json.js';
import { type Escaped, forJson } from '../border.js';

export function shownAsJson({ definition, values, derived, readings, findings }: Shown): Escaped {
  const { kind, name } = definition;
  return forJson({
    [kind]: name.text,
    values: Object.fromEntries(values.map((value) => [value.path, plainShown(value, kind)])),
    derived: Object.fromEntries(derived.map((each) => [each.path, plainDerived(each)])),
    ...(readings.length > 0 && {
      readings: readings.map((reading) => ({
        name: reading.name,
        conditions: plainMap(reading.conditions),
        values: plainMap(reading.values),
      })),
    }),
    findings: findings.map(plainFinding),
  });
}

function plainShown({ path, held, from, basis, source }: ShownValue, kind: Shown['definition']['kind']): object {
  const { name, file, line } = from;
  return { ...plainValue(path, held.value, kind), from: { recipe: name, file, line }, basis, source };
}

function plainDerived({ derived, uncertainty }: ShownDerived): object {
  if (!derived.known) return { missing: derived.missing, ...(derived.trouble && { trouble: derived.trouble }) };
  const { unit, formula, source } = derived.quantity;
  return {
    value: inUnit(derived.si, unit),
    unit: unit === '' ? undefined : unit,
    si: tidy(derived.si),
    uncertainty: inUnit(uncertainty, unit, 'difference'),
    basis: basesInOrder(derived.basis),
    formula,
    source,
    ...(derived.assumptions.length > 0 && { assumptions: derived.assumptions }),
  };
}

function plainMap(values: Shown['readings'][number]['values'] | Shown['readings'][number]['conditions']): object {
  return Object.fromEntries([...values].map(([path, held]) => [path, plainValue(path, held.value, 'build')]));
}
