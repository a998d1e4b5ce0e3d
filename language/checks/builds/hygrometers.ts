/** Humidity read on a hygrometer that the shop knows to be wrong. */
import { DIMENSION } from '../../quantities/dimension.js';
import { writeQuantity } from '../../quantities/write.js';
import type { Definition, QuantityValue, Statement, Value } from '../../facts/facts.js';
import { propertiesOf } from '../../recipes/instrument/values.js';
import type { Workshop } from '../../recipes/workshop.js';
import { replace } from '../mending.js';
import type { Rule } from '../rule.js';
import { type Wording } from '../../wording/wording.js';

const SHOP = 'shop marram-lane { hygrometer.a.reads-high: 12 %RH }\n';

export const HYGROMETER_OFF: Rule = {
  code: 'hygrometer-off',
  severity: 'warning',
  title: 'A humidity read on a hygrometer that was wrong',
  reason:
    'A hygrometer that proved wrong was wrong for every guitar built by it. The readings are still worth having once its error is taken off, or carried as a doubt; left as they stand they explain cracks that were never in the air.',
  bad: `${SHOP}wood sitka-9 is sitka-spruce { humidity: 45 %RH  hygrometer: "A" }`,
  good: `${SHOP}wood sitka-9 is sitka-spruce { humidity: 45 %RH ± 12 %RH  hygrometer: "A" }`,
  of: ['build', 'wood'],
  check(definition, workshop, report) {
    const { say } = workshop.wording;
    for (const { humidity, hygrometer } of readOn(definition.statements, undefined)) {
      const error = errorOf(hygrometer, workshop);
      if (error === undefined || (humidity.quantity.tolerance ?? 0) >= Math.abs(error)) continue;
      const truth = percent(humidity.quantity.si - error);
      const off = percent(Math.abs(error));
      report(
        humidity.span,
        error > 0
          ? say`Hygrometer ${hygrometer} reads ${off} high: ${percent(humidity.quantity.si)} on it was about ${truth}.`
          : say`Hygrometer ${hygrometer} reads ${off} low: ${percent(humidity.quantity.si)} on it was about ${truth}.`,
        { fixes: fixes(definition, humidity, truth, off, workshop.wording) },
      );
    }
  },
};

interface ReadOn {
  readonly humidity: QuantityValue;
  readonly hygrometer: string;
}

/** Each humidity with the hygrometer of its occasion, or else of the whole build. */
function* readOn(statements: readonly Statement[], around: string | undefined): Iterable<ReadOn> {
  let hygrometer = around;
  const humidities: QuantityValue[] = [];
  for (const { statement } of propertiesOf(statements)) {
    if (statement.path.text === 'hygrometer') hygrometer = nameIn(statement.value) ?? hygrometer;
    const { value } = statement;
    if (statement.path.text === 'humidity' && value.kind === 'quantity' && value.quantity.unit) humidities.push(value);
  }
  if (hygrometer !== undefined) for (const humidity of humidities) yield { humidity, hygrometer };
  for (const statement of statements) {
    if (statement.kind === 'reading') yield* readOn(statement.statements, hygrometer);
  }
}

/** The name, without what a maker may have written after it: "A, by the window". */
function nameIn(value: Value): string | undefined {
  const text = value.kind === 'text' ? value.text : value.kind === 'name' ? value.name : undefined;
  return text?.split(/[,;:(]/, 1)[0]?.trim();
}

function errorOf(hygrometer: string, workshop: Workshop): number | undefined {
  const shop = workshop.shelf.shop();
  if (!shop) return undefined;
  const wanted = `hygrometer.${hygrometer.toLowerCase()}.reads-high`;
  for (const [path, { value }] of workshop.stated(shop)) {
    if (path.toLowerCase() === wanted && value.kind === 'quantity' && value.quantity.unit) return value.quantity.si;
  }
  return undefined;
}

function fixes(definition: Definition, { span, written }: QuantityValue, truth: string, off: string, { say }: Wording) {
  return [
    { title: say`Take the error off: ${truth}`, edits: [replace(definition, span, truth)] },
    {
      title: say`Keep it, with the doubt: ${written} ± ${off}`,
      edits: [replace(definition, span, `${written} ± ${off}`)],
    },
  ];
}

function percent(humidity: number): string {
  return writeQuantity(humidity, DIMENSION.humidity, { unit: '%RH' });
}
