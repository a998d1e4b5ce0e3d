/** What is worth reading once a stage is done: computed figures, and readings a build knows. (common practice) */
import type { Stage } from '../catalogue/property.js';
import { shown } from '../checks/phrases.js';
import { writeQuantity } from '../quantities/write.js';
import type { Workshop } from '../recipes/workshop.js';
import { english } from '../wording/wording.js';
import { inWords } from './bench-targets.js';
import { type SheetCell, WRITE } from './sheet.js';
import type { SheetSubject } from './sheet-subject.js';

export const READ_AT: ReadonlyMap<Stage, readonly string[]> = new Map<Stage, readonly string[]>([
  ['thicknessing', ['top.mass', 'top.sag', 'back.mass']],
  ['bracing', ['mass.braced-top', 'mass.braced-back']],
  ['rim', ['mass.rim']],
  ['closing', ['mass.box']],
  ['setup', ['bridge.rotation']],
  ['first-tests', ['resonance.air', 'resonance.top', 'resonance.back', 'mass.finished']],
]);

/** The weighed name of what is computed under another. */
const COMPUTED_AS: ReadonlyMap<string, string> = new Map([
  ['mass.braced-top', 'top.braced-mass'],
  ['mass.braced-back', 'back.braced-mass'],
]);

export function readingRow(workshop: Workshop, subject: SheetSubject, path: string): readonly SheetCell[] {
  const { text } = workshop.wording;
  const { evaluation } = subject;
  const asked = COMPUTED_AS.get(path) ?? path;
  const computed = evaluation.derived(asked);
  const remark = text(REMARKS.get(path) ?? english('read'));
  const made = lastRead(workshop, subject, path) ?? WRITE;
  const what = inWords(path, workshop);
  if (!computed?.known) {
    return [what, computed?.pending ? text('being worked out') : text('not computed'), '', made, remark];
  }
  const { si, quantity } = computed;
  const spread = 2 * evaluation.uncertainty(asked);
  const band = Math.hypot(spread, (quantity.scatter ?? 0) * Math.abs(si));
  const { dimension, unit } = quantity;
  const off = band > 0 ? `±${writeQuantity(band, dimension, { ...(unit === '' ? {} : { unit }), digits: 2 })}` : '';
  return [what, shown(si, quantity), off, made, remark];
}

function lastRead(workshop: Workshop, { definition }: SheetSubject, path: string): string | undefined {
  if (definition.kind !== 'build') return undefined;
  const read = workshop
    .build(definition.name.text)
    ?.readings.flatMap(({ values }) => values.get(path) ?? [])
    .at(-1);
  if (read?.value.kind !== 'quantity') return undefined;
  const { si, dimension, unit } = read.value.quantity;
  return writeQuantity(si, dimension, { unit });
}

const REMARKS: ReadonlyMap<string, string> = new Map([
  ['top.mass', english('weigh, cut to outline')],
  ['back.mass', english('weigh, cut to outline')],
  ['top.sag', english('sag in the rig; write down which')],
  ['mass.braced-top', english('weigh')],
  ['mass.braced-back', english('weigh')],
  ['mass.rim', english('weigh')],
  ['mass.box', english('weigh')],
  ['mass.finished', english('weigh, strung')],
  ['bridge.rotation', english('level on the bridge, before and after stringing')],
  ['resonance.air', english('strings on and damped; write down the days since stringing')],
  ['resonance.top', english('strings on and damped')],
  ['resonance.back', english('strings on and damped')],
]);
