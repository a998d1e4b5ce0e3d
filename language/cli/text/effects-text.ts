/** What each change did, for somebody at the bench: a table for each build, with the noise floor beside each difference. */
import type { BuildEffect } from '../../reports/effects/effects-table.js';
import type { EvidenceRow } from '../../reports/comparison/comparison-table.js';
import type { Wording } from '../../wording/wording.js';
import { type Cell, table, wrapped } from './columns.js';
import type { Style } from './style.js';

export function effectsAsText(effects: readonly BuildEffect[], wording: Wording, style: Style): string {
  if (effects.length === 0) {
    const none = wording.text(
      'No build can be held against an earlier one yet: it takes a build of a recipe, a build of one of its ancestors, and a counted change between them.',
    );
    return `${wrapped(none, style.columns).join('\n')}\n`;
  }
  return `${effects.map((effect) => oneBuild(effect, wording, style)).join('\n\n')}\n`;
}

function oneBuild(effect: BuildEffect, { say, text, and }: Wording, style: Style): string {
  const { build, recipe, against, changes, summary, undeclared, rows } = effect;
  const did = changes.length === 0 ? text('nothing counted') : and(changes);
  const sources = [...new Set(rows.flatMap(({ scatterFrom }) => scatterFrom ?? []))];
  const head = [
    style.bold(say`${build}, ${recipe}: ${did}`),
    `  ${say`against ${and(against)}`}`,
    ...[summary, ...undeclared].flatMap((sentence) => wrapped(sentence, style.columns - 2).map((line) => `  ${line}`)),
  ];
  const foot = sources.flatMap((source) =>
    wrapped(say`The noise floor comes from ${source}.`, style.columns - 2).map((line) => style.dim(`  ${line}`)),
  );
  return [...head, ...tables(rows, { say, text }, style), ...foot].join('\n');
}

function tables(
  rows: readonly EvidenceRow[],
  { text }: Pick<Wording, 'say' | 'text'>,
  style: Style,
): readonly string[] {
  if (rows.length === 0) return [];
  const columns = ['', text('read'), text('against'), text('difference'), '', text('noise floor'), text('computed')];
  const head = columns.map((column, i): Cell => ({
    text: column,
    align: i > 0 && i !== 4 ? 'right' : 'left',
    paint: style.bold,
  }));
  const lines = rows.map((row): readonly (Cell | string)[] => {
    const quiet = row.verdict === 'distinct' ? undefined : style.dim;
    return [
      `${row.path}${row.occasion === '' ? '' : ` ${row.occasion}`}`,
      right(row.reading),
      right(row.mean),
      right(row.difference),
      row.word ?? '',
      right(row.floor),
      right(row.predicted),
      { text: row.verdictInWords, paint: quiet },
    ];
  });
  return table([head, ...lines]);
}

function right(text = '–'): Cell {
  return { text, align: 'right' };
}
