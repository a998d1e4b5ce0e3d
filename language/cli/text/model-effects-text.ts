/** What the builds of a model say all together, for somebody at the bench: what disagrees, what each change did, what next. */
import type { EffectRow, ModelEffectsTable, ResponseTable } from '../../reports/effects/model-effects-table.js';
import type { Wording } from '../../wording/wording.js';
import { type Cell, table, wrapped } from './columns.js';
import type { Style } from './style.js';

export function modelEffectsAsText(found: ModelEffectsTable, wording: Wording, style: Style): string {
  const parts = [
    design(found, wording, style),
    ...[...found.disagreements, ...found.asked].map((sentence) => indented(sentence, style).join('\n')),
    ...found.responses.map((each) => response(each, wording, style)),
    ...found.heard.map((sentence) => indented(sentence, style).join('\n')),
    ...found.closing.map((sentence) => indented(sentence, style).join('\n')),
  ];
  return `${parts.join('\n\n')}\n`;
}

function design(found: ModelEffectsTable, { and }: Wording, style: Style): string {
  const title = found.builds.length === 0 ? found.model : `${found.model}: ${and(found.builds)}`;
  return [
    ...wrapped(title, style.columns).map((line) => style.bold(line)),
    ...indented(found.summary, style),
    ...table(found.variables.map(({ paths, step, standing }) => [paths, step, standing])),
    ...found.leftOut.flatMap((sentence) => indented(sentence, style)).map(style.dim),
  ].join('\n');
}

function response({ name, conditions, effects, notes, floor }: ResponseTable, { text }: Wording, style: Style): string {
  const head = ['', text('computed'), text('builds alone'), text('together')].map((said, i): Cell => ({
    text: said,
    align: i > 0 ? 'right' : 'left',
    paint: style.bold,
  }));
  return [
    `${style.bold(name)}: ${conditions}`,
    ...(effects.length === 0 ? [] : table([head, ...effects.map((effect) => row(effect, style))])),
    ...notes.flatMap((sentence) => indented(sentence, style)),
    ...(floor === undefined ? [] : indented(floor, style).map(style.dim)),
  ].join('\n');
}

function row(
  { what, computed, builds, together, verdict, verdictInWords }: EffectRow,
  style: Style,
): readonly (Cell | string)[] {
  const right = (said = '–'): Cell => ({ text: said, align: 'right' });
  const said = verdict === 'hidden' ? { text: verdictInWords, paint: style.dim } : verdictInWords;
  return [what, right(computed), right(builds), right(together), said];
}

function indented(sentence: string, { columns }: Style): readonly string[] {
  return wrapped(sentence, columns - 2).map((line) => `  ${line}`);
}
