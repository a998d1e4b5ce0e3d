/** What edits did, for somebody at the bench. */
import type {
  EffectOfEdit,
  FolderChanges,
  InstrumentChange,
  OtherChange,
  Range,
  ValueChange,
} from '../../reports/history/folder-changes.js';
import type { Wording } from '../../wording/wording.js';
import { type Cell, table, wrapped } from './columns.js';
import { scaleOf } from './scale.js';
import type { Style } from './style.js';

export function changesAsText(found: FolderChanges, range: Range, style: Style): string {
  const { text } = style.wording;
  const blocks = [
    style.bold(rangeInWords(range, style.wording)),
    ...(found.instruments.length + found.others.length === 0
      ? [text('No instrument, wood or anything else has changed.')]
      : []),
    ...found.instruments.map((each) => instrument(each, style)),
    ...found.others.map((each) => other(each, style)),
  ];
  return `${blocks.join('\n\n')}\n`;
}

export function rangeInWords({ from, to }: Range, { say }: Wording): string {
  return to === undefined ? say`From ${from} to the files as they are` : say`From ${from} to ${to}`;
}

export function whatInWords(
  { kind, name, what }: Pick<OtherChange, 'kind' | 'name' | 'what'>,
  { say }: Wording,
): string {
  switch (what) {
    case 'added':
      return say`${kind} ${name}, new`;
    case 'removed':
      return say`${kind} ${name}, gone`;
    case 'changed':
      return `${kind} ${name}`;
  }
}

export function alikeInWords(alike: readonly string[], { say, some }: Wording): string {
  return alike.length === 0 ? '' : say`and with it ${some(alike, MOST_ALIKE)}`;
}

const MOST_ALIKE = 8;

function instrument(each: InstrumentChange, style: Style): string {
  const { wording, bold, dim } = style;
  const alike = alikeInWords(each.alike, wording);
  const head = bold(whatInWords(each, wording)) + (alike === '' ? '' : dim(`  ${alike}`));
  const told =
    each.values.length > 0 && each.effects.length === 0
      ? [dim(`  ${wording.text('nothing that could be told apart')}`)]
      : [];
  const small = each.effects.length > 0 && each.small > 0 ? [dim(`  ${smallInWords(each.small, wording)}`)] : [];
  return [head, ...valueRows(each.values, style), ...effectRows(each.effects, style), ...told, ...small].join('\n');
}

export function smallInWords(small: number, { say }: Wording): string {
  return small === 1 ? say`1 difference more, too small to tell` : say`${small} differences more, too small to tell`;
}

function other(each: OtherChange, style: Style): string {
  const { wording, bold, columns } = style;
  const used =
    each.usedBy.length === 0 ? [] : wrapped(usedInWords(each.usedBy, wording), columns - 2).map((line) => `  ${line}`);
  return [
    bold(whatInWords(each, wording)),
    ...valueRows(each.values, style),
    ...used,
    ...effectRows(each.effects, style),
  ].join('\n');
}

export function usedInWords(usedBy: readonly string[], { say, some }: Wording): string {
  return usedBy.length === 1
    ? say`used by ${usedBy[0]!}`
    : say`used by ${some(usedBy, MOST_ALIKE)}; in the first of them:`;
}

function valueRows(values: readonly ValueChange[], { dim, wording: { say } }: Style): readonly string[] {
  return table(
    values.map(({ path, before, after }): readonly (Cell | string)[] => [
      path,
      before === undefined
        ? say`${after ?? ''}, new`
        : after === undefined
          ? { text: say`gone, was ${before}`, paint: dim }
          : `${before} → ${after}`,
    ]),
  );
}

function effectRows(effects: readonly EffectOfEdit[], style: Style): readonly string[] {
  const right = (text: string): Cell => ({ text, align: 'right' });
  return table(
    effects.map(({ path, before, after, difference, share = '', amount, discernible }) => [
      { text: path, paint: style.dim },
      right(before),
      right(after),
      right(difference),
      right(share),
      scaleOf(amount, discernible),
    ]),
    { indent: 4 },
  );
}
